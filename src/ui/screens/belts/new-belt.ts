/** A belt of one's own: a name, and which belt of the catalogue it is like. */

import { consume } from '@lit/context';
import { html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { beltById, belts } from '../../../../shared/belts.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import '../../parts/answer-line.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { newBelt, withNewBelt } from '../../state/belt-changes.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { newItem } from '../../state/new-item.ts';
import { beltStyles } from './belt-styles.ts';

const words = beltsEn.fresh;
const LIKE_NONE = '';

@customElement('new-belt')
export class NewBelt extends LitElement {
  static override styles = [shared, selectFieldStyles, beltStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() like = '';
  @state() nameMissing = false;
  @query('#name') nameField!: HTMLInputElement;
  @query('#like') likeField!: HTMLSelectElement;

  override render() {
    const choices = [...belts.map(({ id, label }) => ({ value: id, text: label })), { value: LIKE_NONE, text: words.likeNone }];
    const like = beltById(this.like) ? this.like : (belts[0]?.id ?? LIKE_NONE);
    return html`<answer-line>${words.headline}<span slot="under">${words.under}</span></answer-line>
      <form @submit=${this.#keep} novalidate>
        <div class="fields">
          <div>
            <label for="name">${words.name}</label>
            <input id="name" class="text" autocomplete="off" maxlength="120" aria-describedby="name-note" aria-invalid=${this.nameMissing ? 'true' : 'false'} />
            <p class=${this.nameMissing ? 'note fault' : 'note'} id="name-note">${this.nameMissing ? words.nameMissing : words.nameNote}</p>
          </div>
          <div>
            <label for="like">${words.like}</label>
            ${selectField({ id: 'like', value: like, choices, onChosen: () => {} })}
          </div>
        </div>
        <div class="buttons">
          <button class="solid" type="submit">${words.keep}</button>
          <a class="button" href=${hrefOf('belts')}>${words.leave}</a>
        </div>
      </form>`;
  }

  readonly #keep = async (event: Event) => {
    event.preventDefault();
    const name = this.nameField.value.trim();
    this.nameMissing = name === '';
    if (this.nameMissing) return this.nameField.focus();
    const belt = newBelt(newItem(), { name, catalogueId: this.likeField.value || undefined });
    await this.workbench.kept.change((document) => withNewBelt(document, belt));
    location.hash = hrefOf('belts', belt.id);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'new-belt': NewBelt;
  }
}
