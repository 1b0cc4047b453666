/** Proving a gauge: rig and weights, the run, and what the readings have shown so far. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import { suspicionText } from '../../../words/gauge-en.ts';
import { gaugesEn as words } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/calibration-plot.ts';
import { shared } from '../../shared-styles.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import type { EditGauge } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';
import './maker-chart-form.ts';
import { oddRow } from './odd-row.ts';
import './proof-figures.ts';
import { calibrationTable, calibrationView, calibrationWords } from './proof-view.ts';
import './reading-rows.ts';
import './rig-form.ts';
import './run-panel.ts';
import { runSteps } from './run-steps.ts';

@customElement('prove-page')
export class ProvePage extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    gaugeStyles,
    css`
      .fold {
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .block + .fold {
        margin-block-start: var(--space-16);
      }
      .running {
        margin-block-end: var(--space-24);
        padding-block-end: var(--space-24);
        border-block-end: var(--stroke-line) solid var(--line);
      }
      calibration-plot {
        margin-block-end: var(--space-16);
      }
    `,
  ];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  readonly #figures = new Figures();

  override render() {
    const { gauge, proof } = this;
    const isNew = (gauge.readings?.length ?? 0) === 0;
    // While it is gone on with, the next step comes first and stays where it is; then what came of it.
    const isRunning = runSteps(gauge).left.length > 0;
    const rig = html`<rig-form .gauge=${gauge} .edit=${this.edit}></rig-form>`;
    const run = html`<run-panel .gauge=${gauge} .proof=${proof} .edit=${this.edit}></run-panel>`;
    return html`${isNew ? rig : nothing}
      ${isRunning ? html`<div class=${isNew ? 'block' : 'running'}>${run}</div>` : nothing}
      ${this.#found()}
      ${isRunning ? nothing : html`<div class="block">${run}</div>`}
      ${isNew ? nothing : html`<reading-rows class="fold" .gauge=${gauge} .proof=${proof} .edit=${this.edit}></reading-rows>`}
      ${isNew ? nothing : html`<maker-chart-form class="fold" .gauge=${gauge} .proof=${proof} .edit=${this.edit}></maker-chart-form>`}
      ${isNew ? nothing : html`<details class="fold"><summary>${words.rig.title}</summary>${rig}</details>`}`;
  }

  #found() {
    const { gauge, proof } = this;
    const { calibration } = proof;
    if (calibration.kind === 'no-calibration') return nothing;
    const view = calibrationView(gauge, proof, this.#figures);
    return html`<div class="columns">
      <div>
        <calibration-plot
          .view=${view}
          .words=${calibrationWords(gauge, calibration, this.#figures)}
          .table=${view && calibrationTable(view, this.#figures)}
          .locale=${this.#figures.locale}
        ></calibration-plot>
        ${this.#doubts()}
      </div>
      <proof-figures .gauge=${gauge} .proof=${proof} .edit=${this.edit}></proof-figures>
    </div>`;
  }

  #doubts() {
    const { calibration, suspicions } = this.proof;
    if (calibration.kind === 'no-calibration') return nothing;
    const slips = calibration.slips.map(({ row }) => html`<li>${words.proof.slip(row, oddRow(this.proof, row) ?? '')}</li>`);
    return html`${slips.length > 0 ? html`<h3>${words.proof.slips}</h3><ul class="told">${slips}</ul>` : nothing}
      ${suspicions.length > 0 ? html`<h3>${words.proof.suspicions}</h3><ul class="told">${suspicions.map((one) => html`<li>${suspicionText(one)}</li>`)}</ul>` : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'prove-page': ProvePage;
  }
}
