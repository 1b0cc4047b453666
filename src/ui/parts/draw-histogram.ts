/** Histogram of the forces that random draws gave, with their interval and the reading's below it on the same axis. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigures } from './draw-axis.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';

export interface DrawnBins {
  readonly fromN: number;
  readonly binWidthN: number;
  /** One for each bin; they sum to 1. */
  readonly shares: readonly number[];
}

export interface NamedInterval {
  readonly name: string;
  /** Missing: the interval has no bound on this side. */
  readonly lowN?: number | undefined;
  readonly highN?: number | undefined;
}

const WIDTH = 400;
const BARS_HEIGHT = 88;
const AXIS_Y = 96;
const FIRST_INTERVAL_Y = 132;
const INTERVAL_STEP = 20;
/** Room for the names of the intervals. */
const NAMES_WIDTH = 72;

/**
 * @cssprop --ink, --ink-2, --ink-3 - intervals and axis, second text, bars
 * @cssprop --font, --note-size - type
 */
@customElement('draw-histogram')
export class DrawHistogram extends LitElement {
  static override styles = [
    plotStyles,
    css`
      svg {
        inline-size: 100%;
      }
      rect {
        fill: var(--ink-3);
      }
      .axis,
      .interval {
        stroke: var(--ink);
        fill: none;
      }
      .interval {
        stroke-width: 2;
      }
    `,
  ];

  @property({ attribute: false }) bins: DrawnBins | undefined;
  @property({ attribute: false }) intervals: readonly NamedInterval[] = [];
  @property({ attribute: false }) table: PlotTable | undefined;
  /** Name and sentence, for whoever does not see the drawing. */
  @property() label = '';
  /** Writes a figure of the axis. */
  @property({ attribute: false }) figure: (valueN: number, decimals: number) => string = String;

  override render() {
    const { bins } = this;
    if (!bins) return nothing;
    const ends = this.intervals.flatMap(({ lowN, highN }) => [lowN, highN]).filter((end) => end !== undefined);
    const from = Math.min(bins.fromN, ...ends);
    const to = Math.max(bins.fromN + bins.shares.length * bins.binWidthN, ...ends);
    const xOf = (valueN: number) => NAMES_WIDTH + ((valueN - from) / (to - from || 1)) * (WIDTH - NAMES_WIDTH - 16);
    const height = FIRST_INTERVAL_Y + INTERVAL_STEP * this.intervals.length;
    return html`
      <svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label=${this.label}>
        ${this.#bars(bins, xOf)} ${this.#axis(from, to, xOf)}
        ${this.intervals.map((interval, index) => intervalMark(interval, { y: FIRST_INTERVAL_Y + INTERVAL_STEP * index, from, to, xOf }))}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}
    `;
  }

  #bars({ fromN, binWidthN, shares }: DrawnBins, xOf: (valueN: number) => number) {
    const largest = Math.max(...shares, Number.MIN_VALUE);
    return shares.map((share, index) => {
      const x = xOf(fromN + index * binWidthN);
      const height = (BARS_HEIGHT * share) / largest;
      const width = Math.max(1, xOf(fromN + (index + 1) * binWidthN) - x - 0.5);
      return svg`<rect x=${x} y=${AXIS_Y - height} width=${width} height=${height} />`;
    });
  }

  #axis(from: number, to: number, xOf: (valueN: number) => number) {
    const { values, decimals } = axisFigures(from, to);
    return svg`<path class="axis" d="M${xOf(from)},${AXIS_Y + 0.5} H${xOf(to)}" />
      ${values.map(
        (value, index) => svg`<path class="axis" d="M${xOf(value)},${AXIS_Y} v5" />
          <text x=${xOf(value)} y=${AXIS_Y + 19} text-anchor="middle">${this.figure(value, decimals)}${index === values.length - 1 ? '\u00a0N' : ''}</text>`,
      )}`;
  }
}

interface Place {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly xOf: (valueN: number) => number;
}

/** A bound that is missing has no cap. */
function intervalMark({ name, lowN, highN }: NamedInterval, { y, from, to, xOf }: Place) {
  const caps = [lowN, highN].filter((end) => end !== undefined).map((end) => `M${xOf(end)},${y - 5} v10`);
  return svg`<text class="second" x="0" y=${y + 4}>${name}</text>
    <path class="interval" d="M${xOf(lowN ?? from)},${y} H${xOf(highN ?? to)} ${caps.join(' ')}" />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'draw-histogram': DrawHistogram;
  }
}
