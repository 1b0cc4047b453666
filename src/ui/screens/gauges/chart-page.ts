/** The chart of a gauge: as it prints, as files, and what the gauge does to a belt in a machine. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import type { Calibration } from '../../../core/gauge/calibration.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures, together } from '../../format.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { machineSpans, riseIn, usualStiffnessN } from '../../state/gauge-rise.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { beltLabel } from './belt-label.ts';
import { saveChartTable, saveStrip } from './chart-files.ts';
import { type EditGauge, faultText } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';
import './printed-chart.ts';

const words = gaugesEn.chart;
const SECOND_UNITS = ['lbf', 'kgf', 'ozf'] as const;
/** A span that is often met; a person tells their own. */
const USUAL_LENGTH_M = 0.3;

/** The paper belongs to the whole document and not to an element of it; while the chart stands there, it is A5. */
const paper = new CSSStyleSheet();
paper.replaceSync('@page { size: A5; margin: 9mm; }');

@customElement('chart-page')
export class ChartPage extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    gaugeStyles,
    css`
      .acts {
        margin-block: 0 var(--space-16);
      }
      .unit {
        display: flex;
        align-items: center;
        gap: var(--space-8);
      }
      @media print {
        .acts,
        .rise {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @state() secondUnit: string = SECOND_UNITS[0];
  @state() stiffnessN: number | undefined;
  @state() lengthM = USUAL_LENGTH_M;
  @state() spanKey = '';
  readonly #figures = new Figures();

  override connectedCallback(): void {
    super.connectedCallback();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, paper];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== paper);
  }

  override render() {
    const { gauge, document } = this;
    const { calibration } = this.proof;
    if (calibration.kind === 'no-calibration' || calibration.verified.kind === 'nowhere') return html`<p>${words.nothing}</p>`;
    const belt = beltLabel(gauge, document);
    return html`<div class="acts">
        <button class="solid" @click=${() => print()}>${words.print}</button>
        <button @click=${() => saveChartTable(gauge, calibration)}>${words.csv}</button>
        <button @click=${() => saveStrip(gauge, calibration, belt, this.#figures)}>${words.svg}</button>
        <span class="unit"><label for="unit">${words.unit}</label>
          ${selectField({
            id: 'unit',
            value: this.secondUnit,
            choices: SECOND_UNITS.map((value) => ({ value, text: value })),
            onChosen: (value) => {
              this.secondUnit = value;
            },
          })}</span>
      </div>
      <printed-chart .gauge=${gauge} .calibration=${calibration} .belt=${belt} .secondUnit=${this.secondUnit}></printed-chart>
      ${this.#rise(calibration)}`;
  }

  #rise(calibration: Calibration) {
    const { gauge, document } = this;
    const rise = words.rise;
    const stiffness = this.stiffnessN ?? usualStiffnessN(gauge, document);
    const spans = machineSpans(document);
    const found = riseIn(gauge, { axialStiffnessN: stiffness, givingLengthM: this.lengthM });
    const { verified } = calibration;
    const target =
      gauge.targetForceN ?? (verified.kind === 'verified' ? { lowN: verified.forceLowN, highN: verified.forceHighN } : undefined);
    const shown = target ? [target.lowN, (target.lowN + target.highN) / 2, target.highN] : [];
    return html`<section class="block rise" aria-labelledby="rise">
      <h2 id="rise">${rise.title}</h2>
      <p>${rise.lead}</p>
      <div class="fields">
        ${
          spans.length > 0
            ? html`<div><label class="over" for="span">${rise.span}</label>${selectField({
                id: 'span',
                value: this.spanKey,
                choices: [{ value: '', text: rise.noSpan }, ...spans.map(({ key, text }) => ({ value: key, text }))],
                onChosen: (key) => {
                  this.spanKey = key;
                  this.lengthM = spans.find((span) => span.key === key)?.lengthM ?? this.lengthM;
                },
              })}</div>`
            : nothing
        }
        <told-quantity .label=${rise.stiffness} kind="force" unit="kN" .value=${stiffness} .note=${rise.stiffnessNote} .faultText=${faultText}
          @quantity-told=${({ told }: HTMLElementEventMap['quantity-told']) => {
            this.stiffnessN = told?.value;
          }}></told-quantity>
        <told-quantity .label=${rise.length} kind="length" unit="mm" .value=${this.lengthM} .note=${rise.lengthNote} .faultText=${faultText}
          @quantity-told=${({ told }: HTMLElementEventMap['quantity-told']) => {
            if (told) this.lengthM = told.value;
          }}></told-quantity>
      </div>
      ${
        found
          ? html`<p class="strong">${rise.result(together(this.#figures.measured(found.value, 2 * found.standardUncertainty), 'N'))}</p>
        <div class="scrolls" role="region" tabindex="0" aria-label=${rise.caption}><table>
          <caption>${rise.caption}</caption>
          <thead><tr><th scope="col">${rise.columns[1]}</th><th scope="col">${rise.columns[2]}</th></tr></thead>
          <tbody>${shown.map((forceN) => html`<tr><td>${this.#figures.typed(forceN, 'N')}</td><td>${together(this.#figures.measured(forceN - found.value, 2 * found.standardUncertainty), 'N')}</td></tr>`)}</tbody>
        </table></div>`
          : html`<p class="note">${rise.needs}</p>`
      }
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'chart-page': ChartPage;
  }
}
