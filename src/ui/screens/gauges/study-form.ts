/** Several people read the same weights with one gauge: the readings, and what of their spread is the gauge's own. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { gaugeStudy } from '../../../core/gauge/gauge-study.ts';
import { formatPercent } from '../../../core/quantity.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { proofOf, withGauge } from '../../state/gauge-proof.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { typedReading } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.study;

@customElement('study-form')
export class StudyForm extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    gaugeStyles,
    css`
      form {
        margin-block: var(--space-12);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) target: { readonly lowN: number; readonly highN: number } | undefined;
  @state() gaugeId = '';
  @state() weightId = '';
  @state() fault = '';
  readonly #figures = new Figures();

  override render() {
    const gauges = this.document.gauges.filter(({ weights }) => (weights?.length ?? 0) > 0);
    const gauge = gauges.find(({ id }) => id === this.gaugeId) ?? gauges.find(({ study }) => study?.length) ?? gauges[0];
    if (!gauge) return nothing;
    const weights = gauge.weights ?? [];
    const weightId = weights.find(({ id }) => id === this.weightId)?.id ?? weights[0]?.id ?? '';
    const last = gauge.study?.at(-1)?.person ?? '';
    return html`<details ?open=${(gauge.study?.length ?? 0) > 0}>
      <summary>${words.title}</summary>
      <p>${words.lead}</p>
      <form class="fields" @submit=${(event: Event) => this.#add(event, gauge, weightId)}>
        <div><label class="over" for="gauge">${words.gauge}</label>${selectField({
          id: 'gauge',
          value: gauge.id,
          choices: gauges.map(({ id, name }) => ({ value: id, text: name })),
          onChosen: (id) => {
            this.gaugeId = id;
          },
        })}</div>
        <div><label class="over" for="person">${words.person}</label><input id="person" name="person" type="text" maxlength="60" .value=${last} /></div>
        <div><label class="over" for="weight">${words.weight}</label>${selectField({
          id: 'weight',
          value: weightId,
          choices: weights.map(({ id, name }) => ({ value: id, text: name })),
          onChosen: (id) => {
            this.weightId = id;
          },
        })}</div>
        <div><label class="over" for="reading">${words.reading}</label><input id="reading" name="reading" type="text" inputmode="decimal" autocomplete="off" /></div>
        <div class="acts"><button type="submit">${words.add}</button></div>
      </form>
      ${this.fault ? html`<p class="note" role="alert">${this.fault}</p>` : nothing}
      ${this.#result(gauge)}
    </details>`;
  }

  #result(gauge: KeptGauge) {
    const { calibration } = proofOf(gauge, this.document.belts);
    const readings = gauge.study ?? [];
    if (readings.length === 0) return nothing;
    if (!this.target) return html`<p class="note">${words.needsTarget}</p>`;
    const middleN = (this.target.lowN + this.target.highN) / 2;
    const slope = calibration.kind === 'calibration' ? Math.abs(calibration.fit.curve.slope(middleN)) : Number.NaN;
    const window = (this.target.highN - this.target.lowN) * slope;
    const study =
      window > 0
        ? gaugeStudy({ readings: readings.map(({ person, weightId, reading }) => ({ person, load: weightId, value: reading })), window })
        : undefined;
    if (!study || study.shareOfWindow === undefined) return html`<p class="note">${words.needs}</p>`;
    const share = formatPercent(study.shareOfWindow, { format: this.#figures.format });
    return html`<p role="status">${words.result(gauge.name, share)} ${words.parts(this.#figures.rough(study.repeatability / slope, 'N'), this.#figures.rough(study.reproducibility / slope, 'N'))}</p>`;
  }

  #add(event: Event, gauge: KeptGauge, weightId: string): void {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const fields = new FormData(form);
    const person = String(fields.get('person') ?? '').trim();
    const reading = typedReading(String(fields.get('reading') ?? ''));
    this.fault = reading === undefined || person === '' ? gaugesEn.run.notANumber : '';
    if (reading === undefined || person === '' || weightId === '') return;
    void this.workbench.kept.change((document) =>
      withGauge(document, gauge.id, (one) => ({ ...one, study: [...(one.study ?? []), { person, weightId, reading }] })),
    );
    const field = form.querySelector<HTMLInputElement>('#reading');
    if (field) field.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'study-form': StudyForm;
  }
}
