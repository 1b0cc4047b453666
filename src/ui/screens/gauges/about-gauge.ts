/** What is known of a gauge besides its readings: name, scale, belt, what is wanted of it, its build. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
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
  @state() half: { readonly lowN?: number | undefined; readonly highN?: number | undefined } | undefined;
  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.get('gauge') && changed.get('gauge')?.id !== this.gauge.id) this.half = undefined;
  }

  override render() {
    const { gauge, document } = this;
    const kinds = [
      { value: '', text: words.noBelt },
      ...document.belts.map(({ id, name }) => ({ value: id, text: name })),
      ...belts.map(({ id, label }) => ({ value: id, text: label })),
    ];
    const target = this.half ?? gauge.targetForceN;
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
        ${this.#quantity(words.targetFrom, 'force', 'N', target?.lowN, ({ told }) => this.#target('lowN', told?.value))}
        ${this.#quantity(words.targetTo, 'force', 'N', target?.highN, ({ told }) => this.#target('highN', told?.value))}
      </div>
      <details class="more">
        <summary>${words.more}</summary>
        <div class="fields">
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
      </details>
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

  /** One end alone waits here until the other is told, and both until they are in order. */
  #target(end: 'lowN' | 'highN', value: number | undefined): void {
    const { targetForceN } = this.gauge;
    const told = { lowN: targetForceN?.lowN, highN: targetForceN?.highN, ...this.half, [end]: value };
    this.half = told;
    const { lowN, highN } = told;
    if (lowN !== undefined && highN !== undefined && lowN < highN) this.#change({ targetForceN: { lowN, highN } });
    else if (lowN === undefined && highN === undefined) this.#change({ targetForceN: undefined });
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
