/** What is known of a gauge besides its readings: name, scale, belt, what is wanted of it, its build. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { belts } from '../../../../shared/belts.ts';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import type { QuantityKind } from '../../../core/quantity.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import '../../parts/told-quantity.ts';
import type { QuantityTold } from '../../parts/told-quantity.ts';
import { shared } from '../../shared-styles.ts';
import { ceilingFrom } from '../../state/gauge-build.ts';
import { editorStyles } from '../machines/editor-styles.ts';
import { typedText } from '../machines/machine-editing.ts';
import { type EditGauge, faultText } from './gauge-editing.ts';
import { gaugeStyles } from './gauge-styles.ts';

const words = gaugesEn.about;

@customElement('about-gauge')
export class AboutGauge extends LitElement {
  static override styles = [
    shared,
    editorStyles,
    selectFieldStyles,
    gaugeStyles,
    css`
      .fold {
        margin-block: var(--space-24);
        border-block-start: var(--stroke-line) solid var(--line);
      }
    `,
  ];

  @property({ attribute: false }) document!: KeptDocument;
  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @property({ type: Boolean }) open = false;
  readonly #figures = new Figures();

  override render() {
    const { gauge, document } = this;
    const kinds = [
      { value: '', text: words.noBelt },
      ...document.belts.map(({ id, name }) => ({ value: id, text: name })),
      ...belts.map(({ id, label }) => ({ value: id, text: label })),
    ];
    const { targetForceN } = gauge;
    const ceiling = ceilingFrom(gauge);
    return html`<details class="fold" ?open=${this.open}>
      <summary>${words.title}</summary>
      <div class="fields">
        <div>
          <label class="over" for="name">${words.name}</label>
          <input id="name" type="text" .value=${gauge.name} maxlength="120" @change=${this.#named} />
        </div>
        <div>
          <label class="over" for="unit">${words.unit}</label>
          <input id="unit" type="text" .value=${gauge.unit ?? ''} maxlength="40" @change=${this.#counted} />
        </div>
        <div>
          <label class="over" for="belt">${words.belt}</label>
          ${selectField({ id: 'belt', value: gauge.beltId ?? '', choices: kinds, onChosen: (id) => this.#change({ beltId: id || undefined }) })}
        </div>
        ${this.#quantity(words.targetFrom, 'force', 'N', targetForceN?.lowN, ({ told }) => this.#target('lowN', told?.value))}
        ${this.#quantity(words.targetTo, 'force', 'N', targetForceN?.highN, ({ told }) => this.#target('highN', told?.value))}
        ${this.#quantity(words.tolerance, 'percent', '%', gauge.toleranceRelative, ({ told }) => this.#change({ toleranceRelative: told && told.value <= 1 ? told.value : undefined }), words.toleranceNote)}
        ${this.#quantity(words.needsSpan, 'length', 'mm', gauge.needsSpanM, ({ told }) => this.#change({ needsSpanM: told?.value }))}
        ${this.#quantity(words.base, 'length', 'mm', gauge.baseM, ({ told }) => this.#change({ baseM: told?.value }))}
        ${this.#quantity(
          words.deflection,
          'length',
          'mm',
          gauge.deflectionM?.value,
          ({ told }) =>
            this.#change({
              deflectionM: told && { value: told.value, standardUncertainty: told.standardUncertainty ?? 0.05 * told.value },
            }),
          words.deflectionNote,
          gauge.deflectionM?.standardUncertainty,
        )}
        ${this.#quantity(words.reach, 'length', 'mm', gauge.build?.reachM, ({ told }) => this.#build({ reachM: told?.value }), words.reachNote)}
        ${this.#quantity(words.travel, 'length', 'mm', gauge.build?.travelM, ({ told }) => this.#build({ travelM: told?.value }))}
        ${this.#quantity(words.perTravel, 'number', '', gauge.build?.readingPerM === undefined ? undefined : gauge.build.readingPerM / 1000, ({ told }) => this.#build({ readingPerM: told && told.value * 1000 }))}
        ${this.#quantity(words.rest, 'number', '', gauge.build?.restReading, ({ told }) => this.#build({ restReading: told?.value }), '', undefined, true)}
        ${this.#quantity(words.spring, 'number', '', gauge.build?.springNPerM === undefined ? undefined : gauge.build.springNPerM / 1000, ({ told }) => this.#build({ springNPerM: told && told.value * 1000 }))}
        ${this.#quantity(words.ceiling, 'number', '', gauge.ceilingReading, ({ told }) => this.#change({ ceilingReading: told?.value }), words.ceilingNote)}
        ${this.#quantity(words.price, 'number', '', gauge.price, ({ told }) => this.#change({ price: told?.value }))}
      </div>
      ${ceiling ? html`<p class="strong">${words.ceilingIs(this.#figures.typed(ceiling.reading), ceiling.forceN === undefined ? '' : this.#figures.rough(ceiling.forceN, 'N'))}</p>` : nothing}
      <div class="acts">
        <button class="quiet" @click=${() => this.dispatchEvent(new Event('gauge-removed', { bubbles: true, composed: true }))}>${gaugesEn.remove}</button>
      </div>
    </details>`;
  }

  #quantity(
    label: string,
    kind: QuantityKind,
    unit: string,
    value: number | undefined,
    onTold: (event: QuantityTold) => void,
    note = '',
    standardUncertainty?: number | undefined,
    zeroAllowed = false,
  ) {
    return html`<told-quantity
      .label=${label}
      .kind=${kind}
      .unit=${unit}
      .value=${value}
      .standardUncertainty=${standardUncertainty}
      .note=${note}
      .zeroAllowed=${zeroAllowed}
      .faultText=${faultText}
      @quantity-told=${onTold}
    ></told-quantity>`;
  }

  /** One end alone is held until the other is told: it stands for a range of nearly nothing. */
  #target(end: 'lowN' | 'highN', value: number | undefined): void {
    this.edit((gauge) => {
      if (value === undefined) return { ...gauge, targetForceN: undefined };
      const was = gauge.targetForceN;
      const other = end === 'lowN' ? (was?.highN ?? value * 1.5) : (was?.lowN ?? value / 1.5);
      const next = end === 'lowN' ? { lowN: value, highN: other } : { lowN: other, highN: value };
      if (next.lowN < next.highN) return { ...gauge, targetForceN: next };
      return { ...gauge, targetForceN: end === 'lowN' ? { lowN: value, highN: value * 1.5 } : { lowN: value / 1.5, highN: value } };
    });
  }

  #build(change: NonNullable<KeptGauge['build']>): void {
    this.edit((gauge) => ({ ...gauge, build: { ...gauge.build, ...change } }));
  }

  #change(change: Partial<KeptGauge>): void {
    this.edit((gauge) => ({ ...gauge, ...change }));
  }

  readonly #named = (event: Event) => {
    const name = typedText(event);
    if (name) this.#change({ name });
  };

  readonly #counted = (event: Event) => this.#change({ unit: typedText(event) || undefined });
}

declare global {
  interface HTMLElementTagNameMap {
    'about-gauge': AboutGauge;
  }
}
