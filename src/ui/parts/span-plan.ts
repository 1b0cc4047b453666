/** Doubt of the force against span length: two curves, the zones with their grades, the span as it is, and where to park. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Grade } from '../../core/outcome.ts';
import './grade-mark.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { bandPath, curvePath, doubtTicks, type PlanPoint, type PlanScale, planScale, spanTicksM, xOf, yOf } from './span-plan-scale.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';

export interface PlanZone {
  readonly fromM: number;
  readonly toM: number;
  readonly grade: Grade;
  readonly word: string;
}

/** A length that is marked in the plot, with its doubt at both forces. */
export interface PlanMark {
  readonly spanM: number;
  readonly atLow?: number | undefined;
  readonly atHigh?: number | undefined;
  readonly label: string;
}

/** Figures below the axis, one for each of its lengths. */
export interface PlanRow {
  readonly name: string;
  readonly at: (spanM: number) => string;
}

const ROW_PX = 24;
const AXIS_PX = 26;
const MARK_PX = 18;
const NARROW_PX = 560;

/**
 * @cssprop --trusted, --doubtful, --unusable, --trusted-wash - zones
 * @cssprop --ink, --ink-2, --edge, --steel - curves, labels, axes, what lies between the curves
 * @cssprop --aim - what is wanted
 */
@customElement('span-plan')
export class SpanPlan extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .zone.trusted {
        fill: var(--trusted-wash);
      }
      .bar.trusted {
        fill: var(--trusted);
      }
      .bar.doubtful {
        fill: var(--doubtful);
      }
      .bar.unusable {
        fill: var(--unusable);
      }
      .hatch {
        stroke-width: 1;
        opacity: 0.35;
      }
      .hatch.doubtful {
        stroke: var(--doubtful);
      }
      .hatch.unusable {
        stroke: var(--unusable);
      }
      .word.trusted {
        fill: var(--trusted);
      }
      .word.doubtful {
        fill: var(--doubtful);
      }
      .word.unusable {
        fill: var(--unusable);
      }
      .mark {
        font-size: var(--text-size);
      }
      .word {
        font-weight: 600;
      }
      .border,
      .axis {
        stroke: var(--edge);
        fill: none;
      }
      .between {
        fill: var(--ink);
        opacity: 0.1;
      }
      .curve {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2.5;
      }
      .curve.high {
        stroke-width: 1.5;
      }
      .wanted {
        stroke: var(--aim);
        stroke-width: 1.5;
        stroke-dasharray: 6 4;
      }
      .now {
        stroke: var(--ink);
        stroke-width: 2;
        stroke-dasharray: 2 3;
      }
      .doubt {
        stroke: var(--ink);
        stroke-width: 5;
      }
      .park {
        stroke: var(--ink);
        stroke-width: 3;
      }
      .halo {
        paint-order: stroke;
        stroke: var(--paper);
        stroke-width: 4px;
        stroke-linejoin: round;
      }
    `,
  ];

  @property({ attribute: false }) points: readonly PlanPoint[] = [];
  @property({ attribute: false }) zones: readonly PlanZone[] = [];
  @property({ attribute: false }) reach = { fromM: 0.04, toM: 0.6 };
  /** Doubt at the top of the plot. */
  @property({ type: Number }) most = 0.6;
  @property({ type: Number }) tolerance = 0.2;
  @property() toleranceLabel = '';
  @property({ attribute: false }) curveLabels: readonly [string, string] = ['', ''];
  @property({ attribute: false }) now: PlanMark | undefined;
  @property({ attribute: false }) park: PlanMark | undefined;
  @property({ attribute: false }) rows: readonly PlanRow[] = [];
  /** Unit and name of the axis of lengths. */
  @property() axisLabel = '';
  @property({ attribute: false }) figure: (valueM: number) => string = String;
  @property({ attribute: false }) figureWithUnit: (valueM: number) => string = String;
  @property({ attribute: false }) percent: (share: number) => string = String;
  /** The plot in words. */
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;

  readonly #width = new OwnWidth(this);

  override render() {
    const { px } = this.#width;
    if (px === 0 || this.points.length === 0) return nothing;
    const rows = px < NARROW_PX ? [] : this.rows;
    const scale = planScale(px, this.reach, { most: this.most, hasRows: rows.length > 0 });
    const heightPx = scale.bottomPx + AXIS_PX + rows.length * ROW_PX;
    return html`<svg role="img" aria-label=${this.label} width=${px} height=${heightPx} viewBox=${`0 0 ${px} ${heightPx}`}>
        <defs>${hatch('doubtful', 14)}${hatch('unusable', 6)}</defs>
        ${this.zones.map((zone) => this.#zone(scale, zone))} ${this.#curves(scale)} ${this.#axes(scale, rows)} ${this.#marks(scale)}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #zone(scale: PlanScale, { fromM, toM, grade, word }: PlanZone) {
    if (fromM >= scale.toM || toM <= scale.fromM) return nothing;
    const [left, right] = [xOf(scale, fromM), xOf(scale, toM)];
    const width = right - left;
    const { topPx, bottomPx } = scale;
    const wordPx = textWidth(this, 1, 600)(word);
    const fits = width > wordPx + MARK_PX + 12;
    const startPx = (left + right) / 2 - (fits ? (wordPx + MARK_PX + 6) / 2 : MARK_PX / 2);
    return svg`
      <rect class="zone ${grade}" fill="none" x=${left} y=${topPx} width=${width} height=${bottomPx - topPx} />
      ${grade === 'trusted' ? nothing : svg`<rect x=${left} y=${topPx} width=${width} height=${bottomPx - topPx} fill=${`url(#hatch-${grade})`} />`}
      <rect class="bar ${grade}" x=${left} y=${topPx - 2} width=${width} height="4" />
      ${left > scale.leftPx + 1 ? svg`<path class="border" d=${`M${left},${topPx} V${bottomPx}`} />` : nothing}
      ${width > MARK_PX ? svg`<foreignObject x=${startPx} y=${topPx - 31} width=${MARK_PX + 4} height="24"><grade-mark bare .grade=${grade} .word=${word} class="mark"></grade-mark></foreignObject>` : nothing}
      ${fits ? svg`<text class="word ${grade}" x=${startPx + MARK_PX + 6} y=${topPx - 16}>${word}</text>` : nothing}`;
  }

  #curves(scale: PlanScale) {
    const { leftPx, rightPx } = scale;
    const limit = yOf(scale, this.tolerance);
    const [low, high] = this.curveLabels;
    return svg`
      <path class="between" d=${bandPath(scale, this.points)} />
      <path class="curve" d=${curvePath(scale, this.points, 'atLow')} />
      <path class="curve high" d=${curvePath(scale, this.points, 'atHigh')} />
      <path class="wanted" d=${`M${leftPx},${limit} H${rightPx}`} />
      <text class="aim halo" x=${rightPx - 6} y=${this.#isAboveAtRight(scale) ? limit + 18 : limit - 6} text-anchor="end">${this.toleranceLabel}</text>
      ${this.#curveLabel(scale, 'atLow', low, -1)} ${high === low ? nothing : this.#curveLabel(scale, 'atHigh', high, 1)}`;
  }

  /** Whether a curve runs just above what is wanted, where its label would stand. */
  #isAboveAtRight({ toM, most }: PlanScale): boolean {
    const last = this.points.findLast(({ spanM }) => spanM <= toM + 1e-9)?.atLow ?? 0;
    return last > this.tolerance - 0.02 && last < this.tolerance + 0.12 * most;
  }

  /** Beside its curve, where that is halfway down the plot. */
  #curveLabel(scale: PlanScale, of: 'atLow' | 'atHigh', label: string, side: -1 | 1) {
    const point = this.points.find((one) => (one[of] ?? Number.POSITIVE_INFINITY) <= scale.most * (side < 0 ? 0.55 : 0.3));
    if (!point || label === '' || point.spanM >= scale.toM) return nothing;
    const y = yOf(scale, point[of]!);
    return side < 0
      ? svg`<text class="halo" x=${xOf(scale, point.spanM) + 10} y=${y - 4}>${label}</text>`
      : svg`<text class="halo" x=${xOf(scale, point.spanM) - 6} y=${y + 18} text-anchor="end">${label}</text>`;
  }

  #axes(scale: PlanScale, rows: readonly PlanRow[]) {
    const { leftPx, rightPx, topPx, bottomPx } = scale;
    const ticks = spanTicksM(scale);
    const doubts = doubtTicks(scale);
    return svg`
      <path class="axis" d=${`M${leftPx},${topPx} V${bottomPx} H${rightPx} ${ticks.map((m) => `M${xOf(scale, m)},${bottomPx} v5`).join(' ')} ${doubts.map((d) => `M${leftPx},${yOf(scale, d)} h-5`).join(' ')}`} />
      ${doubts.map((d, i) => svg`<text class="second" x=${leftPx - 9} y=${yOf(scale, d) + 4.5} text-anchor="end">${i === doubts.length - 1 ? this.percent(d) : Math.round(100 * d)}</text>`)}
      ${ticks.map((m, i) => svg`<text x=${xOf(scale, m)} y=${bottomPx + 20} text-anchor="middle">${rows.length === 0 && i === ticks.length - 1 ? this.figureWithUnit(m) : this.figure(m)}</text>`)}
      ${rows.map((row, i) => {
        const y = bottomPx + AXIS_PX + (i + 0.75) * ROW_PX;
        return svg`<text class="second" x="0" y=${y}>${row.name}</text>
          ${ticks.map((m) => svg`<text class="second" x=${xOf(scale, m)} y=${y} text-anchor="middle">${row.at(m)}</text>`)}`;
      })}
      ${rows.length === 0 ? nothing : svg`<text class="second" x="0" y=${bottomPx + 20}>${this.axisLabel}</text>`}`;
  }

  #marks(scale: PlanScale) {
    const { now, park } = this;
    // Where both stand close together, the label of the span as it is goes up one line.
    const close = now && park && Math.abs(xOf(scale, now.spanM) - xOf(scale, park.spanM)) < textWidth(this, 1, 600)(now.label) + 16;
    return svg`${now ? mark(scale, now, 'now', close ? LINE_PX : 0) : nothing} ${park ? mark(scale, park, 'park', 0) : nothing}`;
  }
}

const LINE_PX = 18;

function mark(scale: PlanScale, { spanM, atLow, atHigh, label }: PlanMark, kind: 'now' | 'park', raisedPx: number) {
  if (spanM < scale.fromM || spanM > scale.toM) return nothing;
  const x = xOf(scale, spanM);
  const [top, bottom] = [yOf(scale, atLow ?? scale.most), yOf(scale, atHigh ?? scale.most)];
  const nearRight = x > scale.rightPx - 90;
  return svg`<path class=${kind} d=${`M${x},${bottom} V${scale.bottomPx}`} />
    <path class="doubt" d=${`M${x},${top - 1} V${Math.max(bottom, top + 3)}`} />
    <text class="strong halo" x=${nearRight ? x - 8 : x + 8} y=${scale.bottomPx - 9 - raisedPx} text-anchor=${nearRight ? 'end' : 'start'}>${label}</text>`;
}

const hatch = (grade: 'doubtful' | 'unusable', stepPx: number) => svg`
  <pattern id=${`hatch-${grade}`} width=${stepPx} height=${stepPx} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <path class="hatch ${grade}" d=${`M0,0 V${stepPx}`} />
  </pattern>`;

declare global {
  interface HTMLElementTagNameMap {
    'span-plan': SpanPlan;
  }
}
