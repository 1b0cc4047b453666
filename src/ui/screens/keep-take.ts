/** 'Keep in logbook': keeps the take with its inputs. On a machine at once; else it asks for a name first. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { keepingEn as words } from '../../words/keeping-en.ts';
import { dialogStyles } from '../dialog-styles.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { isKeptAsItIs, type KeepNotes, keepable, keptAgain, keptMark, takeToKeep } from '../state/keep-take.ts';
import { newItem, nowAt } from '../state/new-item.ts';
import { Selected } from '../state/selected.ts';

/** Sent to the window by whoever has a key or a button for it. */
export const KEEP_WANTED = 'keep-wanted';

@customElement('keep-take')
export class KeepTake extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    css`
      :host {
        display: block;
      }
      .button-row {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
        margin-block-start: var(--space-16);
      }
      button.keep {
        inline-size: 100%;
      }
      dialog h2 {
        margin-block-end: var(--space-8);
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      label {
        display: block;
        margin-block: var(--space-16) var(--space-4);
        font-weight: var(--weight-strong);
      }
      input {
        inline-size: 100%;
        min-block-size: var(--target-size);
        padding-inline: var(--space-12);
        border: var(--stroke-line) solid var(--edge);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** Whether this is the one main action of its screen. */
  @property({ type: Boolean }) solid = false;
  @property({ type: Boolean }) short = false;
  @query('dialog') dialog!: HTMLDialogElement;
  @query('#name') nameField!: HTMLInputElement;
  @query('#note') noteField!: HTMLInputElement;
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener(KEEP_WANTED, this.keep);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener(KEEP_WANTED, this.keep);
  }

  override render() {
    const state = this.#state.value;
    if (!keepable(state)) return nothing;
    const { keptAs } = state;
    const isKept = isKeptAsItIs(state);
    const text = isKept ? words.isKept : keptAs ? words.keepAgain : this.short ? words.keepShort : words.keep;
    return html`<button class=${this.solid && !isKept ? 'keep solid' : 'keep'} ?disabled=${isKept} title=${en.listen.keyHint('K')}
        aria-keyshortcuts="K" @click=${this.keep}>${text}</button>
      <dialog aria-labelledby="title">
        <form method="dialog" @submit=${this.#named}>
          <h2 id="title">${words.keepTitle}</h2>
          <p>${words.keepLead}</p>
          <label for="name">${words.keepName}</label>
          <input id="name" type="text" required maxlength="120" aria-describedby="name-note" />
          <p class="note" id="name-note">${words.keepNameNote}</p>
          <label for="note">${words.keepNote}</label>
          <input id="note" type="text" maxlength="400" />
          <div class="button-row">
            <button class="solid" type="submit">${words.keepIt}</button>
            <button type="button" @click=${() => this.dialog.close()}>${words.leaveIt}</button>
          </div>
        </form>
      </dialog>`;
  }

  readonly keep = (): void => {
    const state = this.#state.value;
    if (!keepable(state) || isKeptAsItIs(state)) return;
    if (state.entered.on || state.keptAs) void this.#keep({});
    else if (!this.dialog.open) this.dialog.showModal();
  };

  readonly #named = (event: Event): void => {
    event.preventDefault(); // a form that is sent by script is never refused by the page's policy
    const name = this.nameField.value.trim();
    if (name === '') this.nameField.focus();
    else {
      this.dialog.close();
      void this.#keep({ name, note: this.noteField.value.trim() || undefined });
    }
  };

  /** A take that is kept already is kept anew under its id: more plucks, or a setup that was corrected. */
  async #keep(notes: KeepNotes): Promise<void> {
    const { store, kept, recordings } = this.workbench;
    const state = store.state;
    const fresh = newItem();
    const id = state.keptAs?.id ?? fresh.id;
    await kept.change((document) => {
      const before = document.takes.find((take) => take.id === id);
      const take = before ? keptAgain(state, before, nowAt()) : takeToKeep(state, fresh, fresh.made, notes);
      return take ? { ...document, takes: [...document.takes.filter((one) => one.id !== id), take] } : document;
    });
    if (recordings.isOn) await recordings.keep(id, state.take?.plucks.flatMap(({ clip }) => clip ?? []) ?? []);
    store.dispatch({ kind: 'take-kept', as: { id, mark: keptMark(state) } });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'keep-take': KeepTake;
  }
}
