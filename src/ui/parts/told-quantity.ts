/** A field for one quantity that is kept: shows it in its usual unit, takes it in any, and tells what was understood. What cannot be read stays in the field. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatNumber, type ParsedQuantity, parseQuantity, type QuantityKind } from '../../core/quantity.ts';
import { Figures } from '../format.ts';
import { shared } from '../shared-styles.ts';
import { quantityInput, quantityInputStyles } from './quantity-input.ts';

/** SI. `undefined`: the field was emptied. */
export interface ToldValue {
  readonly value: number;
  readonly standardUncertainty?: number | undefined;
}

/** Sent when a person has told a quantity that can be read, or emptied the field. */
export class QuantityTold extends Event {
  readonly told: ToldValue | undefined;

  constructor(told: ToldValue | undefined) {
    super('quantity-told', { bubbles: true, composed: true });
    this.told = told;
  }
}

const COVERAGE_FACTOR = 2;
const DIGITS = 5;

@customElement('told-quantity')
export class ToldQuantity extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      :host {
        display: block;
        min-inline-size: 0;
      }
      label {
        display: block;
        margin-block-end: var(--space-4);
        font-size: var(--note-size);
        line-height: var(--note-line);
        font-weight: var(--weight-strong);
      }
      .note {
        margin-block-start: var(--space-4);
      }
    `,
  ];

  @property() label = '';
  @property() note = '';
  @property() kind: QuantityKind = 'length';
  /** Unit that a bare number means, and that the value is shown in. */
  @property() unit = 'mm';
  /** SI. */
  @property({ attribute: false }) value: number | undefined;
  /** Shown as ± where there is one; taken where it is typed. */
  @property({ attribute: false }) standardUncertainty: number | undefined;
  @property({ attribute: false }) toothPitchM: number | undefined;
  @property({ type: Boolean }) zeroAllowed = false;
  /** Why a text could not be read, in words. */
  @property({ attribute: false }) faultText: (fault: Extract<ParsedQuantity, { ok: false }>) => string = () => '';
  /** What is being typed, as long as it says something else than what is kept. */
  @state() draft: string | undefined;

  readonly #figures = new Figures();

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('value') || this.draft === undefined) return;
    const parsed = this.#parsed(this.draft);
    if (parsed.ok ? parsed.value !== this.value : parsed.why !== 'empty' || this.value !== undefined) {
      if (parsed.ok || parsed.why === 'empty') this.draft = undefined;
    }
  }

  override render() {
    const text = this.draft ?? this.#shown;
    const parsed = this.#parsed(text);
    const fault = parsed.ok || parsed.why === 'empty' ? '' : this.faultText(parsed);
    const note = fault || this.note;
    return html`<label for="field">${this.label}</label>
      ${quantityInput({
        id: 'field',
        value: text,
        unit: this.unit,
        unreadable: fault !== '',
        describedBy: note ? 'note' : undefined,
        onTyped: this.#typed,
      })}
      ${note ? html`<p class="note" id="note">${note}</p>` : nothing}`;
  }

  get #shown(): string {
    if (this.value === undefined) return '';
    const size = this.#size;
    const written = (value: number) => formatNumber(value / size, { atMostDigits: DIGITS, format: this.#figures.format });
    return this.standardUncertainty
      ? `${written(this.value)} ± ${written(COVERAGE_FACTOR * this.standardUncertainty)}`
      : written(this.value);
  }

  /** One of the shown unit in SI. */
  get #size(): number {
    const one = this.#parsed('1');
    return one.ok ? one.value : 1;
  }

  readonly #parsed = (text: string): ParsedQuantity =>
    parseQuantity(text, { kind: this.kind, defaultUnit: this.unit, toothPitchM: this.toothPitchM, zeroAllowed: this.zeroAllowed });

  readonly #typed = (text: string): void => {
    if (text === (this.draft ?? this.#shown)) return;
    this.draft = text;
    const parsed = this.#parsed(text);
    if (parsed.ok) {
      const { value, standardUncertainty } = parsed;
      const told = standardUncertainty === undefined ? undefined : standardUncertainty / COVERAGE_FACTOR;
      this.dispatchEvent(new QuantityTold({ value, standardUncertainty: told }));
    } else if (parsed.why === 'empty') this.dispatchEvent(new QuantityTold(undefined));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'told-quantity': ToldQuantity;
  }
  interface HTMLElementEventMap {
    'quantity-told': QuantityTold;
  }
}
