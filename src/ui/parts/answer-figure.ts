/** The answer itself, as large as it deserves: a value with its doubt, bounds without a value, or a sentence. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';

/** Numbers come alone, already rounded; signs, units and no-break spaces are put here. */
export type AnswerFigureText =
  | { readonly kind: 'value'; readonly value: string; readonly unit: string; readonly doubt?: string | undefined }
  | { readonly kind: 'range'; readonly text: string; readonly unit: string }
  | { readonly kind: 'sentence'; readonly text: string };

export interface FrequencyText {
  readonly value: string;
  readonly unit: string;
  readonly doubt?: string | undefined;
}

const NO_BREAK = '\u00a0';
/** Large figures stand closer to their unit. */
const NARROW_NO_BREAK = '\u202f';

/**
 * @cssprop --ink, --ink-2 - force and sentence, frequency
 * @cssprop --font, --figure-size, --figure-line, --figure-doubt-size, --answer-size, --answer-line, --title-size, --lead-size,
 *   --far-size, --far-line, --space-4, --space-8, --space-16, --space-32 - type and spaces
 */
@customElement('answer-figure')
export class AnswerFigure extends LitElement {
  static override styles = css`
    :host {
      display: block;
      container-type: inline-size;
      font-family: var(--font);
      font-variant-numeric: tabular-nums lining-nums;
      color: var(--ink);
    }
    :host([hidden]) {
      display: none;
    }
    .answer {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: var(--space-4) var(--space-32);
      margin: 0;
    }
    .force {
      --size: var(--figure-size);
      --doubt: var(--figure-doubt-size);
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      column-gap: var(--space-16);
      font-size: var(--size);
      line-height: var(--figure-line);
      letter-spacing: -0.025em;
    }
    :host([size='far']) .force {
      --size: var(--far-size);
      --doubt: calc(var(--far-size) * 0.5);
      line-height: var(--far-line);
    }
    .part {
      white-space: nowrap;
    }
    .value {
      font-weight: 700;
    }
    .unit {
      font-size: 0.62em;
            letter-spacing: 0;
    }
    .doubt {
      font-size: var(--doubt);
    }
    .doubt .unit {
      font-size: 1em;
    }
    .range {
      font-size: calc(var(--size) * 0.68);
    }
    .sentence {
      margin: 0;
      font-size: var(--answer-size);
      line-height: var(--answer-line);
      font-weight: 700;
      letter-spacing: -0.015em;
      text-wrap: balance;
      overflow-wrap: anywhere;
    }
    :host([size='far']) .sentence {
      font-size: calc(var(--far-size) * 0.5);
      line-height: 1.1;
    }
    .frequency {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      column-gap: var(--space-8);
      font-size: var(--title-size);
      line-height: 2rem;
      color: var(--ink-2);
    }
    .frequency .doubt {
      font-size: var(--lead-size);
    }
    @container (max-width: 330px) {
      .force {
        --size: min(var(--figure-size), 18cqi);
        --doubt: min(var(--figure-doubt-size), 9cqi);
        column-gap: var(--space-8);
        line-height: 1.1;
      }
    }
  `;

  @property({ attribute: false }) figure: AnswerFigureText = { kind: 'sentence', text: '' };
  /** Beside the figure where there is room, below it where there is not. */
  @property({ attribute: false }) frequency: FrequencyText | undefined;
  @property({ reflect: true }) size: 'sheet' | 'far' = 'sheet';

  override render() {
    const { figure } = this;
    if (figure.kind === 'sentence') return html`<p class="sentence">${figure.text}</p>${this.#frequency()}`;
    return html`<p class="answer">
      <span class="force">
        ${
          figure.kind === 'range'
            ? html`<span class="part range">${figure.text}${unitOf(figure.unit)}</span>`
            : html`<span class="part"><span class="value">${figure.value}</span>${unitOf(figure.unit)}</span>${doubtOf(figure)}`
        }
      </span>
      ${this.#frequency()}
    </p>`;
  }

  #frequency() {
    if (!this.frequency) return nothing;
    const { value, unit } = this.frequency;
    return html`<span class="frequency"><span class="part">${value}${NO_BREAK}${unit}</span>${doubtOf(this.frequency, NO_BREAK)}</span>`;
  }
}

const unitOf = (unit: string) => html`<span class="unit">${NARROW_NO_BREAK}${unit}</span>`;

const doubtOf = ({ doubt, unit }: { readonly doubt?: string | undefined; readonly unit: string }, gap = NARROW_NO_BREAK) =>
  doubt === undefined ? nothing : html`<span class="part doubt"> ±${NO_BREAK}${doubt}${gap}${unit}</span>`;

declare global {
  interface HTMLElementTagNameMap {
    'answer-figure': AnswerFigure;
  }
}
