/** The setup as a link and as a code, for a phone beside the machine. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { linkEn as words } from '../../../words/link-en.ts';
import { dialogStyles } from '../../dialog-styles.ts';
import '../../parts/qr-code.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { setupHref } from '../../state/linked-setup.ts';
import { EMPTY_SETUP } from '../../state/span-setup.ts';

/** Addresses that mean 'this very computer' to whoever opens them. */
const ONLY_HERE = /^(?:localhost|127\.|\[::1\])/u;

@customElement('share-dialog')
export class ShareDialog extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    css`
      .lines {
        display: grid;
        gap: var(--space-16);
      }
      h2 {
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      qr-code {
        inline-size: min(100%, 16rem);
        justify-self: center;
      }
      label {
        display: grid;
        gap: var(--space-4);
        font-size: var(--note-size);
        font-weight: var(--weight-strong);
      }
      textarea {
        font: inherit;
        font-weight: var(--weight-text);
        inline-size: 100%;
        padding: var(--space-8);
        border: var(--stroke-line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        resize: vertical;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-12);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() href: string | undefined = '';
  @state() said = '';
  @state() beltAlone = false;
  @query('dialog') dialog!: HTMLDialogElement;

  /** @param beltId  of a kept belt that is shared by itself; else the setup is */
  show(beltId?: string): void {
    const { entered, ownBelts } = this.workbench.store.state;
    this.beltAlone = beltId !== undefined;
    this.href = setupHref(beltId === undefined ? entered : { ...EMPTY_SETUP, beltId }, ownBelts, location.href);
    this.said = '';
    void this.updateComplete.then(() => {
      if (!this.dialog.open) this.dialog.showModal();
    });
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <div class="lines">
        <h2 id="title">${this.beltAlone ? words.beltTitle : words.title}</h2>
        ${this.href === undefined ? html`<p>${words.tooLong}</p>` : this.#link(this.href)}
        <p class="acts">
          ${this.href ? html`<button class="solid" @click=${this.#copy}>${words.copy}</button>` : nothing}
          <button @click=${() => this.dialog.close()}>${words.close}</button>
          <span role="status" class="note">${this.said}</span>
        </p>
      </div>
    </dialog>`;
  }

  #link(href: string) {
    if (href === '') return nothing;
    return html`<p>${this.beltAlone ? words.beltLead : words.lead}</p>
      ${ONLY_HERE.test(location.hostname) ? html`<p class="note">${words.here}</p>` : nothing}
      <qr-code .text=${href} .label=${words.code}></qr-code>
      <label>${words.link}<textarea readonly rows="3" @focus=${marked}>${href}</textarea></label>`;
  }

  readonly #copy = async () => {
    try {
      await navigator.clipboard.writeText(this.href ?? '');
      this.said = words.copied;
    } catch {
      this.said = words.notCopied;
    }
  };
}

const marked = ({ target }: FocusEvent): void => (target as HTMLTextAreaElement).select();

declare global {
  interface HTMLElementTagNameMap {
    'share-dialog': ShareDialog;
  }
}
