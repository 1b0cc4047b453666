/** How far one belt stands from another over time: each difference with its interval, the wanted band, the course and when it leaves the band. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { axisFigures } from './draw-axis.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';
import { type TimeRange, timeTicks } from './time-axis.ts';
import { AXIS_WIDTH, END_WIDTH, type TimedInterval } from './time-line.ts';
import { timePlotStyles } from './time-plot-styles.ts';

/** Relative; `low` and `high` are the edges of its 95 % interval. */
export interface MatchCourse {
  readonly fromS: number;
  readonly at: (atS: number) => { readonly value: number; readonly low: number; readonly high: number };
}

export interface LeavesMatch {
  readonly earliestS: number;
  readonly atS: number;
  readonly latestS: number;
  readonly text: string;
}

const TOP = 8;
const PLOT_HEIGHT = 118;
const AXIS_HEIGHT = 24;
const STEPS = 60;

/** @cssprop see plot-styles.ts and time-plot-styles.ts */
@customElement('match-line')
export class MatchLine extends LitElement {
  static override styles = [
    plotStyles,
    timePlotStyles,
    css`
      :host {
        min-block-size: ${TOP + PLOT_HEIGHT + AXIS_HEIGHT}px;
      }
      @media print {
        :host {
          min-block-size: 0;
        }
      }
    `,
  ];

  @property({ attribute: false }) points: readonly TimedInterval[] = [];
  @property({ type: Number }) toleranceRelative = 0.05;
  @property() bandLabel = '';
  @property({ attribute: false }) course: MatchCourse | undefined;
  @property({ attribute: false }) leaves: LeavesMatch | undefined;
  @property({ attribute: false }) flagsS: readonly number[] = [];
  @property({ attribute: false }) range: TimeRange = { fromS: 0, toS: 1 };
  @property({ type: Number }) nowS = 0;
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);

  override render() {
    const width = this.#width.px;
    if (width === 0) return nothing;
    const height = TOP + PLOT_HEIGHT + AXIS_HEIGHT;
    return html`<svg viewBox="0 0 ${width} ${height}" width=${width} height=${height} role="img" aria-label=${this.label}>
        ${this.#drawing(width)}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #drawing(width: number) {
    const { fromS, toS } = this.range;
    const { low, high } = this.#values();
    const right = width - END_WIDTH;
    const bottom = TOP + PLOT_HEIGHT;
    const xOf = (atS: number) => AXIS_WIDTH + ((atS - fromS) / (toS - fromS)) * (right - AXIS_WIDTH);
    const yOf = (value: number) => TOP + PLOT_HEIGHT * (1 - (value - low) / (high - low));
    const [upper, lower] = [yOf(this.toleranceRelative), yOf(-this.toleranceRelative)];
    return svg`<rect class="wash" x=${AXIS_WIDTH} y=${upper} width=${right - AXIS_WIDTH} height=${lower - upper} />
      <path class="limit" d="M${AXIS_WIDTH},${upper} H${right} M${AXIS_WIDTH},${lower} H${right}" />
      <text class="aim strong" x=${right - 6} y=${upper + 16} text-anchor="end">${this.bandLabel}</text>
      <path class="axis" d="M${AXIS_WIDTH},${yOf(0)} H${right}" />
      ${this.flagsS.map((atS) => svg`<path class="event" d="M${xOf(atS)},${TOP} V${bottom}" />`)}
      ${this.#axes(xOf, yOf, { low, high, bottom, width })}
      ${this.#courses(xOf, yOf)}
      <path class="today" d="M${xOf(this.nowS)},${TOP - 4} V${bottom}" />
      ${this.points.map((point) => whisker(point, xOf, yOf))}
      ${this.#leaving(xOf, { bottom, right })}`;
  }

  #values(): { readonly low: number; readonly high: number } {
    const last = this.course?.at(this.nowS);
    const all = [
      ...this.points.flatMap(({ value, low = value, high = value }) => [low, high]),
      ...(last ? [last.value] : []),
      this.toleranceRelative,
      -this.toleranceRelative,
    ];
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const room = 0.22 * (high - low);
    return { low: low - room, high: high + 0.06 * (high - low) };
  }

  #axes(
    xOf: (atS: number) => number,
    yOf: (value: number) => number,
    { low, high, bottom, width }: { low: number; high: number; bottom: number; width: number },
  ) {
    const { values } = axisFigures(100 * low, 100 * high);
    const step = values.length > 1 ? values[1]! - values[0]! : 1;
    const ticks = timeTicks(this.range, { atMost: Math.max(2, Math.floor(width / 80)), locale: this.locale, short: width < 500 });
    return svg`<path class="axis" d="M${AXIS_WIDTH},${TOP} V${bottom} H${width - END_WIDTH}" />
      ${values.map(
        (value, index) => svg`<path class="axis" d="M${AXIS_WIDTH - 5},${yOf(value / 100)} h5" />
          <text x=${AXIS_WIDTH - 8} y=${yOf(value / 100) + 4} text-anchor="end">${value > 0 ? '+' : ''}${axisFigure(value, step, this.locale)}${index === values.length - 1 ? '\u00a0%' : ''}</text>`,
      )}
      ${ticks.map(
        ({ atS, text }) => svg`<path class="axis" d="M${xOf(atS)},${bottom} v5" />
          <text x=${Math.min(xOf(atS), width - 20)} y=${bottom + 19} text-anchor="middle">${text}</text>`,
      )}`;
  }

  #courses(xOf: (atS: number) => number, yOf: (value: number) => number) {
    const { course } = this;
    if (!course) return nothing;
    const floor = TOP + PLOT_HEIGHT;
    const path = (fromS: number, toS: number, of: 'value' | 'low' | 'high') =>
      Array.from({ length: STEPS + 1 }, (_, step) => fromS + ((toS - fromS) * step) / STEPS)
        .map((atS) => ({ x: xOf(atS), y: yOf(course.at(atS)[of]) }))
        .filter(({ y }) => y >= TOP && y <= floor)
        .map(({ x, y }, step) => `${step === 0 ? 'M' : 'L'}${x.toFixed(1)},${y.toFixed(1)}`)
        .join('');
    const { toS } = this.range;
    return svg`<path class="course" d=${path(course.fromS, this.nowS, 'value')} />
      <path class="forecast" d=${path(this.nowS, toS, 'value')} />
      <path class="forecast edge" d=${path(this.nowS, toS, 'low')} /><path class="forecast edge" d=${path(this.nowS, toS, 'high')} />`;
  }

  /** The interval as a bar just above the axis, the likeliest day as a slit in it, the words before it where there is room. */
  #leaving(xOf: (atS: number) => number, { bottom, right }: { bottom: number; right: number }) {
    if (!this.leaves) return nothing;
    const { earliestS, atS, latestS, text } = this.leaves;
    const [left, end] = [xOf(earliestS), Math.min(right, xOf(latestS))];
    const y = bottom - 12;
    const before = left - AXIS_WIDTH - 10 >= textWidth(this, 1, 600)(text);
    return svg`<rect class="when" x=${left} y=${y - 4} width=${Math.max(3, end - left)} height="8" />
      <path class="slit" d="M${xOf(atS)},${y - 4} v8" />
      <text class="aim strong" x=${before ? left - 6 : right} y=${before ? y + 4 : y - 10} text-anchor="end">${text}</text>`;
  }
}

function whisker({ atS, value, low = value, high = value }: TimedInterval, xOf: (atS: number) => number, yOf: (value: number) => number) {
  const [x, top, bottom] = [xOf(atS), yOf(high), yOf(low)];
  return svg`<path class="whisker" d="M${x - 4},${top} h8 M${x - 4},${bottom} h8 M${x},${top} V${bottom}" />
    <rect class="dot" x=${x - 3} y=${yOf(value) - 3} width="6" height="6" />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'match-line': MatchLine;
  }
}
