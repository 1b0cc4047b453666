/** Belts: the catalogue and the person's own at the side, one belt on the sheet. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { beltById, belts } from '../../../../shared/belts.ts';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { Figures } from '../../format.ts';
import { Narrow } from '../../narrow.ts';
import '../../parts/answer-line.ts';
import '../../parts/place-layout.ts';
import '../../parts/place-list.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { withNewBelt } from '../../state/belt-changes.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { knowledgeOf } from '../../state/own-belts.ts';
import type { BeltRemoved } from './belt-values.ts';
import './new-belt.ts';
import './own-belt.ts';
import './row-sheet.ts';
import { standingOf } from './value-words.ts';

/** Stands in the address for a belt that is to be made. */
export const NEW_BELT = 'new';

@customElement('belts-screen')
export class BeltsScreen extends LitElement {
  static override styles = [
    shared,
    css`
      .rail-head {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-16);
        padding-inline: var(--space-24);
        margin-block-end: var(--space-8);
      }
      place-list {
        margin-block-end: var(--space-24);
      }
      .own place-list {
        margin-inline: calc(-1 * var(--sheet-margin));
        margin-block-start: var(--space-8);
      }
      .none {
        padding-inline: var(--space-24);
        margin-block-end: var(--space-24);
      }
      @media (max-width: 59.99rem) {
        .rail-head,
        .none {
          padding-inline: var(--sheet-margin);
        }
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() beltId = '';
  @property() page = '';
  /** Belt of the catalogue that a new one is like. */
  @property() like = '';

  /** Taken away last, to be brought back. */
  @state() removed: KeptBelt | undefined;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
  readonly #kept = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document.belts,
  );

  override render() {
    const own = this.#kept.value;
    const current = own.find(({ id }) => id === this.beltId);
    const row = beltById(this.beltId);
    return html`<place-layout .label=${beltsEn.list} .fold=${current?.name ?? row?.label ?? beltsEn.all}>
      <div slot="rail">
        <div class="rail-head">
          <h2>${beltsEn.own}</h2>
          <a class="button quiet" href=${hrefOf('belts', NEW_BELT)}>${beltsEn.add}</a>
        </div>
        ${own.length === 0 ? html`<p class="note none">${beltsEn.noneOwn}</p>` : this.#ownList()}
        <div class="rail-head"><h2>${beltsEn.catalogue}</h2></div>
        <place-list .label=${beltsEn.catalogue} .entries=${this.#rows()} .current=${this.beltId}></place-list>
      </div>
      ${this.#sheet(current)}
    </place-layout>`;
  }

  #sheet(current: KeptBelt | undefined) {
    const row = beltById(this.beltId);
    if (current) return html`<own-belt .belt=${current} .page=${this.page} @belt-removed=${this.#tookAway}></own-belt>`;
    if (row) return html`<row-sheet .row=${row}></row-sheet>`;
    if (this.beltId === NEW_BELT) return html`<new-belt .like=${this.like}></new-belt>`;
    if (this.beltId !== '' && !this.workbench.kept.keeping.isOpen) return nothing; // it may yet come
    const { headline, under } = this.beltId === '' ? beltsEn.choose : beltsEn.notFound;
    return html`${this.#undo()}<answer-line>
      ${headline}
      <span slot="under">${under}</span>
      <a slot="actions" class="button" href=${hrefOf('belts', NEW_BELT)}>${beltsEn.add}</a>
      </answer-line>
      ${this.#narrow.matches && this.beltId === '' && this.#kept.value.length > 0 ? html`<section class="own"><h2>${beltsEn.own}</h2>${this.#ownList()}</section>` : nothing}`;
  }

  #undo() {
    const { removed } = this;
    if (!removed) return nothing;
    const bringBack = async () => {
      await this.workbench.kept.change((document) => withNewBelt(document, removed));
      this.removed = undefined;
      location.hash = hrefOf('belts', removed.id);
    };
    return html`<p role="status">${beltsEn.sheet.removed(removed.name)} <button class="quiet" @click=${bringBack}>${beltsEn.sheet.undo}</button></p>`;
  }

  readonly #tookAway = ({ belt }: BeltRemoved) => {
    this.removed = belt;
  };

  #ownList() {
    const entries = this.#kept.value.map((belt) => this.#entry(belt));
    return html`<place-list .label=${beltsEn.own} .entries=${entries} .current=${this.beltId}></place-list>`;
  }

  #entry(belt: KeptBelt) {
    const density = knowledgeOf(belt)?.linearDensityKgPerM;
    const figure = density && this.#figures.typed(Number((density.value * 1000).toPrecision(3)), 'g/m');
    const standing = standingOf(belt);
    const words = beltsEn.rail;
    const note =
      figure === undefined
        ? words.nothing
        : words[standing === 'told' ? 'told' : standing === 'catalogue' ? 'catalogue' : 'weighed'](figure);
    return { id: belt.id, name: belt.name, note, href: hrefOf('belts', belt.id) };
  }

  #rows() {
    return belts.map(({ id, label, linearDensityKgPerM }) => ({
      id,
      name: label,
      note: beltsEn.rail.catalogue(this.#figures.typed(linearDensityKgPerM.value * 1000, 'g/m')),
      href: hrefOf('belts', id),
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'belts-screen': BeltsScreen;
  }
}
