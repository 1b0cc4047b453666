/** The last seconds of sound as they came in, so that what a pluck was read from can be heard and looked at afterwards. */

import type { SoundClip } from '../ports.ts';

/** Kept before what began to sound, so that the room is in it, and after. */
const BEFORE_S = 0.5;
const AFTER_S = 0.95;
/** A pluck is told a second after it began at the latest. */
const MEMORY_S = 2.5;

/** What of a sound is kept of what began at a time, s from its first sample. */
export function clipAt(
  sound: { readonly samples: Float32Array; readonly sampleRateHz: number; readonly fromS: number },
  atS: number,
): SoundClip {
  const { samples, sampleRateHz, fromS } = sound;
  const index = (seconds: number): number => Math.max(0, Math.min(samples.length, Math.round((seconds - fromS) * sampleRateHz)));
  const from = index(atS - BEFORE_S);
  return { samples: samples.slice(from, index(atS + AFTER_S)), sampleRateHz, startS: fromS + from / sampleRateHz };
}

export class SoundMemory {
  readonly #sampleRateHz: number;
  readonly #ring: Float32Array;
  /** Samples heard so far. */
  #heard = 0;

  constructor(sampleRateHz: number) {
    this.#sampleRateHz = sampleRateHz;
    this.#ring = new Float32Array(Math.round(MEMORY_S * sampleRateHz));
  }

  hear(samples: Float32Array): void {
    const length = this.#ring.length;
    const kept = samples.subarray(Math.max(0, samples.length - length));
    const at = (this.#heard + samples.length - kept.length) % length;
    const first = Math.min(kept.length, length - at);
    this.#ring.set(kept.subarray(0, first), at);
    this.#ring.set(kept.subarray(first), 0);
    this.#heard += samples.length;
  }

  /** @param atS  from the first sample heard */
  clipAt(atS: number): SoundClip {
    const length = Math.min(this.#heard, this.#ring.length);
    const end = this.#heard % this.#ring.length;
    const samples = new Float32Array(length);
    if (length < this.#ring.length) samples.set(this.#ring.subarray(0, length));
    else {
      samples.set(this.#ring.subarray(end));
      samples.set(this.#ring.subarray(0, end), length - end);
    }
    return clipAt({ samples, sampleRateHz: this.#sampleRateHz, fromS: (this.#heard - length) / this.#sampleRateHz }, atS);
  }
}
