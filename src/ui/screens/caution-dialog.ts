/** All cautions, one press away from everywhere. */

import { css, html, LitElement } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { dialogStyles } from '../dialog-styles.ts';
import { shared } from '../shared-styles.ts';

const words = en.cautions;

@customElement('caution-dialog')
export class CautionDialog extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    css`
      h2 {
        margin-block-end: var(--space-8);
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      ul {
        display: grid;
        gap: var(--space-8);
        margin-block: var(--space-16) var(--space-24);
        padding-inline-start: var(--space-24);
      }
      li::marker {
        color: var(--ink-3);
      }
    `,
  ];

  @query('dialog') dialog!: HTMLDialogElement;

  show(): void {
    if (!this.dialog.open) this.dialog.showModal();
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <h2 id="title">${words.title}</h2>
      <p>${words.lead}</p>
      <ul>
        ${words.points.map((point) => html`<li>${point}</li>`)}
      </ul>
      <button @click=${() => this.dialog.close()}>${words.close}</button>
    </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'caution-dialog': CautionDialog;
  }
}
