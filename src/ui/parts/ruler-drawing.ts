/** The marks of the force ruler as SVG: one pluck, the heavy reading, bounds without a value, what is predicted. */

import { css, nothing, type SVGTemplateResult, svg } from 'lit';
import type { RulerMark } from './ruler-marks.ts';

const CAP_PX = 5;
const ARROW_PX = 8;
const READING_HALF_PX = 7;
const SLIT_HALF_PX = 1.5;

/** A cap where the interval ends, an arrow head where it goes on. */
const end = (xPx: number, yPx: number, open: boolean, outward: 1 | -1) =>
  open
    ? svg`<path class="arrow" d="M${xPx - outward * ARROW_PX},${yPx - 4.5} L${xPx},${yPx} L${xPx - outward * ARROW_PX},${yPx + 4.5}" />`
    : svg`<line class="cap" x1=${xPx} x2=${xPx} y1=${yPx - CAP_PX} y2=${yPx + CAP_PX} />`;

/** A thin line with its two ends and a tick at the value. */
export const thinInterval = (mark: RulerMark, yPx: number, kind: string): SVGTemplateResult => svg`
  <g class="thin ${kind}">
    <line class="extent" x1=${mark.fromPx} x2=${mark.toPx} y1=${yPx} y2=${yPx} />
    ${end(mark.fromPx, yPx, mark.openLow, -1)}
    ${end(mark.toPx, yPx, mark.openHigh, 1)}
    ${mark.valuePx === undefined ? nothing : svg`<line class="value" x1=${mark.valuePx} x2=${mark.valuePx} y1=${yPx - 4} y2=${yPx + 4} />`}
  </g>`;

/** The bar of the combined reading: solid, a slit at the value, and a stem from there to the steel. */
export const heavyBar = (mark: RulerMark, yPx: number, baselinePx: number): SVGTemplateResult => {
  const toPx = Math.max(mark.toPx, mark.fromPx + 2);
  const valuePx = mark.valuePx === undefined ? undefined : Math.min(toPx, Math.max(mark.fromPx, mark.valuePx));
  const piece = (from: number, to: number) =>
    to > from ? svg`<rect class="bar" x=${from} y=${yPx - READING_HALF_PX} width=${to - from} height=${2 * READING_HALF_PX} />` : nothing;
  return svg`
    <g class="reading">
      ${
        valuePx === undefined
          ? piece(mark.fromPx, toPx)
          : svg`
            ${piece(mark.fromPx, valuePx - SLIT_HALF_PX)}
            ${piece(valuePx + SLIT_HALF_PX, toPx)}
            <line class="stem" x1=${valuePx} x2=${valuePx} y1=${yPx + READING_HALF_PX} y2=${baselinePx} />`
      }
      ${mark.openLow ? end(mark.fromPx, yPx, true, -1) : nothing}
      ${mark.openHigh ? end(mark.toPx, yPx, true, 1) : nothing}
    </g>`;
};

/** Bounds without a value: a dashed hollow bar, open where the sound gives no bound. */
export const hollowBar = (mark: RulerMark, yPx: number): SVGTemplateResult => {
  const [topPx, bottomPx] = [yPx - READING_HALF_PX + 1, yPx + READING_HALF_PX - 1];
  const lowPx = mark.openLow ? mark.fromPx + ARROW_PX + 4 : mark.fromPx;
  const highPx = Math.max(mark.openHigh ? mark.toPx - ARROW_PX - 4 : mark.toPx, lowPx);
  const side = (xPx: number) => `M${xPx},${topPx} V${bottomPx}`;
  const outline = [
    `M${lowPx},${topPx} H${highPx} M${lowPx},${bottomPx} H${highPx}`,
    mark.openLow ? '' : side(lowPx),
    mark.openHigh ? '' : side(highPx),
  ].join(' ');
  return svg`
    <g class="bounds">
      <rect class="inside" x=${lowPx} y=${topPx} width=${highPx - lowPx} height=${bottomPx - topPx} />
      <path class="outline" d=${outline} />
      ${mark.openLow ? end(mark.fromPx, yPx, true, -1) : nothing}
      ${mark.openHigh ? end(mark.toPx, yPx, true, 1) : nothing}
    </g>`;
};

export const rulerDrawingStyles = css`
  .thin line, .thin path { stroke: var(--ink); stroke-width: 1.5; fill: none; }
  .thin.now .extent { stroke-dasharray: 4 3; }
  .thin.left-out line, .thin.left-out path { stroke: var(--ink-3); }
  .thin.left-out .extent { stroke-dasharray: 3 3; }
  .thin.predicted line, .thin.predicted path { stroke: var(--aim); stroke-width: 2; }
  .reading .bar { fill: var(--ink); }
  .reading .stem { stroke: var(--ink); stroke-width: 2; }
  .arrow { fill: none; stroke: var(--ink); stroke-width: 1.5; }
  .bounds .inside { fill: var(--paper); }
  .bounds .outline { fill: none; stroke: var(--ink); stroke-width: 1.5; stroke-dasharray: 4 3; }
`;
