/** Listening for one place of the bench: the real chain with this span's own setup, and the partials as they come. */

import { consume } from '@lit/context';
import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { type HeardTake, heardTake } from '../../../core/belt/heard-take.ts';
import type { EnteredSetup, LiveMoment } from '../../../ports.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { en } from '../../../words/en.ts';
import { reasonSentence } from '../../../words/reasons-en.ts';
import { dialogStyles } from '../../dialog-styles.ts';
import { Figures } from '../../format.ts';
import '../../parts/level-meter.ts';
import type { LevelMeter } from '../../parts/level-meter.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { Selected } from '../../state/selected.ts';
import { readingView } from '../reading-view.ts';
import type { TakePlace } from './bench-fields.ts';

const words = beltsEn.bench.listening;
const BENCH_ERRAND = 'belts';

/** Plucks of one place were taken. */
export class TakeHeard extends Event {
  readonly place: TakePlace;
  readonly heard: HeardTake;

  constructor(place: TakePlace, heard: HeardTake) {
    super('take-heard', { bubbles: true, composed: true });
    this.place = place;
    this.heard = heard;
  }
}

@customElement('bench-listen')
export class BenchListen extends LitElement {
  static override styles = [
    shared,
    dialogStyles,
    css`
      dialog > * + * {
        margin-block-start: var(--space-12);
      }
      .partials {
        font-size: var(--title-size);
        line-height: var(--title-line);
        min-block-size: var(--title-line);
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-12);
      }
      .file {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-8) var(--space-16);
      }
      .file input {
        min-block-size: var(--target-size);
        align-content: center;
      }
      ul {
        padding-inline-start: var(--space-16);
      }
    `,
  ];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) place: TakePlace | undefined;
  @query('dialog') dialog!: HTMLDialogElement;
  @query('level-meter') meter!: LevelMeter | null;

  #entered: EnteredSetup | undefined;
  #unfollow: (() => void) | undefined;
  readonly #figures = new Figures();
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  /** @param entered  what is known of the span, for the search */
  show(place: TakePlace, entered: EnteredSetup): void {
    this.place = place;
    this.#entered = entered;
    void this.updateComplete.then(() => this.dialog.showModal());
    this.#listen();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#unfollow = this.workbench.live.follow((moment) => this.#show(moment));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfollow?.();
    void this.workbench.effects.endErrand();
  }

  override render() {
    return html`<dialog aria-labelledby="title" @close=${this.#closed}>${this.place ? this.#content(this.place) : nothing}</dialog>`;
  }

  #content(place: TakePlace) {
    const { activity, answer, errand } = this.#state.value;
    const isOurs = errand?.owner === BENCH_ERRAND;
    const heard = isOurs ? heardTake(usedSounds(answer)) : undefined;
    const view = readingView(this.#state.value, this.#figures);
    const sentence = isOurs && view.large.kind === 'sentence' ? view : undefined;
    const isListening = isOurs && (activity.kind === 'listening' || activity.kind === 'asking');
    return html`<h2 id="title">${words.title(place.name)}</h2>
      <p>${words.lead}</p>
      ${isListening ? html`<level-meter .label=${en.listen.level} .valueText=${en.listen.silence} .clipsLabel=${en.listen.clips} .locale=${this.#figures.locale}></level-meter>` : nothing}
      <div role="status">
        <p class="partials">${heard ? words.found(this.#partials(heard)) : sentence?.large.kind === 'sentence' ? sentence.large.text : words.nothing}</p>
        ${sentence ? html`<p>${sentence.lead}</p>` : nothing}
        ${heard ? html`<p class="note">${beltsEn.bench.heard(heard.pluckCount)}</p>` : nothing}
        ${heard ? this.#doubts() : nothing}
      </div>
      <div class="buttons">
        <button class="solid" ?disabled=${heard === undefined} @click=${() => this.#take(place, heard)}>${words.use}</button>
        ${isListening ? html`<button @click=${() => this.workbench.effects.stop()}>${en.listen.stop}</button>` : html`<button @click=${() => this.#listen()}>${en.listen.listen}</button>`}
        <button @click=${() => this.dialog.close()}>${words.leave}</button>
      </div>
      <div class="file">
        <label for="file">${words.recording}</label>
        <input id="file" type="file" accept="audio/*,.wav,.m4a,.mp3,.flac,.ogg,.opus,.webm" @change=${this.#open} />
      </div>`;
  }

  #partials({ partials }: HeardTake): string {
    return partials.map(({ frequencyHz }) => this.#figures.typed(Number(frequencyHz.value.toPrecision(4)), 'Hz')).join(', ');
  }

  /** What speaks against the sound; what speaks against the inputs is the bench's own business. */
  #doubts() {
    const reasons = this.#state.value.answer.reading?.reasons.filter(({ about }) => about === 'sound') ?? [];
    if (reasons.length === 0) return nothing;
    return html`<ul>${reasons.map((reason) => html`<li class="note">${reasonSentence(reason, this.#figures.format)}</li>`)}</ul>`;
  }

  #listen(): void {
    if (this.#entered) void this.workbench.effects.listenFor(BENCH_ERRAND, this.#entered);
  }

  #show(moment: LiveMoment | undefined): void {
    if (moment) this.meter?.showLevel(moment.peakDbfs, moment.roomDbfs, moment.clipped);
  }

  readonly #open = async (event: Event) => {
    const input = event.currentTarget as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file && this.#entered) await this.workbench.effects.openRecordingFor(BENCH_ERRAND, this.#entered, file);
  };

  async #take(place: TakePlace, heard: HeardTake | undefined): Promise<void> {
    if (!heard) return;
    await this.workbench.effects.stop(); // a pluck that still rings counts too
    this.dispatchEvent(new TakeHeard(place, heardTake(usedSounds(this.workbench.store.state.answer)) ?? heard));
    this.dialog.close();
  }

  readonly #closed = () => {
    this.place = undefined;
    void this.workbench.effects.endErrand();
  };
}

const usedSounds = ({
  plucks,
}: {
  readonly plucks: readonly { readonly used: boolean; readonly sound: Parameters<typeof heardTake>[0][number] }[];
}) => plucks.filter(({ used }) => used).map(({ sound }) => sound);

declare global {
  interface HTMLElementTagNameMap {
    'bench-listen': BenchListen;
  }
}
