/** What is known of one belt: each value with its doubt, where it comes from and when it was got, the earlier ones behind it. */

import { css, html, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { beltById } from '../../../../shared/belts.ts';
import { currentOf, type KnownValue } from '../../../../shared/document/common.ts';
import { parseQuantity, type QuantityKind } from '../../../core/quantity.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { linkEn } from '../../../words/link-en.ts';
import '../../parts/answer-line.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type ValueName, withoutBelt, withoutLast } from '../../state/belt-changes.ts';
import { recomputed } from '../../state/keep-take.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { nowAt } from '../../state/new-item.ts';
import { catalogueLabel, knowledgeOf } from '../../state/own-belts.ts';
import type { ShareDialog } from '../link/share-dialog.ts';
import { BeltPage, COVERAGE_FACTOR } from './belt-page.ts';
import { beltReadings } from './belt-readings.ts';
import { beltStyles } from './belt-styles.ts';
import { dateText, rangeText, standingOf, VALUE_NAMES, valueText } from './value-words.ts';

const words = beltsEn.sheet;
/** What can be told, and in which unit a bare number is meant. A fixity is only measured. */
const TOLD: readonly { readonly name: ValueName; readonly kind: QuantityKind; readonly unit: string }[] = [
  { name: 'linearDensityKgPerM', kind: 'linear-density', unit: 'g/m' },
  { name: 'bendingStiffnessNm2', kind: 'stiffness', unit: 'N m²' },
  { name: 'axialStiffnessN', kind: 'force', unit: 'N' },
  { name: 'ratedForceN', kind: 'force', unit: 'N' },
];
/** A told value without a doubt of its own is good to this, relative standard uncertainty; a rating has none. */
const TOLD_RELATIVE_U = 0.05;

@customElement('belt-values')
export class BeltValues extends BeltPage {
  static override styles = [
    shared,
    quantityInputStyles,
    selectFieldStyles,
    beltStyles,
    css`
      .ending {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-8) var(--space-24);
      }
      .values {
        padding: 0;
        list-style: none;
      }
      .values > li {
        display: grid;
        grid-template-columns: minmax(8rem, 1fr) minmax(11rem, 1.6fr) minmax(10rem, 1.6fr) auto;
        gap: var(--space-4) var(--space-16);
        align-items: start;
        padding-block: var(--space-8);
        border-block-start: var(--stroke-line) solid var(--line);
      }
      .values strong {
        font-weight: var(--weight-strong);
      }
      .values > li > button {
        margin-block: calc(-1 * var(--space-8));
      }
      @media (max-width: 59.99rem) {
        .values > li {
          grid-template-columns: minmax(0, 1fr) auto;
        }
        .values > li > :first-child,
        .values > li > strong {
          grid-column: 1 / -1;
        }
      }
      details ul {
        padding: 0 0 0 var(--space-16);
        margin: 0;
      }
    `,
  ];

  @state() renaming = false;
  @state() telling: ValueName = 'linearDensityKgPerM';
  @state() unreadable = false;
  @state() recomputed = 0;
  @query('share-dialog') shareDialog!: ShareDialog;
  @query('#rename') nameField!: HTMLInputElement;
  @query('#told') toldField!: HTMLInputElement;
  @query('#source') sourceField!: HTMLInputElement;

  readonly #takes = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document.takes,
  );

  override render() {
    const readings = beltReadings(
      this.#takes.value.filter(({ entered }) => entered.beltId === this.belt.id),
      this.figures,
    );
    return html`${this.#headline()} ${this.#table()} ${this.#readings()} ${readings} ${this.#tell()} ${this.#ending()}<share-dialog></share-dialog>`;
  }

  #headline() {
    const { belt } = this;
    const density = knowledgeOf(belt)?.linearDensityKgPerM;
    const standing = standingOf(belt);
    const label = catalogueLabel(belt);
    const over = html`<span slot="over">${belt.name}, ${label ? words.like(label) : words.likeNone}</span>`;
    if (!density)
      return html`<answer-line>${over}${words.unknown}<span slot="under">${words.under.told}</span>${this.#actions(standing)}</answer-line>`;
    const [figure, rest] = words.headline[standing](this.density(density));
    return html`<answer-line>${over}<b>${figure}</b>${rest}<span slot="under">${words.under[standing]}</span>${this.#actions(standing)}</answer-line>`;
  }

  /** The one main action is what makes the belt better known; once it is proved, to listen. */
  #actions(standing: ReturnType<typeof standingOf>) {
    const next = standing === 'proved' ? 'listen' : standing === 'measured' ? 'pluck' : 'weigh';
    return html`${next === 'listen' ? nothing : html`<a slot="actions" class="button main" href=${hrefOf('belts', this.belt.id, next)}>${words[next]}</a>`}
      <button slot="actions" class=${next === 'listen' ? 'solid' : ''} @click=${this.#listen}>${words.listen}</button>
      <button slot="actions" aria-haspopup="dialog" @click=${this.#share}>${linkEn.share}</button>`;
  }

  readonly #share = async (): Promise<void> => {
    await import('../link/share-dialog.ts');
    this.shareDialog.show(this.belt.id);
  };

  #table() {
    return html`<section>
      <h2>${beltsEn.values.heading}</h2>
      <ul class="values">${VALUE_NAMES.map((name) => this.#row(name))}</ul>
    </section>`;
  }

  #row(name: ValueName) {
    const values = this.belt[name] ?? [];
    const current = currentOf(values);
    const { names, from } = beltsEn.values;
    const earlier = values.slice(0, -1).reverse();
    if (!current) return html`<li><span>${names[name]}</span>${this.#fromCatalogue(name)}</li>`;
    return html`<li>
      <span>${names[name]}</span>
      <strong>${valueText(name, current, this.figures)}</strong>
      <div>
        ${from[current.from]}, ${dateText(current.got, this.figures)}
        ${current.note ? html`<p class="note">${current.note}</p>` : nothing}
        ${
          earlier.length > 0
            ? html`<details>
                <summary>${beltsEn.values.earlier(earlier.length)}</summary>
                <ul>${earlier.map((value) => html`<li class="note">${this.#line(name, value)}</li>`)}</ul>
              </details>`
            : nothing
        }
      </div>
      <button class="quiet" aria-label=${beltsEn.values.takeBackName(names[name])} @click=${() => this.change((belt) => withoutLast(belt, name))}>
        ${beltsEn.values.takeBack}
      </button>
    </li>`;
  }

  #line(name: ValueName, value: KnownValue): string {
    return `${valueText(name, value, this.figures)}, ${beltsEn.values.from[value.from]}, ${dateText(value.got, this.figures)}`;
  }

  /** What stands in until somebody measures it. */
  #fromCatalogue(name: ValueName) {
    const row = this.belt.catalogueId === undefined ? undefined : beltById(this.belt.catalogueId);
    const { from } = beltsEn.values;
    const cells = (figure: string, source: string) => html`<strong>${figure}</strong><span>${source}</span>`;
    if (row && name === 'linearDensityKgPerM') return cells(valueText(name, row[name], this.figures), from.catalogue);
    if (row && name === 'bendingStiffnessNm2') return cells(rangeText(name, row[name], this.figures), from.assumed);
    if (row && name === 'ratedForceN') return cells(this.figures.typed(row[name].value, 'N'), from.catalogue);
    return html`<span>${beltsEn.values.notMeasured}</span>`;
  }

  /** Readings that were kept with other values of this belt. */
  #readings() {
    const old = this.#takes.value.filter(
      (take) => take.entered.beltId === this.belt.id && recomputed(take, [this.belt], take.now.computedAt) !== take,
    );
    if (old.length === 0)
      return html`<p class="note" role="status">${this.recomputed > 0 ? beltsEn.recompute.done(this.recomputed) : nothing}</p>`;
    return html`<section>
      <p>${beltsEn.recompute.count(old.length)} ${beltsEn.recompute.note}</p>
      <div class="buttons"><button @click=${() => this.#recompute(old.map(({ id }) => id))}>${beltsEn.recompute.act}</button></div>
    </section>`;
  }

  #tell() {
    const { quantity, value, source, sourceNote, keep, tell, unreadable, names } = beltsEn.values;
    const unit = TOLD.find(({ name }) => name === this.telling)?.unit;
    const choices = TOLD.map(({ name }) => ({ value: name, text: names[name] }));
    return html`<section>
      <details>
        <summary>${tell}</summary>
        <form @submit=${this.#tellIt} novalidate>
          <div class="fields">
            <div>
              <label for="quantity">${quantity}</label>
              ${selectField({ id: 'quantity', value: this.telling, choices, onChosen: (name) => this.#choose(name) })}
            </div>
            <div>
              <label for="told">${value}</label>
              ${quantityInput({ id: 'told', value: '', unit, unreadable: this.unreadable, describedBy: 'told-note', onTyped: () => {} })}
              <p class=${this.unreadable ? 'note fault' : 'note'} id="told-note">${this.unreadable ? unreadable : nothing}</p>
            </div>
            <div>
              <label for="source">${source}</label>
              <input id="source" class="text" autocomplete="off" maxlength="400" aria-describedby="source-note" />
              <p class="note" id="source-note">${sourceNote}</p>
            </div>
          </div>
          <div class="buttons"><button type="submit">${keep}</button></div>
        </form>
      </details>
    </section>`;
  }

  #ending() {
    return html`<section class="ending">
      ${
        this.renaming
          ? html`<form @submit=${this.#rename} novalidate>
              <div class="fields"><div>
                <label for="rename">${words.name}</label>
                <input id="rename" class="text" maxlength="120" autocomplete="off" .value=${this.belt.name} />
              </div></div>
              <div class="buttons"><button type="submit">${words.renameDone}</button></div>
            </form>`
          : html`<button class="quiet" @click=${this.#startRenaming}>${words.rename}</button>`
      }
      <button class="quiet" @click=${this.#remove}>${words.remove}</button>
    </section>`;
  }

  #choose(name: string): void {
    this.telling = TOLD.find((told) => told.name === name)?.name ?? 'linearDensityKgPerM';
    this.unreadable = false;
  }

  readonly #tellIt = async (event: Event) => {
    event.preventDefault();
    const told = TOLD.find(({ name }) => name === this.telling)!;
    const parsed = parseQuantity(this.toldField.value, { kind: told.kind, defaultUnit: told.unit });
    this.unreadable = !parsed.ok;
    if (!parsed.ok) return this.toldField.focus();
    const { value, standardUncertainty } = parsed;
    const assumedU = told.name === 'ratedForceN' ? 0 : TOLD_RELATIVE_U * value;
    const u = standardUncertainty === undefined ? assumedU : standardUncertainty / COVERAGE_FACTOR;
    const note = this.sourceField.value.trim() || undefined;
    await this.use({ from: 'told', note, values: { [told.name]: { value, standardUncertainty: u } } });
    this.toldField.value = '';
    this.sourceField.value = '';
  };

  readonly #listen = () => {
    this.workbench.store.dispatch({ kind: 'setup-entered', change: { beltId: this.belt.id } });
    location.hash = hrefOf('listen');
  };

  readonly #startRenaming = async () => {
    this.renaming = true;
    await this.updateComplete;
    this.nameField.focus();
  };

  readonly #rename = async (event: Event) => {
    event.preventDefault();
    const name = this.nameField.value.trim();
    if (name !== '' && name !== this.belt.name) await this.change((belt) => ({ ...belt, name }));
    this.renaming = false;
  };

  readonly #remove = async () => {
    const { belt } = this;
    this.dispatchEvent(new BeltRemoved(belt));
    await this.workbench.kept.change((document) => withoutBelt(document, belt.id));
    location.hash = hrefOf('belts');
  };

  async #recompute(ids: readonly string[]): Promise<void> {
    const at = nowAt();
    await this.workbench.kept.change((document) => ({
      ...document,
      takes: document.takes.map((take) => (ids.includes(take.id) ? recomputed(take, document.belts, at) : take)),
    }));
    this.recomputed = ids.length;
  }
}

/** A belt was taken away; whoever shows the list can bring it back. */
export class BeltRemoved extends Event {
  readonly belt: BeltPage['belt'];

  constructor(belt: BeltPage['belt']) {
    super('belt-removed', { bubbles: true, composed: true });
    this.belt = belt;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'belt-values': BeltValues;
  }
}
