/** A frequency that was read elsewhere, typed: the force that it means on this span, with interval and reasons, and nothing said of its sound. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { answerOfFrequency } from '../../core/answer.ts';
import type { Reading } from '../../core/outcome.ts';
import { type ParsedQuantity, parseQuantity } from '../../core/quantity.ts';
import { ASSUMED_UNCERTAINTY } from '../../core/setup.ts';
import { capital, en } from '../../words/en.ts';
import { reasonName, reasonRemedy, reasonSentence } from '../../words/reasons-en.ts';
import { Figures, together } from '../format.ts';
import '../parts/grade-mark.ts';
import { quantityInput, quantityInputStyles } from '../parts/quantity-input.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import { faultText } from './setup-words.ts';

const words = en.toldFrequency;
const NO_BREAK = '\u00a0';
/** Every ± on the page is the half of a 95 % interval. */
const COVERAGE_FACTOR = 2;

@customElement('told-frequency')
export class ToldFrequency extends LitElement {
  static override styles = [
    shared,
    quantityInputStyles,
    css`
      :host {
        display: block;
        margin-block-start: var(--space-12);
      }
      summary {
        min-block-size: var(--quiet-target-size);
        align-content: center;
        cursor: pointer;
        font-weight: var(--weight-strong);
      }
      .columns {
        display: grid;
        grid-template-columns: minmax(10rem, 16rem) minmax(0, 1fr);
        gap: var(--space-12) var(--space-32);
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
      .answer {
        font-size: var(--title-size);
        line-height: var(--title-line);
        font-weight: var(--weight-strong);
      }
      ul {
        display: grid;
        gap: var(--space-8);
        margin-block-start: var(--space-8);
        padding: 0;
        list-style: none;
      }
      @media (max-width: 40rem) {
        .columns {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() text = '';

  readonly #figures = new Figures();
  readonly #understood = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.understood,
  );

  override render() {
    const parsed = parseQuantity(this.text, { kind: 'frequency', defaultUnit: 'Hz' });
    const fault = parsed.ok ? '' : parsed.why === 'not-a-number' ? words.notANumber : faultText(parsed);
    return html`<details>
      <summary>${words.summary}</summary>
      <div class="columns">
        <div>
          <label for="told">${words.field}</label>
          ${quantityInput({
            id: 'told',
            value: this.text,
            unit: 'Hz',
            unreadable: fault !== '',
            describedBy: 'told-note',
            onTyped: (text) => {
              this.text = text;
            },
          })}
          <p class="note" id="told-note">${fault || words.note}</p>
        </div>
        <div aria-live="polite">${parsed.ok ? this.#answer(parsed) : nothing}</div>
      </div>
    </details>`;
  }

  #answer({ value, standardUncertainty }: Extract<ParsedQuantity, { ok: true }>) {
    const relative = ASSUMED_UNCERTAINTY.frequencyRelative * value;
    const frequencyHz = {
      value,
      standardUncertainty: standardUncertainty === undefined ? relative : standardUncertainty / COVERAGE_FACTOR,
    };
    const { setup } = this.#understood.value;
    const reading = answerOfFrequency({ frequencyHz, setup });
    const said = this.#force(reading, setup);
    return html`<p class="answer">${said}</p>
      ${reading.forceN ? html`<p><grade-mark .grade=${reading.grade} .word=${en.reading.grades[reading.grade]}></grade-mark></p>` : nothing}
      <ul>
        ${reading.reasons.map(
          (reason) => html`<li><strong>${capital(reasonName(reason))}.</strong> ${reasonSentence(reason)} ${reasonRemedy(reason)}</li>`,
        )}
      </ul>`;
  }

  #force({ forceN }: Reading, { spanLengthM, belt }: { spanLengthM?: unknown; belt?: unknown }): string {
    if (forceN) {
      const figure = this.#figures.force(forceN);
      return figure ? together(figure, 'N') : `${this.#figures.bounds(forceN)}${NO_BREAK}N`;
    }
    if (spanLengthM && belt) return en.reading.noForceFits;
    return spanLengthM ? words.needs.density : belt ? words.needs.length : words.needs.both;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'told-frequency': ToldFrequency;
  }
}
