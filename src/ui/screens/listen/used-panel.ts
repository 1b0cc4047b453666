/** 'What was used': each sound of the take, to be heard again, seen and taken along, so that anyone can check a reading or a refusal. */

import { consume } from '@lit/context';
import { html, LitElement, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Inspection } from '../../../core/inspection/inspect.ts';
import type { SoundClip } from '../../../ports.ts';
import { usedEn } from '../../../words/used-en.ts';
import { Figures } from '../../format.ts';
import '../../parts/decay-plot.ts';
import '../../parts/spectrogram-plot.ts';
import { shared } from '../../shared-styles.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { saveFile } from '../../state/save-document.ts';
import { Selected } from '../../state/selected.ts';
import { usedPanelStyles } from './used-panel-styles.ts';
import {
  decayLines,
  followedPartials,
  residualSentence,
  roomDbfs,
  tonesLeftOut,
  type UsedSound,
  usedSentence,
  usedSounds,
  usedTable,
} from './used-view.ts';

@customElement('used-panel')
export class UsedPanel extends LitElement {
  static override styles = [shared, usedPanelStyles];

  @consume({ context: workbenchContext }) workbench!: Workbench;
  @state() isOpen = false;
  @state() chosen = '';
  @state() playing: AbortController | undefined;
  @state() broken: SoundClip | undefined;

  readonly #figures = new Figures();
  /** What was laid open already, by its sound and by how that was read. */
  readonly #inspections = new WeakMap<object, Inspection>();
  #asked: { readonly of: object; readonly aborting: AbortController } | undefined;
  readonly #state = new Selected(
    this,
    () => this.workbench.store,
    (state) => state,
  );

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.playing?.abort();
    this.#asked?.aborting.abort();
  }

  override render() {
    const sounds = usedSounds(this.#state.value, this.#figures);
    if (sounds.length === 0) return nothing;
    return html`<details ?open=${this.isOpen} @toggle=${this.#toggled}>
      <summary>${usedEn.title}</summary>
      ${this.isOpen ? this.#body(sounds) : nothing}
    </details>`;
  }

  #body(sounds: readonly UsedSound[]) {
    const used = sounds.find(({ id }) => id === this.chosen) ?? this.#latest(sounds);
    return html`${this.#choice(sounds, used)} ${used.clip ? this.#sound(used, used.clip) : html`<p class="note">${usedEn.soundGone}</p>`}`;
  }

  /** The last pluck; where there is none, what was left aside last. */
  #latest(sounds: readonly UsedSound[]): UsedSound {
    return sounds.findLast(({ pluck }) => pluck) ?? sounds.at(-1)!;
  }

  #choice(sounds: readonly UsedSound[], used: UsedSound) {
    return html`<div class="choice" role="radiogroup" aria-label=${usedEn.choose}>
      ${sounds.map(
        ({ id, name }) =>
          html`<label><input type="radio" name="sound" .checked=${id === used.id} @change=${() => this.#choose(id)} />${name}</label>`,
      )}
    </div>`;
  }

  #sound(used: UsedSound, clip: SoundClip) {
    const inspection = this.#inspectionOf(used, clip);
    return html`<div class="acts">${this.#player(clip)}
        <button class="quiet" @click=${() => this.#saveSound(used, clip)}>${usedEn.saveSound}</button>
        ${used.pluck ? html`<button class="quiet" @click=${() => this.#saveFigures(used, clip)}>${usedEn.saveFigures}</button>` : nothing}
      </div>
      ${inspection ? this.#laidOpen(used, inspection) : this.#waiting(clip)}`;
  }

  #player(clip: SoundClip) {
    if (this.playing) return html`<button @click=${this.#stop}>${usedEn.stop}</button>`;
    const isListening = this.#state.value.activity.kind !== 'idle';
    return html`<button ?disabled=${isListening} @click=${() => this.#play(clip)}>${usedEn.play}</button>
      ${isListening ? html`<span class="note">${usedEn.playingWhileListening}</span>` : nothing}`;
  }

  #waiting(clip: SoundClip) {
    return this.broken === clip
      ? html`<p class="note">${usedEn.broken} <button class="quiet" @click=${this.#again}>${usedEn.again}</button></p>`
      : html`<p class="note" aria-busy="true">${usedEn.looking}</p>`;
  }

  #laidOpen(used: UsedSound, inspection: Inspection) {
    const figures = this.#figures;
    const { fit, spectrogram, untilS } = inspection;
    const partials = followedPartials(inspection, figures);
    const residual = residualSentence(inspection, figures);
    const words = usedEn.plot;
    return html`<p class="sentence">${usedSentence(inspection, used.refusal, figures)} ${residual}</p>
      <h3>${words.title}</h3>
      <spectrogram-plot
        .picture=${spectrogram}
        .window=${fit}
        .partials=${partials}
        .leftOut=${tonesLeftOut(used)}
        .windowLabel=${words.window}
        .letGoLabel=${words.letGo}
        .label=${words.label(partials.map(({ label }) => label).join(', '))}
        .table=${fit ? usedTable(inspection, figures) : undefined}
        .locale=${figures.locale}
      ></spectrogram-plot>
      ${
        fit
          ? html`<h3>${usedEn.decay.title}</h3>
            <decay-plot
              .lines=${decayLines(inspection)}
              .residual=${fit.residual}
              .roomDbfs=${roomDbfs(inspection)}
              .untilS=${Math.min(untilS, fit.toS)}
              .residualLabel=${usedEn.decay.residual}
              .roomLabel=${usedEn.decay.room}
              .label=${usedEn.decay.label(residual)}
              .locale=${figures.locale}
            ></decay-plot>
            <p class="note">${usedEn.decay.note}</p>`
          : nothing
      }`;
  }

  /** What is known of a sound; asks for it where nothing is. A numbering that was settled since is laid open anew. */
  #inspectionOf(used: UsedSound, clip: SoundClip): Inspection | undefined {
    const of = used.sound ?? clip;
    const known = this.#inspections.get(of);
    if (known || this.#asked?.of === of || this.broken === clip) return known;
    this.#asked?.aborting.abort();
    const aborting = new AbortController();
    this.#asked = { of, aborting };
    const { samples, sampleRateHz } = clip;
    const inspected = { samples, sampleRateHz, touchS: used.touchS, sound: used.sound, steadyHz: used.heard?.spectrum.steadyHz ?? [] };
    void this.workbench.effects.inspect(inspected, aborting.signal).then(
      (inspection) => {
        this.#inspections.set(of, inspection);
        this.requestUpdate();
      },
      () => {
        if (!aborting.signal.aborted) this.broken = clip;
      },
    );
    return undefined;
  }

  readonly #toggled = (event: Event) => {
    this.isOpen = (event.currentTarget as HTMLDetailsElement).open;
  };

  readonly #again = () => {
    this.#asked = undefined;
    this.broken = undefined;
  };

  readonly #stop = () => this.playing?.abort();

  #choose(id: string): void {
    this.playing?.abort();
    this.chosen = id;
  }

  async #play(clip: SoundClip): Promise<void> {
    const playing = new AbortController();
    this.playing = playing;
    await this.workbench.effects.play(clip, playing.signal).catch(() => {});
    if (this.playing === playing) this.playing = undefined;
  }

  #saveSound({ id }: UsedSound, clip: SoundClip): void {
    saveFile(this.workbench.effects.pluckFiles.wav(clip), `${usedEn.fileName(id)}.wav`);
  }

  #saveFigures({ id, pluck, heard }: UsedSound, clip: SoundClip): void {
    const { setup } = this.#state.value.understood;
    const name = usedEn.fileName(id);
    const steadyHz = heard?.spectrum.steadyHz ?? [];
    saveFile(this.workbench.effects.pluckFiles.json({ clip, pluck: pluck!, setup, steadyHz, wavName: `${name}.wav` }), `${name}.json`);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'used-panel': UsedPanel;
  }
}
