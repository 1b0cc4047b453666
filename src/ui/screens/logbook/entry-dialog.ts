/** One entry whole: a new one to write, a note to change, readings to look at, and what an event did to the force. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { changeAt } from '../../../core/logbook/compare.ts';
import type { Row } from '../../../core/logbook/rows.ts';
import type { LoggedReading } from '../../../core/logbook/time-line.ts';
import { logbookEn } from '../../../words/logbook-en.ts';
import { dialogStyles } from '../../dialog-styles.ts';
import { Figures, pageLocale, together } from '../../format.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { type Book, withReadingNotes } from '../../state/logbook.ts';
import { newItem } from '../../state/new-item.ts';
import { readTemperature } from '../../state/temperature.ts';
import { Dates } from './dates.ts';
import { type Draft, draftOf, emptyDraft, KINDS, type Kind, readEntry } from './entry-draft.ts';
import { fieldStyles } from './field-styles.ts';
import { forceText } from './list-view.ts';

const words = logbookEn.entry;
/** Sent with `{ ids, what }` when somebody deletes what is shown. */
const ENTRY_DELETED = 'entry-deleted';

@customElement('entry-dialog')
export class EntryDialog extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    fieldStyles,
    css`
      h2 {
        font-size: var(--title-size);
        line-height: var(--title-line);
      }
      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: var(--space-4) var(--space-16);
      }
      dt {
        color: var(--ink-2);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() row: Row | undefined;
  @state() book: Book | undefined;
  @state() draft: Draft | undefined;
  @state() fault = '';
  @query('dialog') dialog!: HTMLDialogElement;
  readonly #figures = new Figures();
  readonly #dates = new Dates(pageLocale());

  showNew(book: Book): void {
    this.#show(book, undefined, emptyDraft(Date.now() / 1000));
  }

  show(row: Row, book: Book): void {
    if (row.kind === 'readings') {
      this.#show(book, row, undefined);
      return;
    }
    const { event } = row;
    if (event.gaugeId) {
      this.#show(book, row, undefined);
      return;
    }
    this.#show(book, row, draftOf(event, this.#figures));
  }

  #show(book: Book, row: Row | undefined, draft: Draft | undefined): void {
    this.book = book;
    this.row = row;
    this.draft = draft;
    this.fault = '';
    void this.updateComplete.then(() => {
      if (!this.dialog.open) this.dialog.showModal();
    });
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      ${this.draft ? this.#form(this.draft) : this.row ? this.#whole(this.row) : nothing}
    </dialog>`;
  }

  #whole(row: Row) {
    return row.kind === 'readings' ? this.#readings(row) : this.#ofGauge(row);
  }

  /** What a gauge's own record keeps is changed there. */
  #ofGauge({ event, atS }: Exclude<Row, { kind: 'readings' }>) {
    return html`<div class="form">
      <h2 id="title">${logbookEn.rowKinds['gauge-reading']}, ${this.#dates.moment(atS)}</h2>
      <p>${event.text}${event.forceN ? `: ${this.#figures.bounds(event.forceN)}\u00a0N` : ''}</p>
      <p class="acts">
        <a class="button" href=${hrefOf('gauges', event.gaugeId ?? '', 'cross')}>${words.toGauge}</a>
        <button type="button" @click=${() => this.dialog.close()}>${words.close}</button>
      </p>
    </div>`;
  }

  #readings(row: Extract<Row, { kind: 'readings' }>) {
    const nameOf = (id: string) => this.book?.belts.find((belt) => belt.id === id)?.name ?? '';
    const ids = [...row.byBelt.values()].map(({ id }) => id);
    return html`<form class="form" novalidate @submit=${(event: Event) => this.#keepNotes(event, ids)}>
      <h2 id="title">${words.readings}, ${this.#dates.moment(row.atS)}</h2>
      <dl>
        ${[...row.byBelt].map(
          ([beltId, reading]) => html`<dt>${nameOf(beltId)}</dt>
            <dd>${forceText(reading, this.#figures)}${reading.forceN ? '\u00a0N' : ''}, ${this.#figures.rough(reading.frequencyHz, 'Hz')}, ${reading.grade}</dd>`,
        )}
      </dl>
      <label>${words.temperature}<input id="read-temperature" inputmode="decimal" .value=${row.temperatureC === undefined ? '' : this.#figures.typed(row.temperatureC)} /></label>
      <label>${words.text}<textarea id="read-note" rows="2" .value=${row.note}></textarea></label>
      <p class="fault" role="status">${this.fault}</p>
      ${this.#acts(ids, logbookEn.rowKinds.readings)}
    </form>`;
  }

  #form(draft: Draft) {
    const { book } = this;
    const set = (change: Partial<Draft>) => {
      this.draft = { ...draft, ...change };
    };
    const text = ({ target }: Event) => (target as HTMLInputElement).value;
    return html`<form class="form" @submit=${this.#keep} novalidate>
      <h2 id="title">${draft.id ? words.heading : words.newHeading}</h2>
      <label>${words.kind}<select @change=${(event: Event) => set({ kind: text(event) as Kind })}>
        ${KINDS.map((kind) => html`<option value=${kind} ?selected=${kind === draft.kind}>${logbookEn.rowKinds[kind]}</option>`)}
      </select></label>
      <label>${words.when}<input type="datetime-local" .value=${draft.when} @input=${(event: Event) => set({ when: text(event) })} /></label>
      <fieldset>
        <legend>${words.belts}</legend>
        ${book?.machine?.belts.map(
          ({ id, name }) =>
            html`<label class="box"><input type="checkbox" .checked=${draft.beltIds.includes(id)} @change=${() =>
              set({
                beltIds: draft.beltIds.includes(id) ? draft.beltIds.filter((one) => one !== id) : [...draft.beltIds, id],
              })} />${name}</label>`,
        )}
        ${draft.beltIds.length === 0 ? html`<span class="note">${words.wholeMachine}</span>` : nothing}
      </fieldset>
      ${
        draft.kind === 'gauge-reading'
          ? html`<label>${words.force}<input inputmode="decimal" .value=${draft.force} @input=${(event: Event) => set({ force: text(event) })} />
              <span class="note">${words.forceNote}</span></label>`
          : nothing
      }
      <label>${words.temperature}<input inputmode="decimal" .value=${draft.temperature} @input=${(event: Event) => set({ temperature: text(event) })} /></label>
      <label>${words.text}<textarea rows="3" .value=${draft.text} @input=${(event: Event) => set({ text: text(event) })}></textarea></label>
      <p class="fault" role="status">${this.fault}</p>
      ${this.row ? this.#did(this.row) : nothing}
      ${this.#acts(draft.id ? [draft.id] : [], logbookEn.rowKinds[draft.kind])}
    </form>`;
  }

  /** Forces before and after an event, where there are readings enough. */
  #did(row: Row) {
    const { book } = this;
    if (!book || row.kind === 'readings' || row.kind === 'temperature' || row.kind === 'gauge-reading') return nothing;
    const about = row.event.beltIds.length > 0 ? row.event.beltIds : book.belts.map(({ id }) => id);
    const lines = about.flatMap((beltId) => {
      const readings = book.logged.filter(
        (one): one is LoggedReading => one.kind === 'reading' && one.beltId === beltId && one.grade !== 'unusable',
      );
      const change = changeAt(readings, row.atS);
      const name = book.belts.find(({ id }) => id === beltId)?.name ?? '';
      if (!change) return [];
      const size = change.verdict === 'not-seen' ? change.differenceN : Math.abs(change.differenceN);
      return [words.changed[change.verdict](name, together(this.#figures.measured(size, change.u95N), 'N'))];
    });
    return lines.length === 0 ? nothing : html`<div><h3>${words.did}</h3>${lines.map((line) => html`<p>${line}</p>`)}</div>`;
  }

  #acts(ids: readonly string[], what: string) {
    return html`<p class="acts">
      <button class="solid">${ids.length > 0 ? words.change : words.save}</button>
      ${ids.length > 0 ? html`<button type="button" @click=${() => this.#delete(ids, what)}>${words.delete}</button>` : nothing}
      <button type="button" @click=${() => this.dialog.close()}>${words.close}</button>
    </p>`;
  }

  /** Readings keep what they say; what was noted of them may change. */
  #keepNotes(event: Event, ids: readonly string[]): void {
    event.preventDefault();
    const typed = (id: string) => this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value ?? '';
    const temperature = readTemperature(typed('read-temperature'));
    if (temperature === 'unreadable') {
      this.fault = words.needsTemperature;
      return;
    }
    const notes = { temperatureC: temperature, note: typed('read-note').trim() };
    void this.workbench.kept.change((document) => withReadingNotes(document, ids, notes));
    this.dialog.close();
  }

  #delete(ids: readonly string[], what: string): void {
    this.dialog.close();
    this.dispatchEvent(new CustomEvent(ENTRY_DELETED, { detail: { ids, what } }));
  }

  readonly #keep = (event: Event) => {
    event.preventDefault();
    const { draft, book } = this;
    if (!draft || !book?.machine) return;
    const read = readEntry(draft, book.machine.id);
    if (typeof read === 'string') {
      this.fault = read;
      return;
    }
    const fresh = newItem();
    void this.workbench.kept.change((document) => ({
      ...document,
      entries: draft.id
        ? document.entries.map((entry) => (entry.id === draft.id ? { ...entry, ...read } : entry))
        : [...document.entries, { ...fresh, ...read }],
    }));
    this.dialog.close();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'entry-dialog': EntryDialog;
  }
}
