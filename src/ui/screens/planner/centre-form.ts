/** The span between two toothed pulleys from their teeth and their centre distance, or from the teeth of the loop that runs round both. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { centreOfLoopM, loopLengthM, spanOfCentreM, type TwoPulleys } from '../../../core/machine/loop.ts';
import { type ParsedQuantity, parseQuantity } from '../../../core/quantity.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { Figures } from '../../format.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { shared } from '../../shared-styles.ts';
import { faultText } from '../setup-words.ts';

const words = plannerEn.centre;

/** Sent when the span that was reckoned is to be used. */
export class SpanReckoned extends Event {
  readonly spanLengthM: number;

  constructor(spanLengthM: number) {
    super('span-reckoned', { bubbles: true, composed: true });
    this.spanLengthM = spanLengthM;
  }
}

type Field = 'one' | 'other' | 'centre' | 'loop';
const COUNTS: readonly Field[] = ['one', 'other', 'loop'];

@customElement('centre-form')
export class CentreForm extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      :host {
        display: block;
      }
      summary {
        min-block-size: var(--quiet-target-size);
        align-content: center;
        font-size: var(--note-size);
        font-weight: var(--weight-strong);
        cursor: pointer;
      }
      .fields {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: var(--space-12);
        margin-block: var(--space-8);
      }
      label {
        display: block;
        margin-block-end: var(--space-4);
        font-size: var(--note-size);
        font-weight: var(--weight-strong);
      }
      .result {
        margin-block-end: var(--space-8);
      }
    `,
  ];

  @property({ attribute: false }) toothPitchM: number | undefined;
  @state() typed: Readonly<Record<Field, string>> = { one: '20', other: '20', centre: '', loop: '' };
  readonly #figures = new Figures();

  override render() {
    if (this.toothPitchM === undefined) return nothing;
    return html`<details>
      <summary>${words.title}</summary>
      <div class="fields">${(['one', 'other', 'centre', 'loop'] as const).map((field) => this.#field(field))}</div>
      <p class="note">${words.note}</p>
      <div role="status">${this.#result(this.toothPitchM)}</div>
    </details>`;
  }

  #field(field: Field) {
    const parsed = this.#parsed(field);
    const fault = parsed.ok || parsed.why === 'empty' ? '' : faultText(parsed);
    return html`<div>
      <label for=${field}>${words.fields[field]}</label>
      ${quantityInput({
        id: field,
        value: this.typed[field],
        unit: field === 'centre' ? 'mm' : '',
        unreadable: fault !== '',
        describedBy: fault ? `${field}-note` : undefined,
        onTyped: (text) => {
          // Centre distance and loop say the same: the one that is typed last counts.
          const emptied = field === 'centre' ? { loop: '' } : field === 'loop' ? { centre: '' } : {};
          this.typed = { ...this.typed, ...(text === '' ? {} : emptied), [field]: text };
        },
      })}
      ${fault ? html`<p class="note" id=${`${field}-note`}>${fault}</p>` : nothing}
    </div>`;
  }

  #parsed(field: Field): ParsedQuantity {
    const kind = COUNTS.includes(field) ? ({ kind: 'number', defaultUnit: '' } as const) : ({ kind: 'length', defaultUnit: 'mm' } as const);
    return parseQuantity(this.typed[field], kind);
  }

  #result(toothPitchM: number) {
    const [one, other, centre, loop] = (['one', 'other', 'centre', 'loop'] as const).map((field) => this.#parsed(field)) as [
      ParsedQuantity,
      ParsedQuantity,
      ParsedQuantity,
      ParsedQuantity,
    ];
    if (!one.ok || !other.ok || (!centre.ok && !loop.ok)) return nothing;
    const pulleys: TwoPulleys = { teeth: [one.value, other.value], toothPitchM };
    const centreM = centre.ok ? centre.value : loop.ok ? centreOfLoopM(pulleys, loop.value) : undefined;
    const spanM = centreM === undefined ? undefined : spanOfCentreM(pulleys, centreM);
    if (centreM === undefined || spanM === undefined) return html`<p class="result">${words.none}</p>`;
    const lengthM = loopLengthM(pulleys, centreM);
    const mm = (metres: number) => this.#figures.typed(Math.round(metres * 1e4) / 10, 'mm');
    const teeth = this.#figures.typed(Math.round((10 * lengthM) / toothPitchM) / 10);
    return html`<p class="result">${words.result(mm(spanM), mm(centreM), mm(lengthM), teeth)}</p>
      <button @click=${() => this.dispatchEvent(new SpanReckoned(spanM))}>${words.use}</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'centre-form': CentreForm;
  }
  interface HTMLElementEventMap {
    'span-reckoned': SpanReckoned;
  }
}
