/** A sound as levels over time and frequency, for the eye. */

import { levelDbfs, spectrumMaker } from '../spectrum/spectrum.ts';

export interface Spectrogram {
  /** Middle of the first column, s from the touch, and the distance from column to column. */
  readonly fromS: number;
  readonly stepS: number;
  readonly columnCount: number;
  readonly binWidthHz: number;
  readonly binCount: number;
  /** Float32Array [columnCount · binCount], column after column, bin k of a column at k · binWidthHz; dB relative to a full-scale sine. */
  readonly levelsDbfs: Float32Array<ArrayBuffer>;
}

/** Long enough to part the partials of most spans, short enough to show them die. */
const WINDOW_S = 0.072;
const STEP_S = 0.012;

/**
 * @param sound.samples  Float64Array [n]; not modified
 * @param sound.touchS   when the ring began, from the first sample
 * @param highestHz      up to here
 * @returns no column where the sound is shorter than one window
 */
export function spectrogramOf(
  sound: { readonly samples: Float64Array; readonly rateHz: number; readonly touchS: number },
  highestHz: number,
): Spectrogram {
  const { samples, rateHz, touchS } = sound;
  const length = Math.round(WINDOW_S * rateHz);
  const step = Math.round(STEP_S * rateHz);
  const maker = spectrumMaker({ length, sampleRateHz: rateHz, window: 'hann', padding: 2 });
  const binCount = Math.min(maker.binCount, Math.ceil(highestHz / maker.binWidthHz) + 1);
  const columnCount = Math.max(0, Math.floor((samples.length - length) / step) + 1);
  const levelsDbfs = new Float32Array(columnCount * binCount);
  for (let column = 0; column < columnCount; column++) {
    const amplitudes = maker.amplitudes(samples.subarray(column * step, column * step + length));
    for (let k = 0; k < binCount; k++) levelsDbfs[column * binCount + k] = levelDbfs(amplitudes[k]!);
  }
  return { fromS: length / 2 / rateHz - touchS, stepS: step / rateHz, columnCount, binWidthHz: maker.binWidthHz, binCount, levelsDbfs };
}
