/** Makes the live moments from the blocks as they come: level, peak, clip and spectrum, for the eye alone. Driven by sound, never by a timer. */

import { levelDbfs, spectrumMaker } from '../core/spectrum/spectrum.ts';
import type { LiveMoment } from '../ports.ts';
import { RoomLevel } from './room-level.ts';

const MOMENTS_PER_S = 15;

/** Under the window: partials a few hertz apart stand apart, and a pluck still shows its fall. */
const SPECTRUM_S = 0.35;

/** Above this a belt's partials are not looked for. */
const HIGHEST_HZ = 3000;

/** Converters rail a little below full scale now and then; nothing else comes so near to it. */
const CLIPS_AT = 0.99;

export class MomentMeter {
  readonly #spectrum;
  readonly #binCount: number;
  readonly #recent: Float32Array;
  readonly #momentSamples: number;
  readonly #room: RoomLevel;
  #count = 0;
  #sum = 0;
  #sumOfSquares = 0;
  #peak = 0;

  constructor(sampleRateHz: number) {
    this.#spectrum = spectrumMaker({ length: Math.round(SPECTRUM_S * sampleRateHz), sampleRateHz, window: 'hann' });
    this.#binCount = Math.min(this.#spectrum.binCount, Math.floor(HIGHEST_HZ / this.#spectrum.binWidthHz) + 1);
    this.#recent = new Float32Array(this.#spectrum.length);
    this.#momentSamples = Math.round(sampleRateHz / MOMENTS_PER_S);
    this.#room = new RoomLevel(this.#momentSamples / sampleRateHz);
  }

  /** Takes any number of samples, Float32Array [n], full scale = 1; gives the moments that they complete. */
  hear(samples: Float32Array): readonly LiveMoment[] {
    const moments: LiveMoment[] = [];
    for (let at = 0; at < samples.length; ) {
      const part = samples.subarray(at, at + this.#momentSamples - this.#count);
      at += part.length;
      this.#gather(part);
      if (this.#count === this.#momentSamples) moments.push(this.#moment());
    }
    return moments;
  }

  /** What was heard so far does not go on: the next moment shows only what comes now. */
  forget(): void {
    this.#recent.fill(0);
    this.#clear();
  }

  #gather(part: Float32Array): void {
    const length = this.#recent.length;
    const kept = part.subarray(Math.max(0, part.length - length));
    this.#recent.copyWithin(0, kept.length);
    this.#recent.set(kept, length - kept.length);
    this.#count += part.length;
    for (const sample of part) {
      this.#sum += sample;
      this.#sumOfSquares += sample * sample;
      this.#peak = Math.max(this.#peak, Math.abs(sample));
    }
  }

  #moment(): LiveMoment {
    const mean = this.#sum / this.#count;
    const variance = Math.max(0, this.#sumOfSquares / this.#count - mean * mean); // a converter's offset is no sound
    const level = 10 * Math.log10(variance);
    const peak = this.#peak;
    this.#clear();
    const amplitudes = this.#spectrum.amplitudes(this.#recent).subarray(0, this.#binCount);
    return {
      kind: 'moment',
      peakDbfs: 20 * Math.log10(peak),
      levelDbfs: level,
      roomDbfs: this.#room.follow(level),
      clipped: peak >= CLIPS_AT,
      binWidthHz: this.#spectrum.binWidthHz,
      levelsDbfs: Float32Array.from(amplitudes, levelDbfs),
    };
  }

  #clear(): void {
    this.#count = 0;
    this.#sum = 0;
    this.#sumOfSquares = 0;
    this.#peak = 0;
  }
}
