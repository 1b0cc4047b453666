/** What stands at the right of the bar when wide, behind Menu on a phone. Its entries are slotted, so that they are the same ones. */

import { css, html, LitElement } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import { placesEn } from '../../words/places-en.ts';
import { dialogStyles } from '../dialog-styles.ts';
import { shared } from '../shared-styles.ts';

@customElement('menu-dialog')
export class MenuDialog extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    css`
      h2 {
        margin-block-end: var(--space-16);
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      div {
        display: grid;
        gap: var(--space-12);
      }
    `,
  ];

  @query('dialog') dialog!: HTMLDialogElement;

  show(): void {
    if (!this.dialog.open) this.dialog.showModal();
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <h2 id="title">${placesEn.menu}</h2>
      <div>
        <slot></slot>
        <button @click=${this.close}>${placesEn.closeMenu}</button>
      </div>
    </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'menu-dialog': MenuDialog;
  }
}
