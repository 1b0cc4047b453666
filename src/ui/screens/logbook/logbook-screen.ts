/** The Logbook: which machine, what was kept of it over time, what will have to be done and by when. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { type Outlook, outlookOf } from '../../../core/logbook/outlook.ts';
import { type Narrowing, narrowed, type Row, rowsOf } from '../../../core/logbook/rows.ts';
import { logbookEn as words } from '../../../words/logbook-en.ts';
import { Figures, pageLocale } from '../../format.ts';
import { Narrow } from '../../narrow.ts';
import '../../parts/answer-line.ts';
import '../../parts/entry-list.ts';
import type { EntryOpened } from '../../parts/entry-list.ts';
import '../../parts/place-layout.ts';
import '../../parts/place-list.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { canHavePast, demoPast } from '../../state/demo-past.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { type Book, bookOf, booksOf, ELSEWHERE, withDeleted } from '../../state/logbook.ts';
import { nowAt } from '../../state/new-item.ts';
import { answerView } from './answer-view.ts';
import { Dates } from './dates.ts';
import './entry-dialog.ts';
import type { EntryDialog } from './entry-dialog.ts';
import { listedEntries, rowText } from './list-view.ts';
import { logbookStyles } from './logbook-styles.ts';
import './logbook-plots.ts';
import '../rivals/rival-list.ts';
import './reminder-dialog.ts';
import type { ReminderDialog } from './reminder-dialog.ts';

/** Boxes of 'Show', each with the kinds of row that it stands for. */
const SHOWN: Readonly<Record<keyof typeof words.kinds, readonly Row['kind'][]>> = {
  readings: ['readings'],
  adjusted: ['adjusted'],
  'gauge-reading': ['gauge-reading'],
  notes: ['note', 'belt-changed'],
  temperature: ['temperature'],
};

interface Seen {
  readonly of: unknown;
  readonly id: string;
  readonly book: Book;
  readonly outlook: Outlook;
  readonly rows: readonly Row[];
}

@customElement('logbook-screen')
export class LogbookScreen extends LitElement {
  static override styles = [shared, logbookStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property() bookId = '';
  @state() unshown: ReadonlySet<string> = new Set();
  @state() find = '';
  @state() removed: { readonly ids: readonly string[]; readonly what: string } | undefined;
  @query('entry-dialog') entryDialog!: EntryDialog;
  @query('reminder-dialog') reminderDialog!: ReminderDialog;

  readonly #figures = new Figures();
  readonly #dates = new Dates(pageLocale());
  readonly #narrow = new Narrow(this);
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );
  /** What was reckoned last, and for which document and book: a trend is not fitted at each key that is typed. */
  #seen: Seen | undefined;

  override render() {
    const document = this.#document.value;
    const books = booksOf(document);
    const id = this.bookId || (books.find(({ count }) => count > 0) ?? books[0])?.id || '';
    const entries = books.map(({ id: book, machine, count }) => ({
      id: book,
      name: machine?.name ?? words.elsewhere,
      note: words.listNote(machine?.note ?? '', count),
      href: hrefOf('logbook', book),
    }));
    const seen = this.#look(id);
    const name = entries.find((one) => one.id === id)?.name ?? words.title;
    return html`<place-layout .label=${words.list} .fold=${name}>
        <div slot="rail" class="head"><h2>${words.title}</h2></div>
        <place-list slot="rail" .label=${words.list} .entries=${entries} .current=${id}></place-list>
        ${seen ? this.#rail(id) : nothing}
        <rival-list></rival-list>
        ${seen ? this.#sheet(seen, name) : this.#nothing(id)}
      </place-layout>
      <entry-dialog @entry-deleted=${this.#delete}></entry-dialog>
      <reminder-dialog></reminder-dialog>`;
  }

  #look(id: string) {
    const document = this.#document.value;
    if (this.#seen?.of === document && this.#seen.id === id) return this.#seen;
    const book = bookOf(document, id);
    if (!book) {
      this.#seen = undefined;
      return undefined;
    }
    const { logged, belts, pairs } = book;
    const outlook = outlookOf({ logged, belts, pairs, nowS: Date.now() / 1000 });
    this.#seen = { of: document, id, book, outlook, rows: rowsOf(logged) };
    return this.#seen;
  }

  #rail(id: string) {
    return html`<div slot="rail" class="filters">
        <label class="find">${words.find}
          <input type="search" placeholder=${words.findHint} .value=${this.find} @input=${this.#finds} /></label>
        <fieldset>
          <legend>${words.show}</legend>
          ${Object.entries(words.kinds).map(
            ([kind, text]) =>
              html`<label class="box"><input type="checkbox" .checked=${!this.unshown.has(kind)} @change=${() => this.#toggle(kind)} />${text}</label>`,
          )}
        </fieldset>
      </div>
      <div slot="rail" class="acts">
        ${id === ELSEWHERE ? nothing : html`<a class="button" href=${hrefOf('logbook', id, 'report')}>${words.report}</a>`}
        <a class="button" href=${hrefOf('settings')}>${words.file}</a>
        <a class="quiet" href=${hrefOf('logbook', 'validation')}>${words.validate}</a>
      </div>`;
  }

  #sheet({ book, outlook, rows }: Seen, name: string) {
    const nowS = Date.now() / 1000;
    const told = { nowS, dates: this.#dates, figures: this.#figures };
    const { answer, under } = answerView(outlook, told);
    const first = rows.at(-1);
    const over = first ? words.since(name, this.#dates.day(first.atS, nowS)) : name;
    const group = book.machine?.groups.find(({ beltIds }) => outlook.first && beltIds.includes(outlook.first.beltId));
    return html`<answer-line>
        <span slot="over">${over}</span>${answer[0]}<b>${answer[1]}</b><span slot="under">${under}</span>
        ${
          rows.length === 0
            ? html`<a slot="actions" class="button solid" href=${hrefOf('listen')}>${words.toListen}</a>
              ${canHavePast(this.#document.value, book.machine) ? html`<button slot="actions" @click=${() => this.#bringPast(book)}>${words.bringPast}</button>` : nothing}`
            : html`${group && book.machine ? html`<a slot="actions" class="button solid" href=${hrefOf('machines', book.machine.id, 'adjust', group.id)}>${words.adjust}</a>` : nothing}
              <button slot="actions" @click=${() => this.reminderDialog.show({ ...told, outlook, machineName: name, bookId: book.id })}>${words.remind}</button>`
        }
      </answer-line>
      ${outlook.belts.some(({ last }) => last) ? html`<logbook-plots .book=${book} .outlook=${outlook} .nowS=${nowS}></logbook-plots>` : nothing}
      ${this.#entries(book, outlook, rows, nowS)}`;
  }

  #entries(book: Book, outlook: Outlook, rows: readonly Row[], nowS: number) {
    const kinds = new Set(Object.entries(SHOWN).flatMap(([kind, of]) => (this.unshown.has(kind) ? [] : of)));
    const view = { belts: outlook.belts.map(({ belt }) => belt), pairs: book.pairs, nowS, dates: this.#dates, figures: this.#figures };
    const narrowing: Narrowing = { kinds, find: this.find, textOf: (row) => rowText(row, view) };
    const { columns, entries } = listedEntries(narrowed(rows, narrowing), view, this.#narrow.matches);
    return html`<section class="entries">
      <div class="over-list">
        <h2>${words.entries}</h2>
        ${book.machine ? html`<button class="quiet" @click=${() => this.entryDialog.showNew(book)}>${words.add}</button>` : nothing}
      </div>
      ${this.removed ? html`<p class="undo" role="status">${words.deleted(this.removed.what)} <button class="quiet" @click=${this.#undo}>${words.undo}</button></p>` : nothing}
      ${
        entries.length === 0 && rows.length > 0
          ? html`<p class="note">${words.noneFound}</p>`
          : html`<entry-list .columns=${columns} .entries=${entries} .label=${words.entries} @entry-opened=${(event: EntryOpened) => this.#open(event.id, rows, book)}></entry-list>`
      }
    </section>`;
  }

  #nothing(id: string) {
    const { kept } = this.workbench;
    const isGone = id !== '' && kept.keeping.isOpen;
    const [plain, heavy] = isGone ? ['', words.gone[0]] : words.answer.none;
    return html`<answer-line>${plain}<b>${heavy}</b>
      <span slot="under">${isGone ? words.gone[1] : words.under.none}</span>
      <a slot="actions" class="button solid" href=${hrefOf('listen')}>${words.toListen}</a>
      <a slot="actions" class="button" href=${hrefOf('machines')}>${words.toMachines}</a></answer-line>`;
  }

  #bringPast({ machine }: Book): void {
    if (!machine) return;
    const { takes, entries } = demoPast(machine, words.past, Date.now());
    void this.workbench.kept.change((document) => ({
      ...document,
      takes: [...document.takes, ...takes],
      entries: [...document.entries, ...entries],
    }));
  }

  #open(id: string, rows: readonly Row[], book: Book): void {
    const row = rows.find((one) => one.id === id);
    if (row) this.entryDialog.show(row, book);
  }

  readonly #delete = (event: Event) => {
    const { ids, what } = (event as CustomEvent<{ ids: readonly string[]; what: string }>).detail;
    this.removed = { ids, what };
    const at = nowAt();
    void this.workbench.kept.change((document) => withDeleted(document, ids, at));
  };

  readonly #undo = () => {
    const ids = this.removed?.ids ?? [];
    this.removed = undefined;
    void this.workbench.kept.change((document) => withDeleted(document, ids, undefined));
  };

  readonly #finds = ({ target }: Event) => {
    this.find = (target as HTMLInputElement).value;
  };

  #toggle(kind: string): void {
    const next = new Set(this.unshown);
    if (!next.delete(kind)) next.add(kind);
    this.unshown = next;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'logbook-screen': LogbookScreen;
  }
}
