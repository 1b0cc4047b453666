/** Points between horizontal lines: differences between their limits of agreement, or a check piece between its control limits. */

import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { axisFigure } from './axis-figure.ts';
import { axisFigures } from './draw-axis.ts';
import { OwnWidth } from './own-width.ts';
import { plotStyles } from './plot-styles.ts';
import { type PlotTable, spokenTable } from './spoken-table.ts';

export interface SpreadLine {
  readonly at: number;
  readonly text: string;
  readonly weight: 'middle' | 'inner' | 'outer';
  /** Interval of the line itself. */
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

export interface SpreadView {
  readonly points: readonly { readonly x: number; readonly y: number; readonly odd?: boolean | undefined }[];
  readonly lines: readonly SpreadLine[];
  readonly xUnit: string;
  readonly yUnit: string;
  /** Figures under the axis; without them points stand in their order. */
  readonly hasX: boolean;
}

const HEIGHT_PX = 190;
const AXIS_PX = 30;
const LEFT_PX = 56;
const RIGHT_PX = 20;

@customElement('spread-plot')
export class SpreadPlot extends LitElement {
  static override styles = [
    plotStyles,
    css`
      .axis {
        fill: none;
        stroke: var(--edge);
      }
      .middle {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .inner {
        stroke: var(--ink-2);
        stroke-width: 1.5;
      }
      .outer {
        stroke: var(--ink-2);
        stroke-width: 1.5;
        stroke-dasharray: 6 4;
      }
      .around {
        fill: var(--ink-3);
        opacity: 0.18;
      }
      .point {
        fill: var(--ink);
        stroke: var(--paper);
      }
      .odd {
        fill: none;
        stroke: var(--doubtful);
        stroke-width: 2;
      }
    `,
  ];

  @property({ attribute: false }) view: SpreadView | undefined;
  @property({ attribute: false }) table: PlotTable | undefined;
  @property() label = '';
  @property() locale = 'en';
  readonly #width = new OwnWidth(this);

  override render() {
    const { view } = this;
    const width = this.#width.px;
    if (!view || width === 0) return nothing;
    const ys = [...view.points.map(({ y }) => y), ...view.lines.flatMap(({ at, low, high }) => [at, low ?? at, high ?? at])];
    const xs = view.points.map(({ x }) => x);
    const [yLow, yHigh] = widened(Math.min(...ys), Math.max(...ys));
    const [xLow, xHigh] = widened(Math.min(...xs, view.hasX ? Infinity : 0), Math.max(...xs, view.hasX ? -Infinity : 1));
    const yOf = (y: number) => 8 + HEIGHT_PX * (1 - (y - yLow) / (yHigh - yLow));
    const xOf = (x: number) => LEFT_PX + ((x - xLow) / (xHigh - xLow)) * (width - LEFT_PX - RIGHT_PX);
    const bottom = HEIGHT_PX + 8;
    const yTicks = axisFigures(yLow, yHigh).values;
    const yStep = (yTicks[1] ?? 1) - (yTicks[0] ?? 0) || 1;
    const xTicks = view.hasX ? axisFigures(xLow, xHigh).values : [];
    const xStep = (xTicks[1] ?? 1) - (xTicks[0] ?? 0) || 1;
    return html`<svg viewBox="0 0 ${width} ${bottom + AXIS_PX}" width=${width} height=${bottom + AXIS_PX} role="img" aria-label=${this.label}>
        ${view.lines.map(({ low, high }) =>
          low === undefined || high === undefined
            ? nothing
            : svg`<rect class="around" x=${LEFT_PX} y=${yOf(high)} width=${width - LEFT_PX - RIGHT_PX} height=${yOf(low) - yOf(high)} />`,
        )}
        <path class="axis" d="M${LEFT_PX + 0.5},8 V${bottom} H${width - RIGHT_PX}" />
        ${yTicks.map(
          (value, index) => svg`<path class="axis" d="M${LEFT_PX - 5},${yOf(value)} h5" />
          <text class="second" x=${LEFT_PX - 9} y=${yOf(value) + 4} text-anchor="end">${axisFigure(value, yStep, this.locale)}${index === yTicks.length - 1 && view.yUnit ? `\u00a0${view.yUnit}` : ''}</text>`,
        )}
        ${xTicks.map(
          (value, index) => svg`<path class="axis" d="M${xOf(value)},${bottom} v5" />
          <text class="second" x=${xOf(value)} y=${bottom + 19} text-anchor="middle">${axisFigure(value, xStep, this.locale)}${index === xTicks.length - 1 ? `\u00a0${view.xUnit}` : ''}</text>`,
        )}
        ${view.lines.map(
          ({ at, weight, text }) => svg`<path class=${weight} d="M${LEFT_PX},${yOf(at)} H${width - RIGHT_PX}" />
          <text class="second" x=${width - RIGHT_PX} y=${yOf(at) - 5} text-anchor="end">${text}</text>`,
        )}
        ${view.points.map(
          ({ x, y, odd }) => svg`<circle class="point" cx=${xOf(x)} cy=${yOf(y)} r="4" />
          ${odd ? svg`<circle class="odd" cx=${xOf(x)} cy=${yOf(y)} r="9" />` : nothing}`,
        )}
      </svg>
      ${this.table ? spokenTable(this.table) : nothing}`;
  }
}

function widened(low: number, high: number): readonly [number, number] {
  const margin = 0.12 * (high - low) || Math.abs(high) * 0.1 || 1;
  return [low - margin, high + margin];
}

declare global {
  interface HTMLElementTagNameMap {
    'spread-plot': SpreadPlot;
  }
}
