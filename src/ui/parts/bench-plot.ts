/** Points with their doubts over a force on a logarithmic axis, curves of the fit through them, and below what is left over of each. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { type BenchCurve, type BenchDrawing, type BenchScale, benchLabels, benchScale, PLOT } from './bench-places.ts';
import { axisFigures } from './draw-axis.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';

const LOWER_HEIGHT = 96;
const GAP = 56;
const BOTTOM = 40;
const FORCE_FIGURES = [1, 2, 5, 10, 20, 50, 100];

/**
 * @cssprop --ink, --ink-2, --aim, --steel, --edge - points and level, second text, curves, interval of the level, axes
 * @cssprop --font, --note-size - type
 */
@customElement('bench-plot')
export class BenchPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .axis {
        stroke: var(--edge);
        fill: none;
      }
      .curve {
        stroke: var(--aim);
        stroke-width: 1.5;
        fill: none;
      }
      .level {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .band {
        fill: var(--steel);
      }
      .mark {
        fill: var(--ink);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .mark.open {
        fill: var(--paper);
      }
      .doubt {
        stroke: var(--ink-2);
        stroke-width: 1;
      }
      .zero {
        stroke: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) drawing: BenchDrawing | undefined;
  @property({ attribute: false }) table: PlotTable | undefined;
  /** Name and sentence, for whoever does not see the drawing. */
  @property() label = '';
  /** What stands upwards, over the upper and the lower drawing, and along. */
  @property({ attribute: false }) axes: { readonly y: string; readonly off: string; readonly force: string } = {
    y: '',
    off: '',
    force: '',
  };
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);

  override render() {
    const { drawing } = this;
    const width = this.#width.px;
    if (!drawing || width === 0 || drawing.points.length === 0) return nothing;
    const scale = benchScale(drawing, width);
    const total = PLOT.topPx + PLOT.heightPx + GAP + LOWER_HEIGHT + BOTTOM;
    return html`<svg viewBox="0 0 ${width} ${total}" width=${width} height=${total} role="img" aria-label=${this.label}>
        ${this.#upper(drawing, scale)} ${this.#lower(drawing, scale)}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #upper({ points, curves, level }: BenchDrawing, scale: BenchScale) {
    const { x, y } = scale;
    const [from, to] = scale.ends;
    const top = Math.max(PLOT.topPx, y(level.high));
    const labels = benchLabels({ points, curves, level }, scale, textWidth(this)).map((place, i) =>
      place ? svg`<text class=${i === 0 ? 'strong' : 'aim'} x=${place.xPx} y=${place.yPx + 12}>${place.text}</text>` : nothing,
    );
    const path = (curve: BenchCurve): string =>
      curve.points.map(({ forceN, y: value }, i) => `${i === 0 ? 'M' : 'L'}${x(forceN)},${y(value)}`).join('');
    return svg`
      <text class="strong" x="0" y="12">${this.axes.y}</text>
      <rect class="band" x=${PLOT.leftPx} y=${top} width=${x(to) - PLOT.leftPx} height=${Math.max(1, y(level.low) - top)} />
      <path class="level" d="M${PLOT.leftPx},${y(level.value)} H${x(to)}" />
      ${this.#side(scale.yFrom, scale.yTo, y)}
      ${curves.map((curve) => svg`<path class="curve" d=${path(curve)} />`)}
      ${points.map((point) => interval(x(point.forceN), y(point.y - point.yDoubt), y(point.y + point.yDoubt)))}
      ${points.map((point) => mark(x(point.forceN), y(point.y), point.mark))}
      <path class="axis" d="M${x(from)},${PLOT.topPx + PLOT.heightPx + 0.5} H${x(to)}" />
      ${labels}
    `;
  }

  #lower({ points }: BenchDrawing, { x, ends }: BenchScale) {
    const top = PLOT.topPx + PLOT.heightPx + GAP;
    const most = Math.max(0.1, ...points.map(({ off, offDoubt }) => Math.abs(off) + offDoubt));
    const y = (off: number): number => top + LOWER_HEIGHT / 2 - (off / most) * (LOWER_HEIGHT / 2 - 4);
    const bottom = top + LOWER_HEIGHT;
    const round = FORCE_FIGURES.filter((force) => force >= ends[0] && force <= ends[1]);
    const figures = round.length > 1 ? round : axisFigures(...ends).values;
    const step = Math.min(1, ...figures.slice(1).map((force, i) => force - figures[i]!));
    return svg`
      <text class="strong" x="0" y=${top - 14}>${this.axes.off}</text>
      ${this.#side(-most, most, y, '%')}
      <path class="zero" d="M${PLOT.leftPx},${y(0)} H${x(ends[1])}" />
      ${points.map((point) => interval(x(point.forceN), y(point.off - point.offDoubt), y(point.off + point.offDoubt)))}
      ${points.map((point) => mark(x(point.forceN), y(point.off), point.mark))}
      <path class="axis" d="M${x(ends[0])},${bottom + 0.5} H${x(ends[1])}" />
      ${figures.map(
        (force, i) => svg`<path class="axis" d="M${x(force)},${bottom} v5" />
        <text x=${x(force)} y=${bottom + 19} text-anchor="middle">${axisFigure(force, step, this.locale)}${i === figures.length - 1 ? '\u00a0N' : ''}</text>`,
      )}
      <text class="second" x=${x(ends[1])} y=${bottom + 36} text-anchor="end">${this.axes.force}</text>
    `;
  }

  #side(from: number, to: number, y: (value: number) => number, unit = '') {
    const { values, decimals } = axisFigures(from, to);
    const step = 10 ** -decimals;
    return svg`<path class="axis" d="M${PLOT.leftPx + 0.5},${y(to)} V${y(from)}" />
      ${values.map(
        (value, i) => svg`<path class="axis" d="M${PLOT.leftPx - 5},${y(value)} h5" />
        <text x=${PLOT.leftPx - 8} y=${y(value) + 4} text-anchor="end">${axisFigure(value, step, this.locale)}${unit && i === values.length - 1 ? `\u00a0${unit}` : ''}</text>`,
      )}`;
  }
}

const interval = (x: number, low: number, high: number) =>
  svg`<path class="doubt" d="M${x},${low} V${high} M${x - 3},${low} h6 M${x - 3},${high} h6" />`;

function mark(x: number, y: number, kind: number) {
  switch (kind % 4) {
    case 0:
      return svg`<circle class="mark" cx=${x} cy=${y} r="4" />`;
    case 1:
      return svg`<circle class="mark open" cx=${x} cy=${y} r="4" />`;
    case 2:
      return svg`<path class="mark" d="M${x},${y - 5} l5,9 h-10 z" />`;
    default:
      return svg`<path class="mark open" d="M${x - 4},${y - 4} h8 v8 h-8 z" />`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bench-plot': BenchPlot;
  }
}
