/** Says in every place when something could not be kept, and offers what helps: a file of it, another try, or a reload. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { keepingEn as words } from '../../words/keeping-en.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { KeptPart } from '../state/kept-part.ts';
import { saveDocument } from '../state/save-document.ts';

@customElement('keeping-notice')
export class KeepingNotice extends LitElement {
  static override styles = [
    shared,
    css`
      .notice {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
        padding: var(--space-12) var(--sheet-margin);
        border-block-end: var(--stroke-place) solid var(--ink);
        background: var(--paper);
      }
      .said {
        flex: 1 1 20rem;
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #keeping = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ keeping }) => keeping,
  );

  override render() {
    const { failure, unkept } = this.#keeping.value;
    if (!failure) return nothing;
    const [what, then] = words.failures[failure.why];
    const reloads = failure.why === 'newer' || failure.why === 'taken-over';
    return html`<div class="notice" role="alert">
      <p class="said"><strong>${what}.</strong> ${then} ${unkept > 0 ? words.unkept(unkept) : nothing}
        ${failure.detail ? html`<span class="note">${words.browserSays(failure.detail)}</span>` : nothing}</p>
      ${unkept > 0 ? html`<button @click=${this.#save}>${words.saveFile}</button>` : nothing}
      ${
        reloads
          ? html`<button @click=${() => location.reload()}>${words.reload}</button>`
          : html`<button @click=${() => void this.workbench.kept.retry()}>${words.tryAgain}</button>`
      }
    </div>`;
  }

  readonly #save = () => saveDocument(this.workbench.kept.document);
}

declare global {
  interface HTMLElementTagNameMap {
    'keeping-notice': KeepingNotice;
  }
}
