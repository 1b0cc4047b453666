/**
 * Everything that was entered, as a table that draws only the rows on the screen: ten thousand scroll as ten do. Rows have one height; what does
 * not fit is cut off and stands whole where the entry is opened.
 */

import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { Narrow } from '../narrow.ts';
import { shared } from '../shared-styles.ts';

export interface ListedEntry {
  readonly id: string;
  readonly date: string;
  readonly kind: string;
  /** One for each column of figures; empty where there is none. */
  readonly figures: readonly string[];
  readonly note: string;
}

/** Sent when somebody wants to see one whole. */
export class EntryOpened extends Event {
  readonly id: string;

  constructor(id: string) {
    super('entry-opened', { bubbles: true, composed: true });
    this.id = id;
  }
}

const ROW_PX = { wide: 44, narrow: 92 };
/** Rows drawn above and below what is seen, so that a quick scroll meets no gap. */
const BEYOND = 12;
/** Before the list knows where it stands. */
const FIRST_ROWS = 30;

@customElement('entry-list')
export class EntryList extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
        table-layout: fixed;
      }
      th {
        padding: var(--space-8) var(--space-8) var(--space-8) 0;
        border-block-end: var(--stroke-line) solid var(--edge);
        font-size: var(--note-size);
        font-weight: var(--weight-text);
        color: var(--ink-2);
        text-align: start;
        white-space: nowrap;
      }
      tr.row {
        block-size: 44px;
      }
      tr.row td {
        block-size: 44px;
        padding: 0 var(--space-8) 0 0;
        border-block-end: var(--stroke-line) solid var(--line);
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .figure {
        text-align: end;
      }
      th.note,
      tr.row td.note {
        padding-inline-start: var(--space-24);
      }
      td.figure:empty::after {
        content: '\u2013';
        color: var(--ink-3);
      }
      th.date {
        inline-size: 9.5rem;
      }
      th.kind {
        inline-size: 9rem;
      }
      button {
        min-block-size: 0;
        block-size: 42px;
        padding: 0;
        border: 0;
        font-weight: var(--weight-text);
        text-align: start;
        text-decoration: underline;
        text-decoration-color: var(--edge);
        text-underline-offset: 0.25em;
      }
      .gap td {
        padding: 0;
        border: 0;
      }
      @media (max-width: 59.99rem) {
        table,
        tbody {
          display: block;
        }
        thead {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        tr.row {
          display: flex;
          flex-wrap: wrap;
          align-content: center;
          column-gap: var(--space-16);
          block-size: 92px;
          overflow: hidden;
          border-block-end: var(--stroke-line) solid var(--line);
        }
        tr.row td {
          display: block;
          block-size: auto;
          padding: 0;
          border: 0;
        }
        tr.row td.date {
          flex: 0 0 calc(100% - 9.5rem);
        }
        tr.row td.kind {
          flex: 0 0 8.5rem;
          align-self: center;
          text-align: end;
          color: var(--ink-2);
        }
        tr.row td.figure:empty {
          display: none;
        }
        tr.row td.figure::before {
          content: attr(data-column) '\u00a0';
          color: var(--ink-2);
        }
        tr.row td.note {
          flex: 1 1 4rem;
          min-inline-size: 0;
          padding: 0;
          font-size: var(--text-size);
        }
        td.date::after {
          content: none;
        }
        .gap {
          display: block;
        }
        button {
          block-size: 36px;
          font-weight: var(--weight-strong);
        }
      }
      @media print {
        button {
          display: inline;
          text-decoration: none;
        }
      }
    `,
  ];

  /** Heads of the columns: date, kind, each of the figures, note. */
  @property({ attribute: false }) columns: {
    readonly date: string;
    readonly kind: string;
    readonly figures: readonly string[];
    readonly note: string;
  } = {
    date: '',
    kind: '',
    figures: [],
    note: '',
  };
  @property({ attribute: false }) entries: readonly ListedEntry[] = [];
  @property() label = '';
  @state() from = 0;
  @state() to = FIRST_ROWS;
  @query('tbody') body!: HTMLElement;
  readonly #narrow = new Narrow(this);
  #asked = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('scroll', this.#look, { passive: true });
    window.addEventListener('resize', this.#look);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('scroll', this.#look);
    window.removeEventListener('resize', this.#look);
    cancelAnimationFrame(this.#asked);
  }

  override updated(): void {
    const px = this.#rowPx;
    const gaps = this.renderRoot.querySelectorAll<HTMLElement>('.gap td');
    const count = this.entries.length;
    const sizes = [Math.min(this.from, count) * px, Math.max(0, count - this.to) * px];
    for (const [index, gap] of gaps.entries()) gap.style.blockSize = `${sizes[index] ?? 0}px`;
    this.#look();
  }

  override render() {
    const shown = this.entries.slice(this.from, this.to);
    const { date, kind, figures, note } = this.columns;
    const span = 3 + figures.length;
    return html`<table aria-label=${this.label} aria-rowcount=${this.entries.length + 1}>
      <thead>
        <tr aria-rowindex="1">
          <th scope="col" class="date">${date}</th>
          <th scope="col" class="kind">${kind}</th>
          ${figures.map((name) => html`<th scope="col" class="figure">${name}</th>`)}
          <th scope="col" class="note">${note}</th>
        </tr>
      </thead>
      <tbody>
        ${gap(span)}
        ${repeat(
          shown,
          ({ id }) => id,
          (entry, index) => this.#row(entry, this.from + index),
        )}
        ${gap(span)}
      </tbody>
    </table>`;
  }

  #row({ id, date, kind, figures, note }: ListedEntry, index: number) {
    return html`<tr class="row" aria-rowindex=${index + 2}>
      <td class="date"><button @click=${() => this.dispatchEvent(new EntryOpened(id))}>${date}</button></td>
      <td class="kind">${kind}</td>
      ${figures.map((figure, column) => html`<td class="figure" data-column=${this.columns.figures[column] ?? nothing}>${figure}</td>`)}
      <td class="note">${note}</td>
    </tr>`;
  }

  get #rowPx(): number {
    return this.#narrow.matches ? ROW_PX.narrow : ROW_PX.wide;
  }

  readonly #look = (): void => {
    cancelAnimationFrame(this.#asked);
    this.#asked = requestAnimationFrame(() => {
      if (!this.isConnected || !this.body) return;
      const top = this.body.getBoundingClientRect().top;
      const px = this.#rowPx;
      const from = Math.max(0, Math.floor(-top / px) - BEYOND);
      const to = Math.max(from + FIRST_ROWS, Math.ceil((window.innerHeight - top) / px) + BEYOND);
      const last = Math.min(to, Math.max(this.entries.length, FIRST_ROWS));
      // In steps, so that a slow scroll does not draw at each pixel.
      if (Math.abs(from - this.from) >= BEYOND / 2 || Math.abs(last - this.to) >= BEYOND / 2 || from === 0) {
        this.from = Math.min(from, Math.max(0, this.entries.length - 1));
        this.to = last;
      }
    });
  };
}

const gap = (columns: number) => html`<tr class="gap" aria-hidden="true"><td colspan=${columns}></td></tr>`;

declare global {
  interface HTMLElementTagNameMap {
    'entry-list': EntryList;
  }
}
