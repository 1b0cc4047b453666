/** Several gauges on one axis of force: how far each reads off the true force, with the doubt of one reading; sorted by whoever gives them. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Grade } from '../../core/outcome.ts';
import { axisFigure } from './axis-figure.ts';
import { axisFigures } from './draw-axis.ts';
import './grade-mark.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';

export interface ErrorLane {
  readonly name: string;
  readonly grade: Grade;
  readonly gradeWord: string;
  /** '± 3 %'; empty where the gauge is unusable. */
  readonly figure: string;
  /** What stands below the figure. */
  readonly notes: readonly string[];
  readonly points: readonly { readonly forceN: number; readonly error: number; readonly low: number; readonly high: number }[];
  /** Where its stop holds it, in words. */
  readonly ends?: string | undefined;
}

export interface LanesView {
  readonly lanes: readonly ErrorLane[];
  readonly target: { readonly lowN: number; readonly highN: number; readonly text: string };
  /** Relative. */
  readonly tolerance: number;
}

const LANE_PX = 92;
const LEFT_PX = 46;
const RIGHT_PX = 16;
const NARROW_BELOW_PX = 560;
/** The axis of errors reaches this many tolerances. */
const REACH = 1.7;

/**
 * @cssprop --ink, --ink-2, --ink-3 - line, axis, doubt · --aim, --aim-wash - target and tolerance · --line - separators
 */
@customElement('error-lanes')
export class ErrorLanes extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .lane {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 13rem;
        gap: 0 var(--space-24);
        align-items: center;
        border-block-end: var(--stroke-line) solid var(--line);
      }
      .lane:last-of-type {
        border-block-end: 0;
      }
      .told {
        padding-block: var(--space-8);
        color: var(--ink);
      }
      .name {
        display: flex;
        align-items: center;
        gap: var(--space-8);
        font-size: var(--lead-size);
        line-height: var(--lead-line);
        font-weight: 600;
      }
      .figure {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 var(--space-8);
        font-size: var(--title-size);
        line-height: var(--title-line);
        font-weight: 700;
      }
      .narrow .lane {
        display: flex;
        flex-direction: column-reverse;
        align-items: stretch;
        padding-block-start: var(--space-8);
      }
      .narrow .told {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 0 var(--space-16);
        padding-block: 0;
      }
      .narrow .notes {
        flex: 1 1 100%;
      }
      .axis {
        fill: none;
        stroke: var(--edge);
      }
      .zero {
        stroke: var(--ink-3);
      }
      .tolerance {
        stroke: var(--aim);
        stroke-width: 1.5;
        stroke-dasharray: 6 4;
      }
      .doubt {
        fill: var(--ink-3);
        opacity: 0.35;
      }
      .error {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
      }
      .end {
        stroke: var(--ink);
        stroke-width: 2;
      }
      text.ends {
        fill: var(--unusable);
      }
    `,
  ];

  @property({ attribute: false }) view: LanesView | undefined;
  @property({ attribute: false }) table: PlotTable | undefined;
  @property({ attribute: false }) laneLabel: (lane: ErrorLane) => string = ({ name }) => name;
  @property() locale = 'en';
  readonly #width = new OwnWidth(this);

  override render() {
    const { view } = this;
    if (!view || this.#width.px === 0) return nothing;
    const isNarrow = this.#width.px < NARROW_BELOW_PX;
    const width = isNarrow ? this.#width.px : this.#width.px - 13 * 16 - 24;
    const most = 1.08 * Math.max(view.target.highN, ...view.lanes.flatMap(({ points }) => points.map(({ forceN }) => forceN)));
    const xOf = (forceN: number) => LEFT_PX + (forceN / most) * (width - LEFT_PX - RIGHT_PX);
    return html`<div class=${isNarrow ? 'narrow' : ''}>
      ${view.lanes.map((lane, index) => this.#lane(lane, view, width, xOf, index === 0))} ${this.#axis(most, width, xOf)}
      ${this.table ? spokenTable(this.table) : nothing}
    </div>`;
  }

  #lane(lane: ErrorLane, { target, tolerance }: LanesView, width: number, xOf: (forceN: number) => number, first: boolean) {
    const middle = LANE_PX / 2;
    const most = REACH * tolerance;
    const yOf = (error: number) => middle - (Math.max(-most, Math.min(most, error)) / most) * (middle - 4);
    const { points } = lane;
    const side = (of: 'low' | 'high') => points.map((point) => `${xOf(point.forceN).toFixed(1)},${yOf(point[of]).toFixed(1)}`);
    const line = points.map(({ forceN, error }, i) => `${i === 0 ? 'M' : 'L'}${xOf(forceN).toFixed(1)},${yOf(error).toFixed(1)}`).join(' ');
    const [from, to] = [points[0], points.at(-1)];
    const percent = Math.round(100 * tolerance);
    const right = width - RIGHT_PX;
    return html`<div class="lane">
      <svg viewBox="0 0 ${width} ${LANE_PX}" width=${width} height=${LANE_PX} role="img" aria-label=${this.laneLabel(lane)}>
        <rect class="wash" x=${xOf(target.lowN)} y="0" width=${xOf(target.highN) - xOf(target.lowN)} height=${LANE_PX} />
        <path class="edge-of-aim" d="M${xOf(target.lowN)},0 V${LANE_PX} M${xOf(target.highN)},0 V${LANE_PX}" />
        <path class="tolerance" d="M${LEFT_PX},${yOf(tolerance)} H${right} M${LEFT_PX},${yOf(-tolerance)} H${right}" />
        <path class="zero" d="M${LEFT_PX},${middle} H${right}" />
        ${[
          [tolerance, `+${percent}`],
          [0, '0\u00a0%'],
          [-tolerance, `−${percent}`],
        ].map(([at, text]) => svg`<text class="second" x=${LEFT_PX - 8} y=${yOf(at as number) + 4} text-anchor="end">${text}</text>`)}
        ${first ? svg`<text class="aim" x=${Math.min(xOf(target.highN) + 8, right)} y="12">${target.text}</text>` : nothing}
        ${points.length > 1 ? svg`<path class="doubt" d="M${[...side('high'), ...side('low').reverse()].join(' L')} Z" /><path class="error" d=${line} />` : nothing}
        ${[from, to].map((end) => (end ? svg`<path class="end" d="M${xOf(end.forceN)},${yOf(end.high)} V${yOf(end.low)}" />` : nothing))}
        ${lane.ends && to ? svg`<text class="ends" x=${xOf(to.forceN) + 8} y=${middle - 8}>${lane.ends}</text>` : nothing}
      </svg>
      <div class="told">
        <div class="name">${lane.name}</div>
        <div class="figure">${lane.figure}<grade-mark .grade=${lane.grade} .word=${lane.gradeWord}></grade-mark></div>
        <div class="notes">${lane.notes.map((note) => html`<div>${note}</div>`)}</div>
      </div>
    </div>`;
  }

  #axis(most: number, width: number, xOf: (forceN: number) => number) {
    const { values } = axisFigures(0, most);
    const step = (values[1] ?? 1) - (values[0] ?? 0) || 1;
    return html`<svg viewBox="0 0 ${width} 26" width=${width} height="26" aria-hidden="true">
      <path class="axis" d="M${LEFT_PX},0.5 H${width - RIGHT_PX}" />
      ${values.map(
        (value, index) => svg`<path class="axis" d="M${xOf(value)},0 v5" />
        <text class="second" x=${xOf(value)} y="20" text-anchor="middle">${axisFigure(value, step, this.locale)}${index === values.length - 1 ? '\u00a0N' : ''}</text>`,
      )}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'error-lanes': ErrorLanes;
  }
}
