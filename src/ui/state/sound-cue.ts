/** A short sound when listening has ended, for who does not look at the screen: up where there is a reading, down where there is none. */

import type { Store } from './store.ts';

const KEY = 'spanwright.sound-cue';
const TONE_S = 0.12;
const GAP_S = 0.04;
const LOUDNESS = 0.15;
/** Two steps up or down; nothing that a belt would be tuned to. */
const TONES_HZ = { reading: [660, 880], none: [440, 330] } as const;
/** The microphone is let go first, so that no cue is ever heard by it. */
const WAIT_S = 0.25;

/** What plays tones; its own type so that a test can listen. */
export type Player = (tonesHz: readonly number[]) => void;

export class SoundCue {
  readonly #store: Store;
  readonly #play: Player;
  readonly #storage: () => Storage;
  #wasListening = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(options: { readonly store: Store; readonly play?: Player; readonly storage?: () => Storage }) {
    this.#store = options.store;
    this.#play = options.play ?? playTones;
    this.#storage = options.storage ?? (() => localStorage);
    this.#store.addEventListener('change', () => this.#follow());
  }

  get isOn(): boolean {
    try {
      return this.#storage().getItem(KEY) === 'on';
    } catch {
      return false; // a browser that keeps nothing stays quiet
    }
  }

  turn(on: boolean): void {
    try {
      if (on) this.#storage().setItem(KEY, 'on');
      else this.#storage().removeItem(KEY);
    } catch {
      // A browser that keeps nothing stays quiet.
    }
    if (on) this.#play(TONES_HZ.reading); // so that it is known by its sound
  }

  #follow(): void {
    const { activity, answer } = this.#store.state;
    const isBusy = activity.kind === 'listening' || activity.kind === 'asking';
    if (isBusy) clearTimeout(this.#timer); // never while the page listens
    if (this.#wasListening && activity.kind === 'idle' && this.isOn) {
      const tones = answer.reading ? TONES_HZ.reading : TONES_HZ.none;
      this.#timer = setTimeout(() => this.#play(tones), 1000 * WAIT_S);
    }
    this.#wasListening = activity.kind === 'listening' && activity.source === 'microphone';
  }
}

function playTones(tonesHz: readonly number[]): void {
  const context = new AudioContext();
  for (const [index, frequencyHz] of tonesHz.entries()) {
    const from = context.currentTime + index * (TONE_S + GAP_S);
    const gain = new GainNode(context, { gain: 0 });
    gain.gain.setTargetAtTime(LOUDNESS, from, 0.01);
    gain.gain.setTargetAtTime(0, from + TONE_S - 0.03, 0.01);
    const tone = new OscillatorNode(context, { frequency: frequencyHz });
    tone.connect(gain).connect(context.destination);
    tone.start(from);
    tone.stop(from + TONE_S + GAP_S);
  }
  setTimeout(() => void context.close(), 1000 * (tonesHz.length * (TONE_S + GAP_S) + 0.2));
}
