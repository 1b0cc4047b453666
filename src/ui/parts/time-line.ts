/** Forces over time: each reading as its interval, the target as a band, what happened as flags, the course and where it leads. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { axisFigures } from './draw-axis.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';
import { textWidth } from './text-width.ts';
import { type TimeRange, timeTicks } from './time-axis.ts';
import { timePlotStyles } from './time-plot-styles.ts';

export interface TimedInterval {
  readonly atS: number;
  readonly value: number;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

export interface Lane {
  readonly name: string;
  readonly readings: readonly TimedInterval[];
  /** Value over time, through the readings and beyond them. */
  readonly course?: ((atS: number) => number) | undefined;
  readonly courseFromS?: number | undefined;
}

export interface TimeFlag {
  readonly atS: number;
  readonly text: string;
}

const FLAGS_HEIGHT = 28;
const PLOT_HEIGHT = 196;
const AXIS_HEIGHT = 24;
export const AXIS_WIDTH = 48;
export const END_WIDTH = 12;
const BAR_WIDTH = 8;
const COURSE_STEPS = 60;
const TILE = 16;

/** @cssprop see plot-styles.ts and time-plot-styles.ts */
@customElement('time-line')
export class TimeLine extends LitElement {
  static override styles = [
    plotStyles,
    timePlotStyles,
    css`
      :host {
        min-block-size: ${FLAGS_HEIGHT + PLOT_HEIGHT + AXIS_HEIGHT}px;
      }
      @media print {
        :host {
          min-block-size: 0;
        }
      }
    `,
  ];

  /** The first solid, the others hollow. */
  @property({ attribute: false }) lanes: readonly Lane[] = [];
  @property({ attribute: false }) target: { readonly lowN: number; readonly highN: number } | undefined;
  @property() targetLabel = '';
  @property({ attribute: false }) flags: readonly TimeFlag[] = [];
  @property({ attribute: false }) range: TimeRange = { fromS: 0, toS: 1 };
  @property({ type: Number }) nowS = 0;
  @property() todayLabel = '';
  @property() label = '';
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() locale = 'en';

  readonly #width = new OwnWidth(this);

  override render() {
    const width = this.#width.px;
    if (width === 0) return nothing;
    const height = FLAGS_HEIGHT + PLOT_HEIGHT + AXIS_HEIGHT;
    return html`<svg viewBox="0 0 ${width} ${height}" width=${width} height=${height} role="img" aria-label=${this.label}>
        ${this.#drawing(width)}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #drawing(width: number) {
    const { fromS, toS } = this.range;
    const { low, high } = this.#values();
    const xOf = (atS: number) => AXIS_WIDTH + ((atS - fromS) / (toS - fromS)) * (width - AXIS_WIDTH - END_WIDTH);
    const yOf = (value: number) => FLAGS_HEIGHT + PLOT_HEIGHT * (1 - (value - low) / (high - low));
    const bottom = FLAGS_HEIGHT + PLOT_HEIGHT;
    return svg`${this.#band(xOf, yOf, width)} ${this.#flags(xOf, bottom)} ${this.#axes(xOf, yOf, { low, high, bottom, width })}
      ${this.lanes.map((lane, index) => this.#courseOf(lane, index, xOf, yOf))}
      ${this.#today(xOf, bottom)}
      ${this.lanes.map((lane, index) => lane.readings.map((reading) => bar(reading, index, xOf, yOf)))}
      ${this.#tiles(xOf, yOf, bottom)}`;
  }

  #values(): { readonly low: number; readonly high: number } {
    const all = [
      ...this.lanes.flatMap(({ readings }) => readings.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value])),
      ...(this.target ? [this.target.lowN, this.target.highN] : []),
    ];
    if (all.length === 0) return { low: 0, high: 1 };
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const room = 0.15 * (high - low) || 1;
    return { low: Math.max(0, low - room), high: high + room };
  }

  #band(xOf: (atS: number) => number, yOf: (value: number) => number, width: number) {
    if (!this.target) return nothing;
    const [top, bottom] = [yOf(this.target.highN), yOf(this.target.lowN)];
    const [left, right] = [xOf(this.range.fromS), width - END_WIDTH];
    return svg`<rect class="wash" x=${left} y=${top} width=${right - left} height=${bottom - top} />
      <path class="limit" d="M${left},${top} H${right} M${left},${bottom} H${right}" />
      <text class="aim strong" x=${right - 6} y=${top + 16} text-anchor="end">${this.targetLabel}</text>`;
  }

  #axes(
    xOf: (atS: number) => number,
    yOf: (value: number) => number,
    { low, high, bottom, width }: { low: number; high: number; bottom: number; width: number },
  ) {
    const { values } = axisFigures(low, high);
    const step = values.length > 1 ? values[1]! - values[0]! : 1;
    const left = xOf(this.range.fromS);
    const ticks = timeTicks(this.range, { atMost: Math.max(2, Math.floor(width / 80)), locale: this.locale, short: width < 500 });
    return svg`<path class="axis" d="M${left},${FLAGS_HEIGHT} V${bottom} H${width - END_WIDTH}" />
      ${values.map(
        (value, index) => svg`<path class="axis" d="M${left - 5},${yOf(value)} h5" />
          <text x=${left - 8} y=${yOf(value) + 4} text-anchor="end">${axisFigure(value, step, this.locale)}${index === values.length - 1 ? '\u00a0N' : ''}</text>`,
      )}
      ${ticks.map(
        ({ atS, text }) => svg`<path class="axis" d="M${xOf(atS)},${bottom} v5" />
          <text x=${Math.min(xOf(atS), width - 20)} y=${bottom + 19} text-anchor="middle">${text}</text>`,
      )}`;
  }

  /** Each flag has its words beside it, as long as they keep clear of the flag before. */
  #flags(xOf: (atS: number) => number, bottom: number) {
    const widthOf = textWidth(this);
    let free = 0;
    return this.flags.map(({ atS, text }) => {
      const x = xOf(atS);
      const room = this.#width.px - x - 14;
      const fits = x >= free && widthOf(text) <= room;
      if (fits) free = x + 18 + widthOf(text);
      return svg`<path class="event" d="M${x},${FLAGS_HEIGHT - 6} V${bottom}" />
        <path class="flag" d="M${x - 0.5},4 h9 l-2,4 l2,4 h-9 v10 h-1 v-18 z"><title>${text}</title></path>
        ${fits ? svg`<text x=${x + 12} y="15">${text}</text>` : nothing}`;
    });
  }

  #today(xOf: (atS: number) => number, bottom: number) {
    const x = xOf(this.nowS);
    return svg`<path class="today" d="M${x},${FLAGS_HEIGHT - 10} V${bottom}" />
      <text class="strong" x=${x + 5} y=${bottom - 6}>${this.todayLabel}</text>`;
  }

  #courseOf({ course, courseFromS }: Lane, index: number, xOf: (atS: number) => number, yOf: (value: number) => number) {
    if (!course) return nothing;
    const kind = index === 0 ? '' : 'dotted';
    const path = (fromS: number, toS: number) =>
      Array.from({ length: COURSE_STEPS + 1 }, (_, step) => fromS + ((toS - fromS) * step) / COURSE_STEPS)
        .map((atS, step) => `${step === 0 ? 'M' : 'L'}${xOf(atS).toFixed(1)},${yOf(course(atS)).toFixed(1)}`)
        .join('');
    return svg`<path class="course ${kind}" d=${path(courseFromS ?? this.range.fromS, this.nowS)} />
      <path class="forecast ${kind}" d=${path(this.nowS, this.range.toS)} />`;
  }

  /** Names of the belts at the right of their last readings, one below the other. */
  #tiles(xOf: (atS: number) => number, yOf: (value: number) => number, bottom: number) {
    const last = this.lanes.flatMap((lane, index) => {
      const reading = lane.readings.at(-1);
      return reading ? [{ name: lane.name, index, y: yOf(lane.course ? lane.course(this.nowS) : reading.value) }] : [];
    });
    let free = FLAGS_HEIGHT;
    return last
      .sort((a, b) => a.y - b.y)
      .map(({ name, index, y }) => {
        const top = Math.min(Math.max(free, y - TILE - 2 + index * 14), bottom - 2 * TILE);
        free = top + TILE + 4;
        const hollow = index === 0 ? '' : 'hollow';
        const width = Math.max(TILE, textWidth(this, 1, 700)(name) + 6);
        const x = xOf(this.nowS) + 14;
        return svg`<rect class="tile ${hollow}" x=${x} y=${top} width=${width} height=${TILE} />
          <text class="on-tile ${hollow}" x=${x + width / 2} y=${top + 12.5} text-anchor="middle">${name}</text>`;
      });
  }
}

/** A reading: solid or hollow bar over its interval, a slit at its value. Bars of further belts stand a little to the right. */
function bar(
  { atS, value, low = value, high = value }: TimedInterval,
  index: number,
  xOf: (atS: number) => number,
  yOf: (value: number) => number,
) {
  const x = xOf(atS) - BAR_WIDTH / 2 + (index === 0 ? 0 : 3);
  const hollow = index === 0 ? '' : 'hollow';
  const [top, bottom] = [yOf(high), yOf(low)];
  return svg`<rect class="bar ${hollow}" x=${x} y=${top} width=${BAR_WIDTH - 2} height=${Math.max(2, bottom - top)} />
    <path class="slit ${hollow}" d="M${x},${yOf(value)} h${BAR_WIDTH - 2}" />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'time-line': TimeLine;
  }
}
