/** Listen and Stop, with the level of the sound, the plucks taken, and what the browser really granted. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import type { LiveMoment } from '../../ports.ts';
import { en } from '../../words/en.ts';
import { Figures } from '../format.ts';
import { Narrow } from '../narrow.ts';
import '../parts/level-meter.ts';
import type { LevelMeter } from '../parts/level-meter.ts';
import { shared } from '../shared-styles.ts';
import { type Workbench, workbenchContext } from '../state/context.ts';
import { isKeptAsItIs, keepable } from '../state/keep-take.ts';
import { Selected } from '../state/selected.ts';
import type { Activity, AppState } from '../state/state.ts';
import { listenControlStyles } from './listen-control-styles.ts';
import { hasBetterAct } from './remedy-view.ts';

const words = en.listen;
type Listening = Extract<Activity, { kind: 'listening' }>;

/** The main action is then to keep what was heard. */
const canStillKeep = (state: AppState): boolean => keepable(state) && !isKeptAsItIs(state);

@customElement('listen-control')
export class ListenControl extends LitElement {
  static override styles = [shared, listenControlStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @query('level-meter') meter!: LevelMeter | null;

  readonly #figures = new Figures();
  readonly #narrow = new Narrow(this);
  #unfollow: (() => void) | undefined;
  readonly #activity = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.activity,
  );
  readonly #pluckCount = new Selected(
    this,
    () => this.workbench.store,
    (state) => state.answer.plucks.length,
  );

  readonly #hasBetter = new Selected(
    this,
    () => this.workbench.store,
    (state) => hasBetterAct(state) || canStillKeep(state),
  );

  override connectedCallback(): void {
    super.connectedCallback();
    this.#unfollow = this.workbench.live.follow((moment) => this.#show(moment));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unfollow?.();
  }

  override willUpdate(): void {
    this.toggleAttribute('listening', this.#activity.value.kind === 'listening');
  }

  override render() {
    const activity = this.#activity.value;
    switch (activity.kind) {
      case 'listening':
        return this.#listening(activity);
      case 'asking':
        return html`<div class="state"><strong>${words.askingLine}</strong></div>
          <button @click=${this.#stop}>${words.notNow}</button>
          <p class="note below">${words.explanation}</p>`;
      case 'opening':
        return html`<div class="state"><strong>${words.opening}</strong></div>
          <button @click=${this.#stop} title=${words.keyHint('L')} aria-keyshortcuts="L">${words.stop}</button>
          <p class="note below">${activity.fileName}</p>`;
      default:
        return html`<p class="note cautions">
            ${words.firstCautions} <button class="quiet" @click=${this.#cautions}>${words.allCautions}</button>
            ${this.#pluckCount.value === 0 ? html`<span class="short">${words.explanationShort}</span>` : nothing}
          </p>
          <button class=${this.#hasBetter.value ? '' : 'solid'} @click=${() => this.workbench.effects.listen()} title=${words.keyHint('L')} aria-keyshortcuts="L">
            ${words.listen}
          </button>
          <p class="note below">${words.explanation}</p>`;
    }
  }

  #listening(activity: Listening) {
    const heading = activity.source === 'demo' ? words.demoPlaying : activity.ear === 'waiting' ? words.hearingRoom : words.listening;
    return html`<div>
        <div class="state"><strong>${heading}</strong><span>${words.taken(this.#pluckCount.value)}</span></div>
        <level-meter
          .label=${words.level}
          .valueText=${words.silence}
          .clipsLabel=${words.clips}
          .compact=${this.#narrow.matches}
          .locale=${this.#figures.locale}
        ></level-meter>
      </div>
      <button @click=${this.#stop} title=${words.keyHint('L')} aria-keyshortcuts="L">${words.stop}</button>
      <p class="note below">${this.#granted(activity)}</p>`;
  }

  /** What stands between the air and the samples, as far as the browser tells. */
  #granted({ source, device, processing }: Listening) {
    if (source === 'demo') return nothing;
    const rateHz = this.workbench.store.state.take?.sampleRateHz ?? 0;
    const rate = this.#figures.typed(rateHz / 1000, 'kHz');
    return words.granted[processing ?? 'unknown'](device?.label || words.thisDevice, rate);
  }

  #show(moment: LiveMoment | undefined): void {
    const { meter } = this;
    if (!meter || !moment) return;
    meter.showLevel(moment.peakDbfs, moment.roomDbfs, moment.clipped);
    const level = this.#decibels(moment.peakDbfs);
    meter.valueText = level === undefined ? words.silence : words.levelText(level, this.#decibels(moment.roomDbfs));
  }

  /** Digital silence has no level. */
  #decibels(levelDbfs: number | undefined): string | undefined {
    return levelDbfs !== undefined && Number.isFinite(levelDbfs) ? this.#figures.whole(levelDbfs) : undefined;
  }

  readonly #stop = () => void this.workbench.effects.stop();

  readonly #cautions = () => this.dispatchEvent(new Event('cautions-wanted', { bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementTagNameMap {
    'listen-control': ListenControl;
  }
}
