/** Settings: what is kept in this browser, the file of it out and in, the space that it takes, and a way to remove it all. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { isAlive } from '../../../../shared/document/common.ts';
import { EMPTY_DOCUMENT, type KeptDocument, SECTION_NAMES } from '../../../../shared/document.ts';
import type { KeepingSpace } from '../../../ports.ts';
import { keepingEn } from '../../../words/keeping-en.ts';
import { PROGRAM_VERSION } from '../../../words/program.ts';
import { settingsEn as words } from '../../../words/settings-en.ts';
import { dialogStyles } from '../../dialog-styles.ts';
import { bytesText } from '../../format.ts';
import '../../parts/answer-line.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { KeptPart } from '../../state/kept-part.ts';
import { saveDocument } from '../../state/save-document.ts';
import '../rivals/rival-list.ts';
import './file-in.ts';
import './kept-recordings.ts';
import type { KeptRecordings } from './kept-recordings.ts';
import { settingsStyles } from './settings-styles.ts';

@customElement('settings-screen')
export class SettingsScreen extends LitElement {
  static override styles = [shared, dialogStyles, settingsStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() space: KeepingSpace | undefined;
  @state() refusedToPersist = false;
  @state() wiped = false;
  @query('dialog') dialog!: HTMLDialogElement;
  @query('kept-recordings') recordings!: KeptRecordings | null;
  readonly #kept = new KeptPart(
    this,
    () => this.workbench.kept,
    ({ document }) => document,
  );

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#measure();
    this.workbench.updates.addEventListener('change', this.#changed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.workbench.updates.removeEventListener('change', this.#changed);
  }

  override render() {
    const document = this.#kept.value;
    return html`<main class="settings">
      <answer-line>
        <span slot="over">${words.over}</span>${words.answer[0]}<b>${words.answer[1]}</b>
        <span slot="under">${holds(document)}</span>
      </answer-line>
      <rival-list></rival-list>
      <section aria-labelledby="file">
        <h2 id="file">${words.file}</h2>
        <p>${words.fileNote}</p>
        <file-in .document=${document}><button @click=${() => saveDocument(document)}>${words.save}</button></file-in>
      </section>
      <section class="block" aria-labelledby="sounds">
        <h2 id="sounds">${words.sounds}</h2>
        <label class="cue"><input type="checkbox" .checked=${this.workbench.cue.isOn} @change=${this.#cue} />${words.cue}</label>
        <p class="note">${words.cueNote}</p>
      </section>
      <section class="block" aria-labelledby="space">
        <h2 id="space">${words.space}</h2>
        ${this.#space()} ${this.#damaged()}
      </section>
      <section class="block" aria-labelledby="recordings">
        <h2 id="recordings">${words.recordings.title}</h2>
        <kept-recordings .document=${document}></kept-recordings>
      </section>
      <section class="block" aria-labelledby="offline">
        <h2 id="offline">${words.offline}</h2>
        <p>${words.program(PROGRAM_VERSION)} ${words.offlineState[this.workbench.updates.state]}</p>
        ${this.workbench.updates.state === 'newer-waits' ? html`<div class="acts"><button @click=${() => this.workbench.updates.use()}>${keepingEn.useNewer}</button></div>` : nothing}
      </section>
      <section class="block">
        ${this.wiped ? html`<p role="status">${words.wiped}</p>` : nothing}
        <button @click=${() => this.dialog.showModal()}>${words.wipe}</button>
      </section>
      <dialog aria-labelledby="wipe">
        <h2 id="wipe">${words.wipeTitle}</h2>
        <p>${words.wipeLead}</p>
        <div class="acts">
          <button @click=${() => saveDocument(document)}>${words.save}</button>
          <button @click=${this.#wipe}>${words.wipeDo}</button>
          <button class="solid" @click=${() => this.dialog.close()}>${words.wipeLeave}</button>
        </div>
      </dialog>
    </main>`;
  }

  #space() {
    const { space } = this;
    if (!space) return nothing;
    const { usedBytes, quotaBytes, isPersistent } = space;
    const used =
      usedBytes === undefined || quotaBytes === undefined ? words.usedUnknown : words.used(bytesText(usedBytes), bytesText(quotaBytes));
    return html`<p>${used} ${isPersistent ? words.persistent : words.notPersistent}</p>
      ${isPersistent ? nothing : html`<div class="acts"><button @click=${this.#persist}>${words.ask}</button></div>`}
      ${this.refusedToPersist ? html`<p class="note" role="status">${words.askedNo}</p>` : nothing}`;
  }

  #damaged() {
    const { damaged } = this.workbench.kept.keeping;
    if (damaged.length === 0) return nothing;
    return html`<p>${words.damaged(damaged.length)}</p>
      <ul>${damaged.map(({ section, id, path }) => html`<li>${words.damagedItem(section, id, path)}</li>`)}</ul>`;
  }

  async #measure(): Promise<void> {
    this.space = await this.workbench.kept.archive.space();
  }

  readonly #changed = (): void => this.requestUpdate();

  readonly #cue = ({ target }: Event): void => this.workbench.cue.turn((target as HTMLInputElement).checked);

  readonly #persist = async (): Promise<void> => {
    this.refusedToPersist = !(await this.workbench.kept.archive.askToPersist());
    await this.#measure();
  };

  readonly #wipe = async (): Promise<void> => {
    this.dialog.close();
    await this.workbench.recordings.drop();
    await this.recordings?.refresh();
    const sessionGone = await this.workbench.sessions.forget();
    this.wiped = (await this.workbench.kept.change(() => EMPTY_DOCUMENT, { asTheyAre: true })) && sessionGone;
    if (this.wiped) this.workbench.effects.forgetSetup();
    await this.#measure();
  };
}

function holds(document: KeptDocument): string {
  const parts = SECTION_NAMES.map((name) => ({
    name,
    count: document[name].filter((item) => isAlive(item as { deletedAt?: string })).length,
  }))
    .filter(({ count }) => count > 0)
    .map(({ name, count }) => words.count(name, count));
  return parts.length === 0 ? words.nothing : words.holds(parts);
}

declare global {
  interface HTMLElementTagNameMap {
    'settings-screen': SettingsScreen;
  }
}
