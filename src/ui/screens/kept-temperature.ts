/** How warm it was, asked once a take is kept: what warmth does to a belt can then be told from what wear does. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { keepingEn as words } from '../../words/keeping-en.ts';
import { Figures } from '../format.ts';
import { quantityInput, quantityInputStyles } from '../parts/quantity-input.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { isKeptAsItIs } from '../state/keep-take.ts';
import { nowAt } from '../state/new-item.ts';
import { Selected } from '../state/selected.ts';
import { readTemperature, ZERO_CELSIUS_K } from '../state/temperature.ts';

@customElement('kept-temperature')
export class KeptTemperature extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      .warmth {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8);
        margin-block-end: var(--space-16);
      }
      label {
        font-weight: var(--weight-strong);
      }
      .quantity {
        inline-size: 7rem;
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() fault = '';
  readonly #figures = new Figures();
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (one) => one,
  );

  override render() {
    const now = this.#state.value;
    const id = now.keptAs?.id;
    if (id === undefined || !isKeptAsItIs(now)) return nothing;
    const kelvin = this.workbench.kept.document.takes.find((take) => take.id === id)?.temperatureK;
    return html`<div class="warmth">
      <label for="warmth">${words.temperature}</label>
      ${quantityInput({
        id: 'warmth',
        value: kelvin === undefined ? '' : this.#figures.typed(Number((kelvin - ZERO_CELSIUS_K).toFixed(1))),
        unit: '°C',
        unreadable: this.fault !== '',
        describedBy: 'warmth-note',
        onTyped: (text) => this.#keep(id, text),
      })}
      <span class="note" id="warmth-note" role="status">${this.fault || words.temperatureNote}</span>
    </div>`;
  }

  #keep(id: string, text: string): void {
    const celsius = readTemperature(text);
    this.fault = celsius === 'unreadable' ? words.temperatureFault : '';
    if (celsius === 'unreadable') return;
    const temperatureK = celsius === undefined ? undefined : celsius + ZERO_CELSIUS_K;
    void this.workbench.kept.change((document) => ({
      ...document,
      takes: document.takes.map((take) => (take.id === id ? { ...take, temperatureK, changedAt: nowAt() } : take)),
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'kept-temperature': KeptTemperature;
  }
}
