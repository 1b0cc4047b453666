/** Why a reading is doubted and what would help: one row for each reason, already put into words. */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Grade } from '../../core/outcome.ts';
import './grade-mark.ts';

export interface WordedReason {
  readonly id: string;
  /** Best grade that the reason allows. */
  readonly grade: Grade;
  readonly gradeWord: string;
  readonly name: string;
  readonly sentence: string;
  readonly remedy: string;
  /** Where the remedy can be taken up; makes it a link. */
  readonly href?: string | undefined;
}

/**
 * @cssprop --ink, --ink-2, --aim - name and remedy, sentence, focus
 * @cssprop --font, --text-size, --text-line, --space-4, --space-12 - type and spaces
 */
@customElement('reasons-list')
export class ReasonsList extends LitElement {
  static override styles = css`
    :host {
      display: block;
      font-family: var(--font);
      font-size: var(--text-size);
      line-height: var(--text-line);
      color: var(--ink);
    }
    :host([hidden]) {
      display: none;
    }
    ul {
      display: grid;
      gap: var(--space-12);
      margin: 0;
      padding: 0;
      list-style: none;
    }
    li {
      display: grid;
      grid-template-columns: auto 1fr;
      column-gap: var(--space-12);
      max-inline-size: 36rem;
      overflow-wrap: anywhere;
    }
    grade-mark {
      align-self: start;
      block-size: var(--text-line);
      font-size: 1.125rem;
      inline-size: 1.25rem;
      justify-content: center;
    }
    h3,
    p {
      grid-column: 2;
      margin: 0;
      font-size: inherit;
    }
    h3 {
      font-weight: 600;
    }
    .sentence {
      color: var(--ink-2);
    }
    .remedy {
      margin-block-start: var(--space-4);
    }
    a {
      color: inherit;
      text-underline-offset: 0.2em;
    }
    a:focus-visible {
      outline: 3px solid var(--aim);
      outline-offset: 2px;
    }
  `;

  @property({ attribute: false }) items: readonly WordedReason[] = [];
  /** Name of the list. */
  @property() label = '';

  override render() {
    return html`<ul role="list" aria-label=${this.label || nothing}>
      ${this.items.map(
        ({ grade, gradeWord, name, sentence, remedy, href }) => html`
          <li>
            <grade-mark bare .grade=${grade} .word=${gradeWord}></grade-mark>
            <h3>${name}</h3>
            <p class="sentence">${sentence}</p>
            ${remedy ? html`<p class="remedy">${href ? html`<a href=${href}>${remedy}</a>` : remedy}</p>` : nothing}
          </li>
        `,
      )}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'reasons-list': ReasonsList;
  }
}
