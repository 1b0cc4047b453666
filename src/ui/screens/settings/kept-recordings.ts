/** The sounds that are kept beside takes: whether they are, the room that they take, a way to look at one again, and to drop them. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeptTake } from '../../../../shared/document/take.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import { writeWav } from '../../../core/samples/wav.ts';
import type { KeptRecording } from '../../../ports.ts';
import { settingsEn as words } from '../../../words/settings-en.ts';
import { bytesText, pageLocale } from '../../format.ts';
import { hrefOf } from '../../route.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { joinedClips } from '../../state/joined-clips.ts';
import { placeOn } from '../../state/span-of-machine.ts';
import { settingsStyles } from './settings-styles.ts';

@customElement('kept-recordings')
export class KeptRecordings extends LitElement {
  static override styles = [shared, settingsStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) document!: KeptDocument;
  @state() kept: readonly KeptRecording[] = [];
  @state() unreadable = '';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.refresh();
  }

  async refresh(): Promise<void> {
    this.kept = await this.workbench.recordings.list();
  }

  override render() {
    const { recordings } = this.workbench;
    const bytes = this.kept.reduce((sum, one) => sum + one.bytes, 0);
    return html`<label class="choice">
        <input type="checkbox" .checked=${recordings.isOn} @change=${this.#switch} />
        <span><strong>${words.recordings.keep}</strong><br /><span class="note">${words.recordings.keepNote}</span></span>
      </label>
      <p>${this.kept.length === 0 ? words.recordings.none : words.recordings.some(this.kept.length, bytesText(bytes))}</p>
      ${this.kept.length === 0 ? nothing : this.#list()}`;
  }

  #list() {
    const takes = new Map(this.document.takes.map((take) => [take.id, take]));
    return html`<details>
        <summary>${words.recordings.show}</summary>
        <ul class="recordings">
          ${this.kept.map((one) => {
            const take = takes.get(one.takeId);
            const name = take ? this.#nameOf(take) : words.recordings.gone;
            return html`<li>
              <span><strong>${name}</strong> <span class="note">${words.recordings.size(one.plucks, bytesText(one.bytes))}
                ${one.takeId === this.unreadable ? words.recordings.unreadable : nothing}</span></span>
              ${take ? html`<button aria-label=${words.recordings.againNamed(name)} @click=${() => this.#lookAgain(take)}>${words.recordings.again}</button>` : nothing}
              <button class="quiet" aria-label=${words.recordings.dropNamed(name)} @click=${() => this.#drop(one.takeId)}>${words.recordings.drop}</button>
            </li>`;
          })}
        </ul>
      </details>
      <div class="acts"><button @click=${() => this.#drop()}>${words.recordings.dropAll}</button></div>`;
  }

  #nameOf(take: KeptTake): string {
    const place = placeOn(this.document, take.on);
    const on = place ? words.recordings.on(place.machine.name, place.belt.name) : (take.name ?? take.fileName ?? '');
    return words.recordings.take(on, new Date(take.heard.at).toLocaleString(pageLocale(), { dateStyle: 'medium', timeStyle: 'short' }));
  }

  readonly #switch = (event: Event): void => {
    this.workbench.recordings.setOn((event.currentTarget as HTMLInputElement).checked);
    this.requestUpdate();
  };

  /** The same sound goes through the whole analysis again, under the setup that it was kept with. */
  async #lookAgain(take: KeptTake): Promise<void> {
    const { recordings, store, effects } = this.workbench;
    const recording = joinedClips(await recordings.clips(take.id));
    if (!recording) {
      this.unreadable = take.id;
      return;
    }
    store.dispatch({ kind: 'setup-entered', change: { ...take.entered, on: take.on } });
    location.hash = hrefOf('listen');
    await effects.openRecording(new File([writeWav({ recording, format: 'float32' })], `${this.#nameOf(take)}.wav`, { type: 'audio/wav' }));
  }

  async #drop(takeId?: string): Promise<void> {
    await this.workbench.recordings.drop(takeId);
    await this.refresh();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'kept-recordings': KeptRecordings;
  }
}
