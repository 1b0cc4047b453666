/** The conversion chart as it is printed on A5, with the strip for the gauge. Black on white on paper, the page's own colours on the screen. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { chartRows } from '../../../core/gauge/chart.ts';
import { formatQuantity, inUnit } from '../../../core/quantity.ts';
import { curveName, rangeText, readingText } from '../../../words/gauge-en.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/grade-mark.ts';
import { shared } from '../../shared-styles.ts';
import { chartName, DEFAULT_RIG, worstInTarget } from '../../state/gauge-proof.ts';
import { drawnStrip, STRIP, stripOf } from './chart-strip.ts';

const words = gaugesEn.chart;

@customElement('printed-chart')
export class PrintedChart extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        max-inline-size: 40rem;
        padding: var(--space-24);
        border: var(--stroke-line) solid var(--line);
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        align-items: baseline;
        gap: 0 var(--space-16);
      }
      h2 {
        font-size: 1.6rem;
        line-height: 1.3;
      }
      table {
        inline-size: 100%;
        margin-block: var(--space-16) var(--space-8);
        border-collapse: collapse;
      }
      th,
      td {
        padding: 0.3rem 0.4rem;
        border-block-end: 0.75px solid var(--ink-3);
        text-align: end;
        white-space: nowrap;
        font-weight: var(--weight-text);
      }
      thead th {
        border-block-end: 1px solid var(--ink);
        font-size: var(--note-size);
      }
      th:first-child {
        text-align: start;
      }
      .strong {
        font-weight: var(--weight-strong);
      }
      .wanted > * {
        background: var(--aim-wash);
        print-color-adjust: exact;
      }
      .last td {
        text-align: start;
        white-space: normal;
      }
      dl {
        display: grid;
        grid-template-columns: 7rem 1fr;
        gap: 0.2rem var(--space-16);
        margin-block: var(--space-16);
        font-size: var(--note-size);
        line-height: var(--note-line);
      }
      svg.strip {
        display: block;
        inline-size: 100%;
        block-size: auto;
        margin-block: var(--space-4) var(--space-16);
        fill: currentColor;
        print-color-adjust: exact;
      }
      .strip-target {
        fill: var(--aim-wash);
      }
      thead th {
        white-space: normal;
      }
      @media (max-width: 40rem) {
        :host {
          padding: var(--space-8);
        }
        dl {
          grid-template-columns: 5rem 1fr;
        }
        .second {
          display: none;
        }
      }
      @media (max-width: 24rem) {
        th,
        td {
          padding-inline: 0.15rem;
          white-space: normal;
        }
      }
      @media print {
        :host {
          max-inline-size: none;
          padding: 0;
          border: 0;
          font-size: 9.5pt;
          line-height: 1.25;
        }
        .second {
          display: table-cell;
        }
        th,
        td {
          padding-block: 0.7mm;
        }
        grade-mark {
          font-size: inherit;
        }
      }
    `,
  ];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) calibration!: Calibration;
  /** Belt kind in words; empty where it was not told. */
  @property() belt = '';
  @property() secondUnit = 'lbf';
  readonly #figures = new Figures();

  override render() {
    const { gauge, calibration, belt } = this;
    const { verified } = calibration;
    if (verified.kind === 'nowhere') return nothing;
    const target = gauge.targetForceN;
    return html`<div class="head"><h2>${gauge.name}</h2><span>${words.idLine(dateOf(gauge, this.#figures.locale, 'long'), chartName(gauge))}</span></div>
      <p>${words.title(belt)}</p>
      <p class="strong">${gaugesEn.verifiedFrom[0]}${rangeText(verified)}</p>
      ${this.#table()}
      ${target ? html`<p class="note">${words.shaded(this.#figures.forceRange(target))}</p>` : nothing}
      ${this.#strip()}
      <dl>${this.#facts().map(([name, text]) => html`<dt>${name}</dt><dd>${text}</dd>`)}</dl>
      <p class="note">${words.care}</p>`;
  }

  #table() {
    const { calibration, gauge, secondUnit } = this;
    const { verified, step, stop, direction } = calibration;
    if (verified.kind === 'nowhere') return nothing;
    const target = gauge.targetForceN;
    const rows = chartRows(calibration);
    const second = (forceN: number) => inUnit(forceN, { kind: 'force', unit: secondUnit });
    const [low, high] = [readingText(verified.readingLow, step), readingText(verified.readingHigh, step)];
    return html`<table>
      <thead><tr>${words.columns.map((column, k) => html`<th scope="col" class=${k > 2 ? 'second' : ''}>${column}</th>`)}</tr></thead>
      <tbody>
        ${rows.map(({ reading, force: { forceN, u95N } }) => {
          const { value, doubt } = this.#figures.measured(forceN, u95N);
          const other = this.#figures.measured(second(forceN), second(u95N));
          const isWanted = target && forceN >= target.lowN && forceN <= target.highN;
          return html`<tr class=${isWanted ? 'wanted' : ''}>
            <th scope="row">${readingText(reading, step)}</th>
            <td class="strong">${value} N</td><td>± ${doubt} N</td>
            <td class="second">${other.value} ${secondUnit}</td><td class="second">± ${other.doubt} ${secondUnit}</td>
          </tr>`;
        })}
        <tr class="last"><th scope="row">${direction > 0 ? words.outside(low, high) : words.outsideFalling(low, high)}</th>
          <td colspan="4"><grade-mark grade="unusable" .word=${words.noForce(stop ? readingText(stop.reading, step) : '')}></grade-mark></td></tr>
      </tbody>
    </table>`;
  }

  #strip() {
    const { gauge, calibration, belt } = this;
    const strip = stripOf(calibration, gauge.targetForceN);
    const { verified } = calibration;
    if (!strip || verified.kind === 'nowhere') return nothing;
    return html`<p class="note">${words.strip}</p>
      <svg class="strip" viewBox="0 0 ${STRIP.width} ${STRIP.height}" role="img" aria-label=${words.strip}>
        ${drawnStrip(strip, stripTexts(gauge, calibration, belt, this.#figures))}
      </svg>`;
  }

  #facts(): readonly (readonly [string, string])[] {
    const { gauge, calibration } = this;
    const { rig = DEFAULT_RIG, weights = [], readings = [] } = gauge;
    const masses = weights
      .filter(({ knownN }) => !knownN)
      .map(({ massKg }) => massKg)
      .sort((a, b) => a - b);
    const kilograms = (massKg: number) => formatQuantity(massKg, 'kg', { atMostDigits: 4, format: this.#figures.format });
    const range = masses.length > 0 ? `${this.#figures.typed(masses[0]!)} – ${kilograms(masses.at(-1)!)}` : '';
    const { fit } = calibration;
    return [
      [words.weights, words.weightsText(weights.length, range, gaugesEn.rig.kinds[rig.kind], calibration.rows.length)],
      [words.scale, words.scaleText(formatQuantity(rig.scaleStepKg * 1000, 'g', { atMostDigits: 3, format: this.#figures.format }))],
      [words.curve, words.curveText(curveName(fit.curve.kind), fit.degreesOfFreedom, readings.filter(({ dropped }) => dropped).length)],
      [words.machine, words.machineText],
    ];
  }
}

export function dateOf(gauge: KeptGauge, locale: string, month: 'long' | 'short'): string {
  const at = gauge.readings?.at(-1)?.at.at ?? gauge.changedAt;
  return new Intl.DateTimeFormat(locale, { day: 'numeric', month, year: 'numeric' }).format(new Date(at));
}

export function stripTexts(gauge: KeptGauge, calibration: Calibration, belt: string, figures: Figures) {
  const { verified } = calibration;
  const worst = worstInTarget(calibration, gauge.targetForceN) ?? worstInTarget(calibration, undefined) ?? 0;
  const u = `${figures.measured(worst, worst).doubt} N`;
  return {
    name: gauge.name,
    above: words.stripAbove,
    below: verified.kind === 'verified' ? words.stripBelow(u, rangeText(verified)) : '',
    foot: words.stripFoot(belt, dateOf(gauge, figures.locale, 'short')),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'printed-chart': PrintedChart;
  }
}
