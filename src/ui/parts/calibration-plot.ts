/** Readings under hung weights against the force, and below them, on the same axis, how far each lies off the curve. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { axisFigures } from './draw-axis.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';

export interface CalibrationPoint {
  readonly row: number;
  readonly reading: number;
  readonly forceN: number;
  readonly way: 'up' | 'down' | 'plain';
  /** Force that hung less the curve's at this reading; missing where the gauge was held at a stop. */
  readonly offN?: number | undefined;
  /** Named as one that breaks the pattern. */
  readonly odd?: string | undefined;
}

export interface CalibrationView {
  readonly points: readonly CalibrationPoint[];
  /** Rising force. `halfN`: half the 95 % interval of one reading there. */
  readonly curve: readonly { readonly forceN: number; readonly reading: number; readonly halfN: number }[];
  readonly verified?: { readonly readingLow: number; readonly readingHigh: number } | undefined;
  readonly target?: { readonly lowN: number; readonly highN: number; readonly text: string } | undefined;
  /** From here on nothing can be told: above it, or below it of a gauge that falls with the force. */
  readonly refused?: { readonly reading: number; readonly text: string; readonly side: 'above' | 'below' } | undefined;
  readonly maker: readonly { readonly reading: number; readonly forceN: number; readonly refused: boolean }[];
}

export interface CalibrationWords {
  readonly title: string;
  readonly residuals: string;
  readonly up: string;
  readonly down: string;
  readonly plain: string;
  readonly forceHung: string;
  readonly axis: string;
  readonly verified: string;
  readonly maker: string;
  readonly fit: string;
  readonly label: string;
  readonly residualLabel: string;
}

const UPPER_PX = 270;
const LOWER_PX = 104;
const AXIS_PX = 44;
const LEFT_PX = 44;
const RIGHT_PX = 12;
const TOP_PX = 10;

/**
 * @cssprop --ink, --ink-2, --ink-3, --floor - curve and marks, axes, band of doubt
 * @cssprop --aim, --aim-wash - target · --unusable, --doubtful - what is refused, what is odd
 */
@customElement('calibration-plot')
export class CalibrationPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .head {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-16);
        margin-block-end: var(--space-8);
        font-size: var(--text-size);
        line-height: var(--text-line);
      }
      .head strong {
        font-weight: 600;
      }
      .key {
        display: flex;
        gap: var(--space-12);
        font-size: var(--note-size);
        color: var(--ink-2);
      }
      .key svg {
        display: inline-block;
        vertical-align: -1px;
        margin-inline-end: 4px;
      }
      .axis {
        fill: none;
        stroke: var(--edge);
      }
      .curve {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2.5;
      }
      .band {
        fill: var(--ink-3);
        opacity: 0.28;
      }
      .up {
        fill: var(--ink);
        stroke: var(--paper);
        stroke-width: 1;
      }
      .down {
        fill: var(--paper);
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .plain {
        fill: var(--ink);
        stroke: var(--paper);
        stroke-width: 1;
      }
      .odd {
        fill: none;
        stroke: var(--doubtful);
        stroke-width: 2;
      }
      .verified {
        stroke: var(--ink);
        fill: none;
      }
      .maker {
        fill: none;
        stroke: var(--ink-2);
        stroke-dasharray: 4 3;
      }
      .maker-tick {
        stroke: var(--ink-2);
        stroke-width: 3;
      }
      .refused {
        fill: none;
        stroke: var(--unusable);
        stroke-width: 1.5;
      }
      .hatch {
        stroke: var(--unusable);
        stroke-width: 1;
        opacity: 0.45;
      }
      text.refused-text {
        fill: var(--unusable);
      }
    `,
  ];

  @property({ attribute: false }) view: CalibrationView | undefined;
  @property({ attribute: false }) words: CalibrationWords | undefined;
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() locale = 'en';
  readonly #width = new OwnWidth(this);

  override render() {
    const { view, words } = this;
    if (!view || !words || this.#width.px === 0) return nothing;
    const scale = scalesOf(view, this.#width.px);
    const ways = new Set(view.points.map(({ way }) => way));
    const key = (way: CalibrationPoint['way']) =>
      ways.has(way)
        ? html`<span><svg width="10" height="10" viewBox="-5 -5 10 10" aria-hidden="true">${mark(way, 0, 0)}</svg>${words[way]}</span>`
        : nothing;
    return html`<div class="head"><strong>${words.title}</strong><span class="key">${key('up')}${key('down')}${key('plain')}</span></div>
      ${this.#upper(view, words, scale)}
      <div class="head"><strong>${words.residuals}</strong></div>
      ${this.#lower(view, words, scale)} ${this.table ? spokenTable(this.table) : nothing}`;
  }

  #upper(view: CalibrationView, words: CalibrationWords, scale: Scales) {
    const { width, xOf, yOf, x } = scale;
    const bottom = TOP_PX + UPPER_PX;
    const ticks = axisFigures(0, scale.mostN).values;
    const step = (ticks[1] ?? 1) - (ticks[0] ?? 0) || 1;
    const right = width - RIGHT_PX;
    const path = (points: readonly { readonly reading: number; readonly forceN: number }[]) =>
      points.map(({ reading, forceN }, i) => `${i === 0 ? 'M' : 'L'}${xOf(reading).toFixed(1)},${yOf(forceN).toFixed(1)}`).join(' ');
    const targetTop = view.target ? yOf(view.target.highN) : 0;
    const odd = view.points.filter((point) => point.odd);
    const last = view.maker.at(-1);
    return html`<svg viewBox="0 0 ${width} ${bottom + 12}" width=${width} height=${bottom + 12} role="img" aria-label=${words.label}>
      ${
        view.target
          ? svg`<rect class="wash" x=${LEFT_PX} y=${targetTop} width=${right - LEFT_PX} height=${yOf(view.target.lowN) - targetTop} />
        <path class="edge-of-aim" d="M${LEFT_PX},${targetTop} H${right} M${LEFT_PX},${yOf(view.target.lowN)} H${right}" />
        <text class="aim" x=${LEFT_PX + 8} y=${targetTop + 16}>${view.target.text}</text>`
          : nothing
      }
      ${this.#refused(view, scale, TOP_PX, bottom, true)}
      ${ticks.map(
        (value, index) => svg`<path class="axis" d="M${LEFT_PX - 5},${yOf(value)} h5" />
        <text class="second" x=${LEFT_PX - 9} y=${yOf(value) + 4} text-anchor="end">${axisFigure(value, step, this.locale)}${index === ticks.length - 1 ? '\u00a0N' : ''}</text>`,
      )}
      <path class="axis" d="M${LEFT_PX + 0.5},${TOP_PX} V${bottom} H${right}" />
      <text class="second" x=${LEFT_PX + 8} y=${TOP_PX + 12}>${words.forceHung}</text>
      ${view.maker.length > 1 ? svg`<path class="maker" d=${path(view.maker)} />` : nothing}
      ${view.maker.map(({ reading, forceN, refused }) =>
        refused
          ? svg`<path class="refused" d="M${xOf(reading) - 6},${yOf(forceN) - 6} h12 v12 h-12 z m0,12 l12,-12" />`
          : svg`<path class="maker-tick" d="M${xOf(reading) - 4},${yOf(forceN)} h8" />`,
      )}
${last ? svg`<text class="second" x=${Math.min(xOf(last.reading) + 10, right - 4)} y=${Math.min(yOf(last.forceN) + 24, bottom - 30)} text-anchor="end">${words.maker}</text>` : nothing}
      <path class="band" d=${bandPath(view, xOf, yOf)} />
      <path class="curve" d=${path(view.curve)} />
      ${view.points.map(({ way, reading, forceN }) => mark(way, xOf(reading), yOf(forceN)))}
      ${odd.map(
        ({ reading, forceN, odd: text }) => svg`<circle class="odd" cx=${xOf(reading)} cy=${yOf(forceN)} r="9" />
        <text x=${xOf(reading) - 13} y=${yOf(forceN) - 4} text-anchor="end">${text}</text>`,
      )}
      ${
        view.verified
          ? svg`<path class="verified" stroke-width="4" d="M${xOf(view.verified.readingLow)},${bottom} H${xOf(view.verified.readingHigh)}" />
        <path class="verified" stroke-width="1.5" d="M${xOf(view.verified.readingLow)},${bottom - 6} v12 M${xOf(view.verified.readingHigh)},${bottom - 6} v12" />
        <text class="strong" x=${(xOf(view.verified.readingLow) + xOf(view.verified.readingHigh)) / 2} y=${bottom - 8} text-anchor="middle">${words.verified}</text>`
          : nothing
      }
      ${svg`<path class="axis" d=${x.values.map((value) => `M${xOf(value)},${bottom} v5`).join(' ')} />`}
    </svg>`;
  }

  #lower(view: CalibrationView, words: CalibrationWords, { width, xOf, x, mostOffN }: Scales) {
    const middle = TOP_PX + LOWER_PX / 2;
    const bottom = TOP_PX + LOWER_PX;
    const yOf = (offN: number) => middle - (offN / mostOffN) * (LOWER_PX / 2 - 4);
    const right = width - RIGHT_PX;
    const figure = (value: number) => axisFigure(value, mostOffN < 0.5 ? 0.1 : mostOffN < 1 ? 0.5 : 1, this.locale);
    const end = Number(mostOffN.toPrecision(1)) <= mostOffN ? Number(mostOffN.toPrecision(1)) : mostOffN / 2;
    const band = [
      ...view.curve.map(({ reading, halfN }) => `${xOf(reading).toFixed(1)},${yOf(Math.min(halfN, mostOffN)).toFixed(1)}`),
      ...[...view.curve].reverse().map(({ reading, halfN }) => `${xOf(reading).toFixed(1)},${yOf(-Math.min(halfN, mostOffN)).toFixed(1)}`),
    ];
    const step = (x.values[1] ?? 1) - (x.values[0] ?? 0) || 1;
    return html`<svg viewBox="0 0 ${width} ${bottom + AXIS_PX}" width=${width} height=${bottom + AXIS_PX} role="img" aria-label=${words.residualLabel}>
      ${this.#refused(view, { xOf, width }, TOP_PX, bottom, false)}
      <path class="band" d=${band.length > 0 ? `M${band.join(' L')} Z` : ''} />
      <path class="axis" d="M${LEFT_PX + 0.5},${TOP_PX} V${bottom} H${right}" />
      <path class="verified" stroke-width="1" d="M${LEFT_PX},${middle} H${right}" />
      ${[end, 0, -end].map(
        (value) => svg`<path class="axis" d="M${LEFT_PX - 5},${yOf(value)} h5" />
        <text class="second" x=${LEFT_PX - 9} y=${yOf(value) + 4} text-anchor="end">${value > 0 ? `+${figure(value)}\u00a0N` : figure(value)}</text>`,
      )}
      ${view.points.map(({ way, reading, offN }) =>
        offN === undefined ? nothing : mark(way, xOf(reading), yOf(Math.max(-mostOffN, Math.min(mostOffN, offN)))),
      )}
      ${view.points.map(({ reading, offN, odd }) =>
        odd && offN !== undefined
          ? svg`<circle class="odd" cx=${xOf(reading)} cy=${yOf(Math.max(-mostOffN, Math.min(mostOffN, offN)))} r="9" />`
          : nothing,
      )}
      ${x.values.map(
        (value) => svg`<path class="axis" d="M${xOf(value)},${bottom} v5" />
        <text class="second" x=${xOf(value)} y=${bottom + 19} text-anchor="middle">${axisFigure(value, step, this.locale)}</text>`,
      )}
      <text class="second" x=${right} y=${bottom + 38} text-anchor="end">${words.axis}</text>
    </svg>`;
  }

  /** Hatched from the stop to where the readings would go on. */
  #refused({ refused }: CalibrationView, { xOf, width }: Pick<Scales, 'xOf' | 'width'>, top: number, bottom: number, named: boolean) {
    if (!refused) return nothing;
    const x = xOf(refused.reading);
    const beyondRight = refused.side === 'above';
    const [from, to] = beyondRight ? [x, width - RIGHT_PX] : [LEFT_PX, x];
    if (to - from < 2) return nothing;
    const height = bottom - top;
    const lines: string[] = [];
    for (let offset = from - height; offset < to; offset += 9) {
      const x0 = Math.max(from, offset);
      const x1 = Math.min(to, offset + height);
      if (x1 > x0)
        lines.push(`M${x0.toFixed(1)},${(bottom - (x0 - offset)).toFixed(1)} L${x1.toFixed(1)},${(bottom - (x1 - offset)).toFixed(1)}`);
    }
    return svg`<path class="hatch" d=${lines.join(' ')} /><path class="refused" d="M${x},${top} V${bottom}" />
      ${named ? svg`<text class="refused-text" x=${beyondRight ? Math.min(x + 6, width - RIGHT_PX) : x - 6} y=${bottom - 14} text-anchor=${beyondRight && width - RIGHT_PX - x > 90 ? 'start' : 'end'} >${refused.text}</text>` : nothing}`;
  }
}

interface Scales {
  readonly width: number;
  readonly mostN: number;
  readonly mostOffN: number;
  readonly x: { readonly values: readonly number[] };
  readonly xOf: (reading: number) => number;
  readonly yOf: (forceN: number) => number;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

function scalesOf({ points, curve, maker, target, refused }: CalibrationView, width: number): Scales {
  const readings = [...points, ...curve, ...maker].map(({ reading }) => reading).concat(refused ? [refused.reading] : []);
  const low = Math.min(0, ...readings);
  const spread = Math.max(...readings) - low || 1;
  const high = Math.max(...readings) + 0.06 * spread;
  const mostN = 1.06 * Math.max(...[...points, ...curve, ...maker].map(({ forceN }) => forceN), target?.highN ?? 0);
  const offs = points.flatMap(({ offN, odd }) => (offN === undefined || odd ? [] : [Math.abs(offN)]));
  const halves = curve.map(({ halfN }) => halfN);
  const mostOffN = 1.3 * Math.max(1e-9, ...offs, median(halves));
  const figures = axisFigures(low, high);
  return {
    width,
    mostN,
    mostOffN,
    x: figures,
    xOf: (reading) => LEFT_PX + ((reading - low) / (high - low)) * (width - LEFT_PX - RIGHT_PX),
    yOf: (forceN) => TOP_PX + UPPER_PX * (1 - forceN / mostN),
  };
}

function bandPath({ curve }: CalibrationView, xOf: (reading: number) => number, yOf: (forceN: number) => number): string {
  if (curve.length === 0) return '';
  const side = (sign: number) =>
    curve.map(
      ({ reading, forceN, halfN }) =>
        `${xOf(reading).toFixed(1)},${Math.max(TOP_PX, Math.min(TOP_PX + UPPER_PX, yOf(forceN + sign * halfN))).toFixed(1)}`,
    );
  return `M${[...side(1), ...side(-1).reverse()].join(' L')} Z`;
}

/** Up: a filled triangle. Down: an open one on its point. Put on anew: a disc. */
function mark(way: CalibrationPoint['way'], x: number, y: number) {
  switch (way) {
    case 'up':
      return svg`<path class="up" d="M${x},${y - 5} l5,9 h-10 z" />`;
    case 'down':
      return svg`<path class="down" d="M${x},${y + 5} l5,-9 h-10 z" />`;
    case 'plain':
      return svg`<circle class="plain" cx=${x} cy=${y} r="3.5" />`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'calibration-plot': CalibrationPlot;
  }
}
