/** The validation kit: a session of known weights and plucks that ends in an agreement report and a folder of takes with their truth. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import type { KeptSession, LiveMoment, SessionTake, SessionTexts } from '../../../ports.ts';
import { en } from '../../../words/en.ts';
import { validationEn as words } from '../../../words/validation-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/answer-line.ts';
import '../../parts/level-meter.ts';
import type { LevelMeter } from '../../parts/level-meter.ts';
import { quantityInput, quantityInputStyles } from '../../parts/quantity-input.ts';
import { selectField, selectFieldStyles } from '../../parts/select-field.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { saveFile } from '../../state/save-document.ts';
import { Selected } from '../../state/selected.ts';
import { SoundTap } from '../../state/sound-tap.ts';
import {
  EMPTY_TEXTS,
  enteredForSession,
  folderFiles,
  nextStep,
  type SessionField,
  sessionTake,
  understoodSession,
} from '../../state/validation-session.ts';
import { faultText } from '../setup-words.ts';
import { reportView, takenView } from './taken-view.ts';
import { validationStyles } from './validation-styles.ts';

const ERRAND = 'validation';

/** Outlives the screen, so that a look at another place loses nothing. */
const session: { now: KeptSession; saved: readonly SessionTake[]; isOpen: boolean; isKept: boolean | undefined } = {
  now: { texts: EMPTY_TEXTS, takes: [], count: 0 },
  saved: [],
  isOpen: false,
  isKept: true,
};

@customElement('validation-screen')
export class ValidationScreen extends LitElement {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, validationStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() session = session.now;
  @state() isKept = session.isKept;
  @state() said = '';
  /** What stood before takes were dropped, and what to say of it. */
  @state() dropped: { readonly before: KeptSession; readonly said: string } | undefined;
  @query('level-meter') meter!: LevelMeter | null;

  readonly #figures = new Figures();
  #tap: SoundTap | undefined;
  #unfollow: (() => void) | undefined;
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override connectedCallback(): void {
    super.connectedCallback();
    this.#unfollow = this.workbench.live.follow((moment) => this.#show(moment));
    window.addEventListener('beforeunload', this.#unload);
    void this.#open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfollow?.();
    window.removeEventListener('beforeunload', this.#unload);
    void this.workbench.effects.endErrand();
  }

  /** The session that was left, where this page has none yet. */
  async #open(): Promise<void> {
    if (session.isOpen) return;
    const last = await this.workbench.sessions.last();
    session.isOpen = true;
    if (last && this.session.takes.length === 0) this.#change({ ...last, texts: this.texts === EMPTY_TEXTS ? last.texts : this.texts });
  }

  get texts(): SessionTexts {
    return this.session.texts;
  }

  get takes(): readonly SessionTake[] {
    return this.session.takes;
  }

  #change(change: Partial<KeptSession>): void {
    this.session = { ...this.session, ...change };
    session.now = this.session;
    if (!session.isOpen) return;
    if (change.takes) this.#setKept(undefined);
    const kept = this.session;
    void this.workbench.sessions.keep(kept).then((isKept) => {
      if (session.now === kept) this.#setKept(isKept);
    });
  }

  /** Undefined while it is being written. */
  #setKept(isKept: boolean | undefined): void {
    session.isKept = isKept;
    this.isKept = isKept;
  }

  override render() {
    const [plain, heavy] = this.takes.length === 0 ? words.answer.start : words.answer.taken(this.takes.length);
    return html`<main>
      <answer-line><span slot="over">${words.over}</span>${plain}<b>${heavy}</b><span slot="under">${words.lead}</span></answer-line>
      <p class="note">${words.cautions}</p>
      <div class="columns">
        <div>${this.#beltFields()} ${this.#takeFields()}</div>
        <div>
          ${takenView({ takes: this.takes, dropped: this.dropped?.said ?? '', format: this.#figures.format, drop: (take) => this.#drop(take), undo: this.#undo })}
          ${this.takes.length > 0 ? reportView({ takes: this.takes, isKept: this.isKept, format: this.#figures.format, save: this.#save, beginAnew: this.#beginAnew }) : nothing}
        </div>
      </div>
    </main>`;
  }

  #beltFields() {
    const { densityFrom, ends } = this.texts;
    const endChoices = Object.entries(words.endKinds).map(([value, text]) => ({ value, text }));
    const setEnd = (at: 0 | 1) => (value: string) => this.#type({ ends: ends.with(at, value as never) as unknown as SessionTexts['ends'] });
    return html`<section>
      <h2>${words.belt}</h2>
      ${this.#field('density', words.density, 'g/m', words.densityNote)}
      <div class="row"><label for="from">${words.densityFrom}</label>
        ${selectField({ id: 'from', value: densityFrom, choices: Object.entries(words.densityFroms).map(([value, text]) => ({ value, text })), onChosen: (value) => this.#type({ densityFrom: value as SessionTexts['densityFrom'] }) })}</div>
      <div class="pair">
        <div class="row"><label for="one">${words.ends.first}</label>${selectField({ id: 'one', value: ends[0], choices: endChoices, onChosen: setEnd(0) })}</div>
        <div class="row"><label for="other">${words.ends.second}</label>${selectField({ id: 'other', value: ends[1], choices: endChoices, onChosen: setEnd(1) })}</div>
      </div>
    </section>`;
  }

  #takeFields() {
    const { activity, answer, errand } = this.#state.value;
    const isOurs = errand?.owner === ERRAND;
    const isListening = isOurs && (activity.kind === 'listening' || activity.kind === 'asking');
    return html`<section>
      <h2>${words.take}</h2>
      <p>${words.steps[nextStep(this.takes)]}</p>
      <div class="pair">${this.#field('span', words.span, 'mm')} ${this.#field('spanKnownTo', words.spanKnownTo, 'mm')}</div>
      ${this.#field('weight', words.weight, 'g', words.weightNote)}
      ${
        isListening
          ? html`<level-meter .label=${en.listen.level} .valueText=${en.listen.silence} .clipsLabel=${en.listen.clips} .locale=${this.#figures.locale}></level-meter>
              <p>${words.hearing}</p>`
          : nothing
      }
      <p role="status">${isListening ? words.heard(answer.plucks.length) : this.said}</p>
      <div class="acts">
        ${
          isListening
            ? html`<button class="solid" @click=${this.#finish}>${words.stop}</button>
                <button @click=${() => void this.workbench.effects.endErrand()}>${words.leave}</button>`
            : html`<button class="solid" @click=${this.#listen}>${words.listen}</button>
                <label class="file">${words.recording}<input type="file" accept="audio/*,.wav,.m4a,.mp3,.flac,.ogg,.opus,.webm" @change=${this.#openFile} /></label>`
        }
      </div>
    </section>`;
  }

  #field(field: SessionField, label: string, unit: string, note = '') {
    const fault = faultText(understoodSession(this.texts).faults[field]);
    return html`<div class="row">
      <label for=${field}>${label}</label>
      ${quantityInput({
        id: field,
        value: this.texts[field],
        unit,
        unreadable: fault !== '',
        describedBy: `${field}-note`,
        onTyped: (text) => this.#type({ [field]: text }),
      })}
      <p class="note" id="${field}-note">${fault || note}</p>
    </div>`;
  }

  #type(change: Partial<SessionTexts>): void {
    this.#change({ texts: { ...this.texts, ...change } });
  }

  readonly #listen = () => {
    if (!this.#isTold()) return;
    this.#tap = new SoundTap();
    void this.workbench.effects.listenFor(ERRAND, enteredForSession(this.texts), this.#tap).then(() => {
      if (this.workbench.store.state.notice?.kind === 'capture-failure') this.said = words.failed;
    });
  };

  readonly #openFile = async (event: Event) => {
    const input = event.currentTarget as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (!file || !this.#isTold()) return;
    this.#tap = new SoundTap();
    await this.workbench.effects.openRecordingFor(ERRAND, enteredForSession(this.texts), file, this.#tap);
    await this.#finish();
  };

  #isTold(): boolean {
    const isTold = understoodSession(this.texts).told !== undefined;
    this.said = isTold ? '' : words.missing;
    return isTold;
  }

  readonly #finish = async () => {
    await this.workbench.effects.stop(); // a pluck that still rings counts too
    const { take, notice } = this.workbench.store.state;
    const { told } = understoodSession(this.texts);
    const recording = this.#tap?.recording;
    const sounds = take?.plucks.map(({ sound }) => sound) ?? [];
    await this.workbench.effects.endErrand();
    if (!told || !recording || sounds.length === 0) {
      this.said = notice ? words.failed : words.nothing;
      return;
    }
    const count = this.session.count + 1;
    const taken = sessionTake({
      name: words.takeName(count),
      texts: this.texts,
      told,
      sounds,
      processing: take?.processing,
      recording,
      description: words.description(this.texts.span, this.texts.weight),
    });
    this.dropped = undefined;
    this.#change({ count, takes: [...this.takes, taken] });
  };

  #drop(take: SessionTake): void {
    this.dropped = { before: this.session, said: words.dropped(take.name) };
    this.#change({ takes: this.takes.filter((one) => one !== take) });
  }

  readonly #beginAnew = () => {
    this.dropped = { before: this.session, said: words.allDropped };
    this.#change({ takes: [], count: 0 });
  };

  readonly #undo = () => {
    if (!this.dropped) return;
    const { takes, count } = this.dropped.before;
    this.dropped = undefined;
    this.#change({ takes, count });
  };

  readonly #save = () => {
    saveFile(new Blob([this.workbench.reportFiles.zip(folderFiles(this.takes), new Date())], { type: 'application/zip' }), words.fileName);
    session.saved = this.takes;
  };

  /** Recordings that this browser does not keep are asked about before they are gone for good. */
  readonly #unload = (event: BeforeUnloadEvent) => {
    if (!session.isKept && this.takes.length > 0 && session.saved !== this.takes) event.preventDefault();
  };

  #show(moment: LiveMoment | undefined): void {
    if (moment) this.meter?.showLevel(moment.peakDbfs, moment.roomDbfs, moment.clipped);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'validation-screen': ValidationScreen;
  }
}
