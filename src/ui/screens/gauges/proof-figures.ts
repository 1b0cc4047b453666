/** The proof in figures: what one reading is good to, how the gauge repeats, and a few lines of the chart with what is refused. */

import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { chartRows } from '../../../core/gauge/chart.ts';
import { asymptoteOf, checkedChart } from '../../../core/gauge/maker-chart.ts';
import { formatPercent, formatQuantity } from '../../../core/quantity.ts';
import { chosenByText, curveName, readingText, refusalText } from '../../../words/gauge-en.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures, together } from '../../format.ts';
import '../../parts/grade-mark.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { ceilingFrom } from '../../state/gauge-build.ts';
import { type GaugeProof, worstInTarget } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import type { EditGauge } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.proof;
const FITS = ['auto', 'line', 'quadratic', 'saturating', 'spline'] as const;
const ROWS_HERE = 6;

@customElement('proof-figures')
export class ProofFigures extends LitElement {
  static override styles = [shared, editorStyles, selectFieldStyles, gaugeStyles];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  readonly #figures = new Figures();

  override render() {
    const { calibration, friction } = this.proof;
    if (calibration.kind === 'no-calibration') return nothing;
    const { figures, fit, step, choice } = calibration;
    const worst = worstInTarget(calibration, this.gauge.targetForceN);
    const percent = (share: number | undefined) =>
      share === undefined ? words.none : formatPercent(share, { decimals: 1, format: this.#figures.format });
    const asymptote = asymptoteOf(calibration);
    const facts: readonly (readonly [string, string])[] = [
      [words.repeatability, percent(figures.repeatabilityRelative)],
      [words.reproducibility, percent(figures.reproducibilityRelative)],
      [words.reversibility, percent(figures.reversibilityRelative)],
      [words.interpolation, percent(figures.interpolationErrorRelative)],
      ...(figures.zeroReading === undefined ? [] : [[words.zero, readingText(figures.zeroReading, step)] as const]),
      ...(figures.lowestForceN === undefined ? [] : [[words.lowest, this.#figures.rough(figures.lowestForceN, 'N')] as const]),
      ...(friction === undefined ? [] : [[words.friction, percent(friction)] as const]),
      [words.curve, curveName(fit.curve.kind)],
      ...(asymptote ? [[words.ceiling, together(this.#figures.measured(asymptote.reading, asymptote.u95), '')] as const] : []),
    ];
    return html`${
      worst === undefined
        ? nothing
        : html`<p>${this.gauge.targetForceN ? words.good : words.goodAnywhere}</p><p class="big">± ${this.#figures.measured(worst, worst).doubt} N</p>`
    }
      <dl class="facts">${facts.map(([name, value]) => html`<dt>${name}</dt><dd>${value}</dd>`)}</dl>
      <label class="over" for="fit">${words.fit}</label>
      ${selectField({
        id: 'fit',
        value: this.gauge.fit ?? 'auto',
        choices: FITS.map((value) => ({ value, text: words.fits[value] })),
        describedBy: 'chosen',
        onChosen: (value) => this.edit((gauge) => ({ ...gauge, fit: FITS.find((one) => one === value) })),
      })}
      <p class="note" id="chosen">${words.chosen(chosenByText(choice))} ${words.manner}</p>
      ${this.#chart(calibration)}`;
  }

  #chart(calibration: Calibration) {
    const { step, stop } = calibration;
    const rows = chartRows(calibration, ROWS_HERE);
    const refused = checkedChart(calibration, this.gauge.makerChart ?? [], ceilingFrom(this.gauge)?.reading).filter(
      ({ kind }) => kind === 'refused',
    );
    if (rows.length === 0) return nothing;
    return html`<table>
        <caption>${words.chart}</caption>
        <thead><tr>${words.chartColumns.map((column, k) => html`<th scope="col" class=${k > 0 ? 'number' : ''}>${column}</th>`)}</tr></thead>
        <tbody>
          ${rows.map(({ reading, force }) => {
            const { value, doubt } = this.#figures.measured(force.forceN, force.u95N);
            return html`<tr><th scope="row">${readingText(reading, step)}</th><td class="number strong">${value} N</td><td class="number">± ${doubt} N</td></tr>`;
          })}
          ${refused.map(
            ({ point }) => html`<tr class="refused"><th scope="row">${readingText(point.reading, step)}</th>
              <td colspan="2"><grade-mark grade="unusable" .word=${words.noForce}></grade-mark> <s>${formatQuantity(point.forceN, 'N', { atMostDigits: 4 })}</s></td></tr>`,
          )}
        </tbody>
      </table>
      ${stop ? html`<p class="note">${refusalText('at-stop', calibration)}</p>` : nothing}
      <div class="acts"><a class="button" href=${hrefOf('gauges', this.gauge.id, 'chart')}>${words.openChart}</a></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'proof-figures': ProofFigures;
  }
}
