/** A text field for a quantity: takes any text, shows the unit that a bare number means, and tells what was typed after a pause. */

import { css, html, nothing } from 'lit';

export interface QuantityField {
  readonly id: string;
  readonly value: string;
  /** Unit of a number that stands alone; empty where a choice beside the field tells it. */
  readonly unit?: string | undefined;
  /** Sign before the number. */
  readonly sign?: string | undefined;
  /** Name, where no `label` element points at the field. */
  readonly name?: string | undefined;
  readonly unreadable: boolean;
  /** Ids of the notes that belong to the field. */
  readonly describedBy?: string | undefined;
  readonly onTyped: (text: string) => void;
  readonly onFocus?: ((focused: boolean) => void) | undefined;
}

/** Long enough not to judge half a number, short enough not to be waited for. */
const PAUSE_MS = 300;
const pauses = new WeakMap<EventTarget, ReturnType<typeof setTimeout>>();

function typed(event: Event, tell: (text: string) => void): void {
  const input = event.currentTarget as HTMLInputElement;
  clearTimeout(pauses.get(input));
  if (event.type === 'change') tell(input.value);
  else pauses.set(input, setTimeout(tell, PAUSE_MS, input.value));
}

/** Renders into the root of its user, so that a `label` there can point at it by id. */
export const quantityInput = ({ id, value, unit, sign, name, unreadable, describedBy, onTyped, onFocus }: QuantityField) => html`
  <span class="quantity" data-unreadable=${unreadable || nothing}>
    ${sign ? html`<span class="sign" aria-hidden="true">${sign}</span>` : nothing}
    <input
      id=${id}
      type="text"
      inputmode="decimal"
      autocomplete="off"
      spellcheck="false"
      .value=${value}
      aria-label=${name ?? nothing}
      aria-invalid=${unreadable ? 'true' : nothing}
      aria-describedby=${describedBy || nothing}
      @input=${(event: Event) => typed(event, onTyped)}
      @change=${(event: Event) => typed(event, onTyped)}
      @focus=${() => onFocus?.(true)}
      @blur=${() => onFocus?.(false)}
    />
    ${unit ? html`<span class="unit" aria-hidden="true">${unit}</span>` : nothing}
  </span>
`;

export const quantityInputStyles = css`
  .quantity {
    display: flex;
    align-items: center;
    gap: var(--space-4);
    min-inline-size: 0;
    min-block-size: var(--target-size);
    padding-inline: var(--space-12);
    border: var(--stroke-line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--field);
  }
  .quantity[data-unreadable] {
    border-width: var(--stroke-data);
    border-color: var(--ink);
    border-style: dashed;
  }
  .quantity:focus-within {
    outline: var(--focus-ring);
    outline-offset: var(--focus-gap);
  }
  .quantity input {
    flex: 1;
    inline-size: 100%;
    min-inline-size: 0;
    min-block-size: calc(var(--target-size) - 2 * var(--stroke-line));
    padding: 0;
    border: 0;
    outline: none;
    background: transparent;
    color: var(--ink);
  }
  .quantity .unit,
  .quantity .sign {
    flex: none;
    color: var(--ink-2);
  }
`;
