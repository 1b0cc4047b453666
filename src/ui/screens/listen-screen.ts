/** Listen: the span at the side, the Reading with its ruler on the sheet, and below what it rests on. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import { en } from '../../words/en.ts';
import { octaveEn } from '../../words/octave-en.ts';
import { placesEn } from '../../words/places-en.ts';
import { Figures } from '../format.ts';
import { Narrow } from '../narrow.ts';
import '../parts/force-ruler.ts';
import { selectField, selectFieldStyles } from '../parts/select-field.ts';
import { hrefOf } from '../route.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { Selected } from '../state/selected.ts';
import type { AppState } from '../state/state.ts';
import type { RemedyWanted } from './evidence-panel.ts';
import './keep-take.ts';
import './kept-temperature.ts';
import './listen-control.ts';
import { listenScreenStyles } from './listen-screen-styles.ts';
import './reading-panel.ts';
import { readingView } from './reading-view.ts';
import { hasBetterAct } from './remedy-view.ts';
import { rulerView } from './ruler-view.ts';
import './setup-form.ts';
import type { SetupForm } from './setup-form.ts';
import { halfTarget } from './setup-words.ts';
import { spanDrawing } from './span-view.ts';
import './start-panel.ts';
import './told-frequency.ts';
import './two/second-offer.ts';

@customElement('listen-screen')
export class ListenScreen extends LitElement {
  static override styles = [shared, selectFieldStyles, listenScreenStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;

  @query('setup-form') setupForm!: SetupForm;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
  #wasBusy = false;
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  /** Whoever starts something further down the page is shown where its answer will stand. */
  override updated(): void {
    const isBusy = this.#state.value.activity.kind !== 'idle';
    if (isBusy && !this.#wasBusy) window.scrollTo({ top: 0, behavior: 'instant' });
    this.#wasBusy = isBusy;
  }

  /** What a reading rests on is fetched once the page stands: nobody needs it before the first pluck. */
  override firstUpdated(): void {
    void import('./evidence-panel.ts');
    void import('./listen/used-panel.ts');
  }

  override render() {
    const state = this.#state.value;
    const busy = state.activity.kind !== 'idle';
    const hasReading = state.answer.reading !== undefined;
    return html`
      <aside class="rail">
        <div class="setup">
          <setup-form .foldable=${this.#narrow.matches ? busy || hasReading : isSettled(state)}>${this.#narrow.matches ? this.#devices() : nothing}</setup-form>
          ${this.#narrow.matches || busy || state.ownEntered ? nothing : this.#devices()}
        </div>
        <listen-control></listen-control>
      </aside>
      <main class="sheet">
        <h1 class="visually-hidden">${placesEn.names.listen}</h1>
        ${this.#head(hasReading)}
        <div class="lower"><kept-temperature></kept-temperature>
          ${hasReading ? html`<evidence-panel @remedy-wanted=${this.#remedy}></evidence-panel>` : html`<start-panel></start-panel>`}
          ${hasReading ? html`<second-offer></second-offer>` : html`<used-panel></used-panel>`}
          <told-frequency></told-frequency>
        </div>
      </main>
    `;
  }

  #head(hasReading: boolean) {
    const state = this.#state.value;
    const view = readingView(state, this.#figures);
    const { targetLabel, plucks, reading, rival, boundsOnly, label } = rulerView(state, view, this.#figures);
    const ringing = state.activity.kind === 'listening' && state.activity.ear === 'ringing';
    const caption = ringing && hasReading ? en.reading.ringing.join('. ') : view.caption;
    return html`
      <p class="caption ${state.activity.kind === 'idle' && !state.take ? 'bare' : ''}">${caption}</p>
      <div class="reading">
        <reading-panel .view=${view}></reading-panel>
        ${hasReading ? nothing : html`<div class="drawing">${spanDrawing(state.understood, this.#figures, { variant: 'small', ringing })}</div>`}
      </div>
      <div class="actions" ?hidden=${state.answer.plucks.length === 0}>
        ${state.notice ? html`<button class="quiet" @click=${this.#dismiss}>${en.reading.back}</button>` : nothing}
        ${state.deciding ? html`<button class="quiet" @click=${this.#leaveOpen}>${octaveEn.leave}</button>` : nothing}
        <button class="quiet" @click=${this.#undo} title=${en.listen.keyHint('U')} aria-keyshortcuts="U" aria-label=${en.reading.undo}>
          ${this.#narrow.matches ? en.reading.undoShort : en.reading.undo}
        </button>
        <button class="quiet" @click=${this.#startOver}>${en.reading.startOver}</button>
        ${this.#narrow.matches ? nothing : html`<a class="button quiet" href=${hrefOf('listen', 'far')} title=${en.listen.keyHint('F')} aria-keyshortcuts="F">${placesEn.far.open}</a>`}
        <keep-take .short=${this.#narrow.matches} .solid=${!hasBetterAct(state)}></keep-take>
      </div>
      <force-ruler
        class="ruler"
        .target=${state.understood.setup.targetForceN}
        .targetLabel=${targetLabel}
        .targetShortLabel=${en.ruler.targetShort}
        .plucks=${plucks}
        .reading=${reading}
        .rival=${rival}
        .boundsOnly=${boundsOnly}
        .held=${ringing}
        .hint=${en.ruler.hint}
        .label=${label}
        .locale=${this.#figures.locale}
      ></force-ruler>
    `;
  }

  #devices() {
    const { devices, deviceId } = this.#state.value;
    const choices = [
      { value: '', text: en.listen.systemChoice },
      ...devices
        .filter(({ id }) => id !== '' && id !== 'default')
        .map(({ id, label }, index) => ({ value: id, text: label || en.listen.unnamedDevice(index + 1) })),
    ];
    return html`<div class="microphone" slot="microphone">
      <label class="label" for="microphone">${en.listen.microphone}</label>
      ${selectField({ id: 'microphone', value: deviceId ?? '', choices, onChosen: this.#chooseDevice })}
    </div>`;
  }

  readonly #remedy = ({ act }: RemedyWanted) => this.setupForm.take(act);
  readonly #chooseDevice = (id: string) => this.workbench.store.dispatch({ kind: 'device-chosen', deviceId: id === '' ? undefined : id });
  readonly #undo = () => this.workbench.store.dispatch({ kind: 'pluck-undone' });
  readonly #leaveOpen = () => this.workbench.store.dispatch({ kind: 'deciding-dropped' });
  readonly #startOver = () => this.workbench.store.dispatch({ kind: 'started-over' });
  readonly #dismiss = () => this.workbench.store.dispatch({ kind: 'notice-dismissed' });
}

/** The setup has given a force and asks for nothing more. */
const isSettled = ({ answer, entered, understood }: AppState): boolean =>
  answer.reading?.forceN !== undefined && Object.keys(understood.faults).length === 0 && !halfTarget(entered);

declare global {
  interface HTMLElementTagNameMap {
    'listen-screen': ListenScreen;
  }
}
