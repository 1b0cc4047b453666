/** The validation kit: a session of known weights and plucks that ends in an agreement report and a folder of takes with their truth. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import type { LiveMoment } from '../../../ports.ts';
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
  type SessionTake,
  type SessionTexts,
  sessionTake,
  understoodSession,
} from '../../state/validation-session.ts';
import { faultText } from '../setup-words.ts';
import { reportView, takenView } from './taken-view.ts';
import { validationStyles } from './validation-styles.ts';

const ERRAND = 'validation';

/** Outlives the screen, so that a look at another place loses nothing. */
const session: { texts: SessionTexts; takes: readonly SessionTake[]; count: number; saved: readonly SessionTake[] } = {
  texts: EMPTY_TEXTS,
  takes: [],
  count: 0,
  saved: [],
};

@customElement('validation-screen')
export class ValidationScreen extends LitElement {
  static override styles = [shared, quantityInputStyles, selectFieldStyles, validationStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() texts = session.texts;
  @state() takes = session.takes;
  @state() said = '';
  @state() dropped: { readonly take: SessionTake; readonly at: number } | undefined;
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
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfollow?.();
    window.removeEventListener('beforeunload', this.#unload);
    void this.workbench.effects.endErrand();
  }

  override willUpdate(): void {
    session.texts = this.texts;
    session.takes = this.takes;
  }

  override render() {
    const [plain, heavy] = this.takes.length === 0 ? words.answer.start : words.answer.taken(this.takes.length);
    return html`<main>
      <answer-line><span slot="over">${words.over}</span>${plain}<b>${heavy}</b><span slot="under">${words.lead}</span></answer-line>
      <p class="note">${words.cautions}</p>
      <div class="columns">
        <div>${this.#beltFields()} ${this.#takeFields()}</div>
        <div>
          ${takenView({ takes: this.takes, dropped: this.dropped?.take, format: this.#figures.format, drop: (take) => this.#drop(take), undo: this.#undo })}
          ${this.takes.length > 0 ? reportView(this.takes, this.#figures.format, this.#save) : nothing}
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
                <label class="file">${words.recording}<input type="file" accept="audio/*,.wav,.m4a,.mp3,.flac,.ogg,.opus,.webm" @change=${this.#open} /></label>`
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
    this.texts = { ...this.texts, ...change };
  }

  readonly #listen = () => {
    if (!this.#isTold()) return;
    this.#tap = new SoundTap();
    void this.workbench.effects.listenFor(ERRAND, enteredForSession(this.texts), this.#tap).then(() => {
      if (this.workbench.store.state.notice?.kind === 'capture-failure') this.said = words.failed;
    });
  };

  readonly #open = async (event: Event) => {
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
    session.count += 1;
    const taken = sessionTake({
      name: words.takeName(session.count),
      texts: this.texts,
      told,
      sounds,
      processing: take?.processing,
      recording,
      description: words.description(this.texts.span, this.texts.weight),
    });
    this.dropped = undefined;
    this.takes = [...this.takes, taken];
  };

  #drop(take: SessionTake): void {
    this.dropped = { take, at: this.takes.indexOf(take) };
    this.takes = this.takes.filter((one) => one !== take);
  }

  readonly #undo = () => {
    if (!this.dropped) return;
    this.takes = this.takes.toSpliced(this.dropped.at, 0, this.dropped.take);
    this.dropped = undefined;
  };

  readonly #save = () => {
    saveFile(new Blob([this.workbench.reportFiles.zip(folderFiles(this.takes), new Date())], { type: 'application/zip' }), words.fileName);
    session.saved = this.takes;
  };

  /** Recordings that live in this page alone are asked about before they are gone for good. */
  readonly #unload = (event: BeforeUnloadEvent) => {
    if (this.takes.length > 0 && session.saved !== this.takes) event.preventDefault();
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
