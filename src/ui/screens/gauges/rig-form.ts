/** The rig and its weights: how they pull, what the scale is worth, and each weight with the force that it makes. */

import { html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KeptGauge, KeptRig, KeptWeight } from '../../../../shared/document/gauge.ts';
import { proposedMassesKg } from '../../../core/gauge/guided-run.ts';
import { type RigKind, rigForce } from '../../../core/gauge/rig.ts';
import { formatQuantity, type QuantityKind } from '../../../core/quantity.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/told-quantity.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { DEFAULT_RIG, gravityOf, rigOf } from '../../state/gauge-proof.ts';
import { newId } from '../../state/new-item.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { typedText } from '../machines/machine-editing.ts';
import { type EditGauge, editWeight, faultText, withoutWeight } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';
import { rigFormStyles } from './rig-form-styles.ts';

const words = gaugesEn.rig;
const KINDS: readonly RigKind[] = ['straight', 'roller', 'mid-span'];
/** A percentage on the page is half a 95 % interval. */
const COVERAGE = 2;

@customElement('rig-form')
export class RigForm extends LitElement {
  static override styles = [shared, editorStyles, selectFieldStyles, gaugeStyles, rigFormStyles];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) edit: EditGauge = () => {};
  readonly #figures = new Figures();

  override render() {
    const rig = this.gauge.rig ?? DEFAULT_RIG;
    return html`<ul class="cautions" aria-label=${words.cautionsLabel}>${words.cautions.map((caution) => html`<li>${caution}</li>`)}</ul>
      <div class="rig">
        ${DRAWINGS[rig.kind]}
        <div class="law">
          <label class="over" for="kind">${words.kind}</label>
          ${selectField({
            id: 'kind',
            value: rig.kind,
            choices: KINDS.map((value) => ({ value, text: words.kinds[value] })),
            onChosen: (kind) => this.#rig({ kind: KINDS.find((one) => one === kind) ?? 'straight' }),
          })}
          <p class="note">${words.laws[rig.kind]}</p>
        </div>
      </div>
      ${this.#weights(rig)}
      <details>
        <summary>${words.more}</summary>
        <div class="fields">
          ${this.#quantity(words.scaleStep, 'mass', 'g', rig.scaleStepKg, ({ told }) => told && this.#rig({ scaleStepKg: told.value }))}
          ${this.#quantity(words.scaleKnown, 'percent', '%', COVERAGE * rig.scaleRelativeU, ({ told }) => told && this.#rig({ scaleRelativeU: told.value / COVERAGE }), words.scaleNote)}
          <div>
            <label class="over" for="latitude">${words.latitude}</label>
            <input id="latitude" type="text" inputmode="decimal" .value=${rig.latitudeDeg === undefined ? '' : this.#figures.typed(rig.latitudeDeg)}
              aria-describedby="latitude-note" @change=${this.#latitude} />
            <p class="note" id="latitude-note">${words.latitudeNote}</p>
          </div>
          ${this.#quantity(words.height, 'length', 'm', rig.heightM, ({ told }) => this.#rig({ heightM: told?.value }))}
          ${this.#quantity(words.hanger, 'mass', 'g', rig.hangerKg, ({ told }) => this.#rig({ hangerKg: told?.value }), words.hangerNote)}
          ${rig.kind === 'mid-span' ? nothing : this.#quantity(words.beltBelow, 'length', 'mm', rig.beltBelowM, ({ told }) => this.#rig({ beltBelowM: told?.value }))}
          ${rig.kind === 'mid-span' ? this.#quantity(words.halfDistance, 'length', 'mm', rig.halfDistanceM, ({ told }) => this.#rig({ halfDistanceM: told?.value })) : nothing}
        </div>
      </details>`;
  }

  #weights(rig: KeptRig) {
    const weights = this.gauge.weights ?? [];
    const used = new Set(this.gauge.readings?.map(({ weightId }) => weightId));
    return html`<div class="weights">
      <h3>${words.weights}</h3>
      ${weights.map((weight) => this.#weight(weight, rig, used.has(weight.id)))}
      <div class="acts">
        <button @click=${this.#addWeight}>${words.addWeight}</button>
        ${weights.length === 0 ? html`<button ?disabled=${!this.gauge.targetForceN} @click=${this.#propose}>${words.propose}</button>` : nothing}
      </div>
      ${weights.length === 0 && !this.gauge.targetForceN ? html`<p class="note">${words.proposeNeeds}</p>` : nothing}
    </div>`;
  }

  #weight(weight: KeptWeight, rig: KeptRig, isUsed: boolean) {
    return html`<div class="weight" role="group" aria-label=${weight.name}>
      <div>
        <label class="over" for=${`name-${weight.id}`}>${words.weightName}</label>
        <input id=${`name-${weight.id}`} type="text" maxlength="120" .value=${weight.name} @change=${(event: Event) => this.#name(weight, event)} />
      </div>
      ${weight.knownN ? nothing : this.#quantity(words.mass, 'mass', 'g', weight.massKg, ({ told }) => told && this.edit(editWeight(weight.id, (one) => ({ ...one, massKg: told.value }))), '', true)}
      ${
        rig.kind === 'mid-span'
          ? this.#quantity(words.sag, 'length', 'mm', weight.sagM, ({ told }) =>
              this.edit(editWeight(weight.id, (one) => ({ ...one, sagM: told?.value }))),
            )
          : nothing
      }
      <div class="pulls"><span class="over">${words.force}</span><strong>${this.#force(weight)}</strong></div>
      ${isUsed ? nothing : html`<button class="quiet" aria-label=${words.removeWeight(weight.name)} @click=${() => this.edit(withoutWeight(weight.id))}>×</button>`}
    </div>`;
  }

  #force(weight: KeptWeight): string {
    if (weight.knownN) return formatQuantity(weight.knownN.value, 'N', { decimals: 2, format: this.#figures.format });
    const rig = rigOf(this.gauge, []);
    if (rig.kind === 'mid-span' && !(rig.halfDistanceM && weight.sagM)) return gaugesEn.proof.none;
    const sagM = weight.sagM === undefined ? undefined : { value: weight.sagM, standardUncertainty: 0 };
    return formatQuantity(rigForce(rig, { massKg: weight.massKg, sagM }).forceN, 'N', { decimals: 2, format: this.#figures.format });
  }

  #quantity(
    label: string,
    kind: QuantityKind,
    unit: string,
    value: number | undefined,
    onTold: (event: QuantityTold) => void,
    note = '',
    zeroAllowed = false,
  ) {
    return html`<told-quantity .label=${label} .kind=${kind} .unit=${unit} .value=${value} .note=${note} .zeroAllowed=${zeroAllowed}
      .faultText=${faultText} @quantity-told=${onTold}></told-quantity>`;
  }

  #rig(change: Partial<KeptRig>): void {
    this.edit((gauge) => ({ ...gauge, rig: { ...(gauge.rig ?? DEFAULT_RIG), ...change } }));
  }

  readonly #latitude = (event: Event) => {
    const value = Number(typedText(event).replace(',', '.'));
    this.#rig({ latitudeDeg: typedText(event) !== '' && Math.abs(value) <= 90 ? value : undefined });
  };

  #name(weight: KeptWeight, event: Event): void {
    const name = typedText(event);
    if (name) this.edit(editWeight(weight.id, (one) => ({ ...one, name })));
  }

  readonly #addWeight = () => {
    const id = newId();
    this.edit((gauge) => {
      const weights = gauge.weights ?? [];
      const last = weights.at(-1)?.massKg ?? 0;
      return { ...gauge, weights: [...weights, { id, name: words.weight(weights.length + 1), massKg: Number((last + 0.2).toFixed(3)) }] };
    });
  };

  readonly #propose = () => {
    const { targetForceN } = this.gauge;
    if (!targetForceN) return;
    const weights = proposedMassesKg(targetForceN, gravityOf(this.gauge)).map((massKg) => ({
      id: newId(),
      name: gaugesEn.proposedWeight(formatQuantity(massKg * 1000, 'g', { decimals: 0 })),
      massKg,
    }));
    this.edit((gauge) => ({ ...gauge, weights }));
  };
}

const drawing = (body: ReturnType<typeof svg>) => html`<svg class="drawing" viewBox="0 0 120 96" width="120" height="96" aria-hidden="true">
  <g fill="none" stroke="currentColor" stroke-width="1.5">${body}</g>
</svg>`;

const DRAWINGS: Readonly<Record<RigKind, ReturnType<typeof html>>> = {
  straight: drawing(
    svg`<path d="M30,6 H90 M60,6 V66" /><path d="M60,66 m-14,0 h28 v24 h-28 z" /><path d="M52,30 h16 M52,44 h16 M66,37 h18" stroke-width="2.5" />`,
  ),
  roller: drawing(
    svg`<path d="M6,24 V56 M6,40 H72" /><circle cx="78" cy="48" r="8" /><path d="M78,40 a8,8 0 0 1 8,8 V64" /><path d="M74,64 h24 v24 h-24 z" /><path d="M30,32 v16 M44,32 v16 M37,34 v-16" stroke-width="2.5" />`,
  ),
  'mid-span': drawing(
    svg`<path d="M8,12 V36 M112,12 V36 M8,24 L60,44 L112,24 M60,44 V60" /><path d="M48,60 h24 v26 h-24 z" /><path d="M24,24 v14 M34,28 v14 M29,27 v-14" stroke-width="2.5" />`,
  ),
};

declare global {
  interface HTMLElementTagNameMap {
    'rig-form': RigForm;
  }
}
