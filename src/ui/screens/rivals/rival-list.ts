/** Versions that two devices made apart from each other, side by side, each with what differs; nothing where there are none. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { differences } from '../../../core/logbook/merge.ts';
import type { Item } from '../../../core/logbook/versions.ts';
import { rivalsEn as words } from '../../../words/rivals-en.ts';
import { pageLocale } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { nowAt } from '../../state/new-item.ts';
import { type RivalVersions, rivalVersions, withChosen } from '../../state/rivals.ts';

/** A value that is longer is cut off: what differs in it stands at its beginning, or it is no text to read. */
const MOST_LETTERS = 80;

@customElement('rival-list')
export class RivalList extends LitElement {
  static override styles = [
    shared,
    css`
      section {
        display: grid;
        gap: var(--space-12);
        margin-block-end: var(--space-24);
        padding-block: var(--space-12);
        border-block: var(--stroke-line) solid var(--line);
      }
      .scroll {
        overflow-x: auto;
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: var(--space-8) var(--space-16) var(--space-8) 0;
        border-block-end: var(--stroke-line) solid var(--line);
        text-align: start;
        vertical-align: baseline;
        overflow-wrap: anywhere;
      }
      thead th {
        color: var(--ink-2);
        font-weight: var(--weight-text);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  readonly #document = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );
  readonly #moment = new Intl.DateTimeFormat(pageLocale(), {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });

  override render() {
    const all = rivalVersions(this.#document.value);
    if (all.length === 0) return nothing;
    return html`<section>
      <h2>${words.heading(all.length)}</h2>
      <p>${words.lead}</p>
      ${all.map((versions) => this.#versions(versions))}
    </section>`;
  }

  #versions(versions: RivalVersions) {
    const { section, used, rivals } = versions;
    const shown = [used, ...rivals];
    const paths = [...new Set(rivals.flatMap((rival) => differences(used, rival).map(({ path }) => path)))];
    const name = 'name' in used ? String(used.name) : 'text' in used ? String(used.text) : '';
    return html`<h3>${words.of(section, name)}</h3>
      <div class="scroll"><table>
        <thead><tr>
          <th scope="col">${words.field}</th>
          <th scope="col">${words.used(this.#when(used))}</th>
          ${rivals.map((rival) => html`<th scope="col">${words.rival(this.#when(rival))}</th>`)}
        </tr></thead>
        <tbody>
          ${paths.map((path) => html`<tr><th scope="row">${path}</th>${shown.map((item) => html`<td>${valueText(item, path)}</td>`)}</tr>`)}
          <tr><td></td>${shown.map((item) => html`<td><button @click=${() => this.#choose(versions, item)}>${words.keep(this.#when(item))}</button></td>`)}</tr>
        </tbody>
      </table></div>`;
  }

  #when({ changedAt }: Item): string {
    return this.#moment.format(new Date(changedAt));
  }

  #choose(versions: RivalVersions, chosen: Item): void {
    const now = nowAt();
    void this.workbench.kept.change((document) => withChosen(document, versions, chosen, now), { asTheyAre: true });
  }
}

/** What stands at a path such as `target.lowN`. */
function valueText(item: Item, path: string): string {
  const value = path
    .split('.')
    .reduce<unknown>((at, name) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[name] : undefined), item);
  if (path === 'deletedAt') return value === undefined ? words.there : words.deleted;
  if (value === undefined || value === null || value === '') return words.none;
  const text = typeof value === 'object' ? JSON.stringify(value) : String(value);
  return text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS - 1)}…` : text;
}

declare global {
  interface HTMLElementTagNameMap {
    'rival-list': RivalList;
  }
}
