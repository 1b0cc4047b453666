/** A layout to scale: frame and carriage, the belts over their wheels, and the span that is meant drawn heavy with its dimension. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type BeltPath, beltPath } from '../../core/machine/belt-path.ts';
import { type BeltSection, cordRadiusM, type Point } from '../../core/machine/geometry.ts';
import type { LaidLayout, LaidPart } from '../../core/machine/layouts.ts';

/** The span that is drawn heavy: a belt by its name, and the wheel that the span begins at. */
export interface MarkedSpan {
  readonly belt: string;
  readonly from: number;
  /** Its belt and length, as a person reads them. */
  readonly text: string;
}

const MM = 1000;
const MARGIN_MM = 26;

/**
 * @cssprop --ink, --ink-2, --ink-3 - the marked span, belts, frame and wheels
 * @cssprop --paper, --steel, --rail - wheels, carriage, ground of parts
 */
@customElement('plan-view')
export class PlanView extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      inline-size: 100%;
      max-block-size: var(--plan-size, 22rem);
      overflow: visible;
    }
    .frame {
      fill: none;
      stroke: var(--line);
      stroke-width: 1;
    }
    .gantry,
    .bed {
      fill: var(--steel);
      stroke: var(--line);
      stroke-width: 1;
    }
    .carriage {
      fill: var(--paper);
      stroke: var(--ink-2);
      stroke-width: 1.5;
    }
    .belt {
      fill: none;
      stroke: var(--ink-2);
      stroke-width: 2;
    }
    .belt.other {
      stroke-dasharray: 1.5 4;
    }
    .wheel {
      fill: var(--paper);
      stroke: var(--ink-3);
      stroke-width: 1;
    }
    .pulley {
      fill: var(--steel);
      stroke: var(--ink-2);
      stroke-width: 1.5;
    }
    .clip {
      fill: var(--ink);
    }
    .marked {
      stroke: var(--ink);
      stroke-width: 5;
    }
    .dimension {
      fill: none;
      stroke: var(--ink);
      stroke-width: 1;
    }
    path,
    rect,
    circle,
    line {
      vector-effect: non-scaling-stroke;
    }
    text {
      font: 600 14px var(--font);
      fill: var(--ink);
      stroke: var(--paper);
      stroke-width: 4px;
      paint-order: stroke;
    }
    .letter {
      font-size: 12px;
    }
    @media (forced-colors: active) {
      text {
        stroke: Canvas;
      }
    }
  `;

  @property({ attribute: false }) layout: LaidLayout | undefined;
  @property({ attribute: false }) section: BeltSection | undefined;
  @property({ attribute: false }) marked: MarkedSpan | undefined;
  /** The drawing in one sentence. */
  @property() label = '';

  override render() {
    const { layout, section } = this;
    if (!layout || !section) return nothing;
    const bounds = boundsOf(layout);
    const [width, height] = [bounds.right - bounds.left + 2 * MARGIN_MM, bounds.top - bounds.bottom + 2 * MARGIN_MM];
    const paths = layout.belts.map((belt) => beltPath(belt, section));
    const mark = this.marked;
    const markedIndex = layout.belts.findIndex(({ name }) => name === mark?.belt);
    const markedPath = paths[markedIndex];
    // The scale at which the drawing is shown is about 1; text and strokes keep their size through it.
    return html`<svg viewBox="${bounds.left - MARGIN_MM} ${-bounds.top - MARGIN_MM} ${width} ${height}" role="img" aria-label=${this.label}>
      ${layout.parts.filter(({ kind }) => kind !== 'carriage').map(part)}
      ${layout.belts.map((_, index) => {
        const path = paths[index];
        return path?.kind === 'path' ? svg`<path class=${index === 0 ? 'belt' : 'belt other'} d=${pathText(path)} />` : nothing;
      })}
      ${layout.belts.flatMap(({ wheels }) =>
        wheels.map((wheel) =>
          wheel.kind === 'clamp'
            ? nothing
            : svg`<circle class=${wheel.kind === 'pulley' ? 'wheel pulley' : 'wheel'} cx=${wheel.xM * MM} cy=${-wheel.yM * MM}
                r=${Math.max(2, Math.abs(cordRadiusM(wheel, section)) * MM - 1.2)} />`,
        ),
      )}
      ${layout.parts.filter(({ kind }) => kind === 'carriage').map(part)}
      ${layout.belts.flatMap(({ wheels }) =>
        wheels.map((wheel) =>
          wheel.kind === 'clamp' ? svg`<circle class="clip" cx=${wheel.xM * MM} cy=${-wheel.yM * MM} r="2.6" />` : nothing,
        ),
      )}
      ${mark && markedPath?.kind === 'path' ? markedSpan(markedPath, mark) : nothing}
    </svg>`;
  }
}

const part = ({ kind, xM, yM, widthM, depthM }: LaidPart) =>
  svg`<rect class=${kind} x=${xM * MM} y=${-(yM + depthM) * MM} width=${widthM * MM} height=${depthM * MM} />`;

const at = ({ xM, yM }: Point): string => `${(xM * MM).toFixed(2)},${(-yM * MM).toFixed(2)}`;

/** Up is up: y turns round, and with it the sense of every arc. */
function pathText({ spans, arcs }: BeltPath): string {
  const lines = spans.map(({ start, end }) => `M${at(start)} L${at(end)}`);
  const bends = arcs.map(({ from, to, radiusM, counterclockwise, wrapRad }) => {
    const r = (radiusM * MM).toFixed(2);
    return `M${at(from)} A${r},${r} 0 ${wrapRad > Math.PI ? 1 : 0} ${counterclockwise ? 0 : 1} ${at(to)}`;
  });
  return [...lines, ...bends].join(' ');
}

const ANCHOR = ['end', 'middle', 'start'] as const;

/** Heavy, with a dimension line beside it on the side where the belt does not run. */
function markedSpan({ spans }: BeltPath, { from, text }: MarkedSpan) {
  const span = spans.find((one) => one.from === from);
  if (!span) return nothing;
  const [dx, dy] = [span.end.xM - span.start.xM, span.end.yM - span.start.yM];
  const away = 0.024;
  const [nx, ny] = [(dy / span.lengthM) * away, (-dx / span.lengthM) * away];
  const moved = (point: Point, share: number): Point => ({ xM: point.xM + nx * share, yM: point.yM + ny * share });
  // Beside an upright span the figure stands on the far side of its dimension, else on the line.
  const aside = Math.abs(nx) > Math.abs(ny) ? Math.sign(nx) : 0;
  const middle = moved({ xM: span.start.xM + dx / 2, yM: span.start.yM + dy / 2 }, 1);
  return svg`<path class="marked" d="M${at(span.start)} L${at(span.end)}" />
    <path class="dimension" d="M${at(moved(span.start, 0.35))} L${at(moved(span.start, 1.35))} M${at(moved(span.end, 0.35))} L${at(moved(span.end, 1.35))} M${at(moved(span.start, 1))} L${at(moved(span.end, 1))}" />
    <text x=${middle.xM * MM + 6 * aside} y=${-middle.yM * MM + (aside === 0 ? -4 * Math.sign(ny || 1) + 5 : 5)} text-anchor=${ANCHOR[aside + 1] ?? 'middle'}>${text}</text>`;
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boundsOf({ belts, parts }: LaidLayout): Bounds {
  const wheels = belts.flatMap((belt) => belt.wheels);
  const xs = [...wheels.map(({ xM }) => xM), ...parts.flatMap(({ xM, widthM }) => [xM, xM + widthM])];
  const ys = [...wheels.map(({ yM }) => yM), ...parts.flatMap(({ yM, depthM }) => [yM, yM + depthM])];
  return { left: Math.min(...xs) * MM, right: Math.max(...xs) * MM, top: Math.max(...ys) * MM, bottom: Math.min(...ys) * MM };
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-view': PlanView;
  }
}
