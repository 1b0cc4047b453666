/** Which channel of a WAV file is used, and its samples. */

import type { WavFormat } from './wav-format.ts';
import { sampleReader } from './wav-samples.ts';

/** Floats may stand above 1 without harm; a peak beyond this was written on another scale. */
const HIGHEST_PEAK = 8;

/** Whole frames, interleaved, from a byte on. */
export interface WavFrames {
  readonly view: DataView;
  readonly format: WavFormat;
  readonly start: number;
  readonly frameCount: number;
}

/** Index of the channel with most energy about its mean, so that an offset does not pass for sound. */
export function strongestChannel({ view, format, start, frameCount }: WavFrames): number {
  const read = sampleReader(view, format);
  let strongest = 0;
  let most = -1;
  for (let channel = 0; channel < format.channelCount; channel++) {
    let sum = 0;
    let sumOfSquares = 0;
    let at = start + channel * format.sampleBytes;
    for (let frame = 0; frame < frameCount; frame++, at += format.sampleBytes * format.channelCount) {
      const value = read(at) || 0;
      sum += value;
      sumOfSquares += value * value;
    }
    const energy = sumOfSquares - (sum * sum) / frameCount;
    if (energy > most) [strongest, most] = [channel, energy];
  }
  return strongest;
}

/** Samples of one channel: Float32Array [frameCount], all finite. Damaged ones are 0 and counted. */
export function channelSamples({ view, format, start, frameCount }: WavFrames, channel: number) {
  const read = sampleReader(view, format);
  const samples = new Float32Array(frameCount);
  let damagedCount = 0;
  let peak = 0;
  let at = start + channel * format.sampleBytes;
  for (let frame = 0; frame < frameCount; frame++, at += format.sampleBytes * format.channelCount) {
    const value = read(at);
    if (Number.isNaN(value)) {
      damagedCount++;
      continue;
    }
    samples[frame] = value;
    peak = Math.max(peak, Math.abs(value));
  }
  if (peak <= HIGHEST_PEAK) return { samples, damagedCount };
  return { samples: samples.map((value) => value / peak), damagedCount, scaledFromPeak: peak };
}
