/** A file on its way in, beside what is slotted for the way out: what it would change, by merging or by replacing, and only then the change. A file with a fault changes nothing. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { FileRefusal, ReadDocument } from '../../../../shared/document/file.ts';
import { readFileText } from '../../../../shared/document/file.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { settingsEn as words } from '../../../words/settings-en.ts';
import { pageLocale } from '../../format.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { documentChanges, mergedDocument, type SectionChange } from '../../state/document-merge.ts';
import { settingsStyles } from './settings-styles.ts';

type Way = 'merge' | 'replace';
type Taken = Extract<ReadDocument, { ok: true }>;

@customElement('file-in')
export class FileIn extends LitElement {
  static override styles = [shared, settingsStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  /** What is kept by now; the preview follows it. */
  @property({ attribute: false }) document!: KeptDocument;
  @state() file: { readonly name: string; readonly read: ReadDocument } | undefined;
  @state() way: Way = 'merge';
  @state() done: Way | undefined;

  override render() {
    return html`<div class="acts">
        <slot></slot>
        <label class="button">${words.open}<input class="visually-hidden" type="file" accept=".json,application/json" @change=${this.#chosen} /></label>
      </div>
      <div aria-live="polite">
        ${this.done ? html`<p>${words.done[this.done]}</p>` : nothing}
        ${this.file ? this.#shown(this.file) : nothing}
      </div>`;
  }

  #shown({ name, read }: { readonly name: string; readonly read: ReadDocument }) {
    if (read.ok) return this.#preview(name, read);
    return html`<p><strong>${name}</strong></p>
      <p>${words.refused} ${refusalText(read)}</p>`;
  }

  #preview(name: string, read: Taken) {
    const changes = documentChanges(this.document, this.#result(read));
    const any = changes.some(({ added, changed, removed }) => added.length + changed.length + removed.length > 0);
    const when = read.savedAt && new Date(read.savedAt).toLocaleString(pageLocale(), { dateStyle: 'long', timeStyle: 'short' });
    return html`<p><strong>${name}</strong> ${when ? words.savedAt(when) : nothing}</p>
      <fieldset>
        <legend>${words.how}</legend>
        ${(['merge', 'replace'] as const).map(
          (way) => html`<label class="choice">
            <input type="radio" name="way" .checked=${this.way === way} @change=${() => {
              this.way = way;
            }} />
            <span><strong>${words[way]}</strong><br /><span class="note">${way === 'merge' ? words.mergeNote : words.replaceNote}</span></span>
          </label>`,
        )}
      </fieldset>
      ${any ? this.#table(changes) : html`<p>${words.noChange}</p>`}
      <div class="acts">
        ${any ? html`<button class="solid" @click=${() => this.#take(read)}>${words.doIt[this.way]}</button>` : nothing}
        <button @click=${this.#leave}>${words.leave}</button>
      </div>`;
  }

  #table(changes: readonly SectionChange[]) {
    const { columns } = words;
    const named = (['added', 'changed', 'removed'] as const).map((what) => ({
      what,
      names: changes.flatMap((change) => change[what].map(nameOf)),
    }));
    return html`<div class="table" tabindex="0" role="group" aria-label=${words.previewCaption[this.way]}>
        <table>
          <caption>${words.previewCaption[this.way]}</caption>
          <thead>
            <tr><th scope="col">${columns.what}</th><th scope="col">${columns.added}</th><th scope="col">${columns.changed}</th>
              <th scope="col">${columns.removed}</th><th scope="col">${columns.same}</th></tr>
          </thead>
          <tbody>
            ${changes.map(
              ({ section, added, changed, removed, same }) =>
                html`<tr><th scope="row">${words.section(section)}</th><td>${added.length}</td><td>${changed.length}</td><td>${removed.length}</td><td>${same}</td></tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${named.map(({ what, names }) => (names.length > 0 ? html`<p class="note">${words.names[what]}: ${listed(names)}</p>` : nothing))}`;
  }

  #result({ document }: Taken): KeptDocument {
    return this.way === 'merge' ? mergedDocument(this.document, document) : document;
  }

  readonly #chosen = async (event: Event): Promise<void> => {
    const input = event.currentTarget as HTMLInputElement;
    const [file] = input.files ?? [];
    if (!file) return;
    this.done = undefined;
    this.file = { name: file.name, read: readFileText(await file.text()) };
    input.value = ''; // the same file may be chosen again
  };

  /** Over what is kept at that moment, which may be more than the preview saw. */
  async #take(read: Taken): Promise<void> {
    const { way } = this;
    await this.workbench.kept.change((now) => (way === 'merge' ? mergedDocument(now, read.document) : read.document), { asTheyAre: true });
    this.file = undefined;
    this.done = way;
  }

  readonly #leave = (): void => {
    this.file = undefined;
  };
}

function refusalText(refusal: FileRefusal): string {
  switch (refusal.why) {
    case 'not-json':
      return words.notJson(refusal.detail);
    case 'foreign':
      return words.foreign;
    case 'newer':
      return words.newer(refusal.version);
    case 'fault':
      return words.fault(refusal.path, refusal.detail);
  }
}

const nameOf = (item: object): string => {
  const { name, text, note, item: version } = item as { name?: string; text?: string; note?: string; item?: object };
  if (version) return nameOf(version);
  return name ?? text ?? note ?? words.untitled;
};

const MOST_NAMED = 12;
const listed = (names: readonly string[]): string => {
  const shown = names.slice(0, MOST_NAMED).join(', ');
  return names.length > MOST_NAMED ? `${shown} …` : shown;
};

declare global {
  interface HTMLElementTagNameMap {
    'file-in': FileIn;
  }
}
