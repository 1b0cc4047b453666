/**
 * The headline of a place: where one is, the answer in one line, what follows from it, and at the side what can be done. Slots: `over`, the
 * answer itself (a `<b>` in it carries the weight), `under`, `actions`.
 */

import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../shared-styles.ts';

/** @cssprop --ink, --ink-2, --answer-size, --answer-line, --lead-size, --lead-line */
@customElement('answer-line')
export class AnswerLine extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        justify-content: space-between;
        gap: var(--space-16) var(--space-32);
        margin-block-end: var(--space-24);
      }
      .said {
        flex: 1 1 20rem;
        min-inline-size: 0;
      }
      .over,
      .under {
        color: var(--ink-2);
      }
      .under {
        font-size: var(--lead-size);
        line-height: var(--lead-line);
      }
      h1 {
        font-size: var(--answer-size);
        line-height: var(--answer-line);
        font-weight: var(--weight-text);
        letter-spacing: -0.01em;
        overflow-wrap: anywhere;
      }
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
      }
      @media (max-width: 59.99rem) {
        .actions {
          flex: 1 1 100%;
        }
      }
      @media print {
        .actions {
          display: none;
        }
      }
    `,
  ];

  override render() {
    return html`<div class="said">
        <div class="over"><slot name="over"></slot></div>
        <h1><slot></slot></h1>
        <div class="under"><slot name="under"></slot></div>
      </div>
      <div class="actions"><slot name="actions"></slot></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'answer-line': AnswerLine;
  }
}
