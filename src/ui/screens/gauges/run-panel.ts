/** The guided run: one instruction, one field, Enter. Warns at once on a reading that breaks the pattern, keeps it and asks. */

import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { Step } from '../../../core/gauge/guided-run.ts';
import { formatQuantity } from '../../../core/quantity.ts';
import { gaugesEn } from '../../../words/gauges-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { shared } from '../../shared-styles.ts';
import type { GaugeProof } from '../../state/gauge-proof.ts';
import { type EditGauge, editReading, newReading, typedReading } from './gauge-editing.ts';
import { oddRow } from './odd-row.ts';
import { runSteps } from './run-steps.ts';

const words = gaugesEn.run;
const FEWEST_WEIGHTS = 3;

@customElement('run-panel')
export class RunPanel extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      :host {
        display: block;
      }
      .head {
        display: flex;
        justify-content: space-between;
        gap: var(--space-16);
      }
      .change {
        margin-block-start: var(--space-8);
        padding-inline-start: var(--space-12);
        border-inline-start: var(--stroke-place) solid var(--aim);
      }
      .now {
        margin-block: var(--space-8);
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
        align-items: end;
      }
      form label {
        display: block;
        margin-block-end: var(--space-4);
        font-size: var(--note-size);
        font-weight: var(--weight-strong);
      }
      .field {
        flex: 1 1 9rem;
        max-inline-size: 14rem;
      }
      progress {
        inline-size: 100%;
        block-size: 4px;
        margin-block: var(--space-8);
        border: 0;
        background: var(--steel);
        accent-color: var(--ink);
      }
      progress::-webkit-progress-bar {
        background: var(--steel);
      }
      progress::-webkit-progress-value {
        background: var(--ink);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-4) var(--space-16);
        margin-block-start: var(--space-8);
      }
      .odd {
        margin-block-start: var(--space-12);
        padding: var(--space-12);
        border: var(--stroke-data) solid var(--doubtful);
        border-radius: var(--radius);
      }
    `,
  ];

  @property({ attribute: false }) gauge!: KeptGauge;
  @property({ attribute: false }) proof!: GaugeProof;
  @property({ attribute: false }) edit: EditGauge = () => {};
  @state() typed = '';
  @state() isUnreadable = false;
  /** Steps that were skipped for now, by their place in the run. */
  @state() skipped = 0;
  /** Id of the reading that was noted last in this sitting. */
  @state() lastId = '';
  /** Odd readings whose owner has said that they are right. */
  @state() rightIds: readonly string[] = [];
  @query('input') field!: HTMLInputElement | null;
  readonly #figures = new Figures();

  override updated(changed: PropertyValues<this>): void {
    if (changed.has('lastId') && this.lastId) this.field?.focus();
  }

  override render() {
    const weights = this.gauge.weights ?? [];
    if (weights.length < FEWEST_WEIGHTS) return html`<p class="note">${words.needsWeights}</p>`;
    const { all: steps, left } = runSteps(this.gauge);
    const step = left[this.skipped % Math.max(1, left.length)];
    const done = steps.length - left.length;
    return html`<section aria-label=${words.title}>
      <div class="head"><h2>${words.title}</h2><span>${words.progress(done, steps.length)}</span></div>
      <progress max=${steps.length} value=${done} aria-label=${words.progress(done, steps.length)}></progress>
      ${step ? this.#step(step) : html`<p>${words.done}</p>`}
      <div class="acts">
        ${
          step && left.length > 1
            ? html`<button class="quiet" @click=${() => {
                this.skipped += 1;
              }}>${words.skip}</button>`
            : nothing
        }
        ${(this.gauge.readings?.length ?? 0) > 0 ? html`<button class="quiet" @click=${this.#takeBack}>${words.takeBack}</button>` : nothing}
      </div>
      <div role="status">${this.#odd()}</div>
    </section>`;
  }

  #step(step: Step) {
    return html`${step.begins ? html`<p class="change">${words.begins[step.begins]}</p>` : nothing}
      <p class="now" aria-live="polite">${this.#instruction(step)}</p>
      <form @submit=${(event: Event) => this.#note(event, step)}>
        <div class="field">
          <label for="reading">${words.reading}</label>
          ${quantityInput({
            id: 'reading',
            value: this.typed,
            unreadable: this.isUnreadable,
            describedBy: this.isUnreadable ? 'unreadable' : undefined,
            onTyped: () => {},
          })}
        </div>
        <button class="solid" type="submit">${words.note}</button>
      </form>
      ${this.isUnreadable ? html`<p class="note" id="unreadable" role="alert">${words.notANumber}</p>` : nothing}`;
  }

  #instruction({ weightId, how, direction }: Step): string {
    const weight = this.gauge.weights?.find(({ id }) => id === weightId);
    if (weight?.knownN) return words.step.wire(weight.name);
    const grams = weight ? formatQuantity(weight.massKg * 1000, 'g', { atMostDigits: 5, format: this.#figures.format }) : '';
    const name = weight && !weight.name.includes(grams.replace(/\D/gu, '')) ? `${weight.name}, ${grams}` : (weight?.name ?? '');
    if (how === 'inserted') return words.step.inserted(name);
    if (how === 'eased') return direction === 'up' ? words.step.easedUp(name) : words.step.easedDown(name);
    return direction === 'up' ? words.step.up(name) : words.step.down(name);
  }

  /** The reading that was noted last, where it breaks the pattern. */
  #odd() {
    const readings = this.gauge.readings ?? [];
    const index = readings.findIndex(({ id }) => id === this.lastId);
    const text = oddRow(this.proof, index + 1);
    const reading = readings[index];
    if (!text || !reading || reading.dropped || this.rightIds.includes(reading.id)) return nothing;
    return html`<div class="odd"><p>${words.odd(index + 1, text)}</p>
      <div class="acts">
        <button @click=${() => {
          this.rightIds = [...this.rightIds, reading.id];
        }}>${words.isRight}</button>
        <button @click=${() => this.edit(editReading(reading.id, (one) => ({ ...one, dropped: true })))}>${words.leaveOut}</button>
      </div></div>`;
  }

  #note(event: Event, step: Step): void {
    event.preventDefault();
    const value = typedReading(this.field?.value ?? '');
    this.isUnreadable = value === undefined;
    if (value === undefined) {
      this.typed = this.field?.value ?? '';
      return;
    }
    const reading = newReading(step, value);
    this.typed = '';
    if (this.field) this.field.value = '';
    this.lastId = reading.id;
    this.edit((gauge) => ({ ...gauge, readings: [...(gauge.readings ?? []), reading] }));
  }

  readonly #takeBack = () => {
    this.edit((gauge) => ({ ...gauge, readings: gauge.readings?.slice(0, -1) }));
    this.field?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'run-panel': RunPanel;
  }
}
