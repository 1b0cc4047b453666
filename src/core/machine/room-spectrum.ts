/** Mean spectrum of a room without plucks: power averaged over overlapping stretches (Welch, IEEE Trans. Audio Electroacoust. AU-15 (1967) 70). */

import type { PlotSpectrum } from '../outcome.ts';
import type { Recording } from '../samples/recording.ts';
import { levelDbfs, spectrumMaker } from '../spectrum/spectrum.ts';

/** Long enough to part 20 Hz from 25 Hz. */
const STRETCH_S = 0.4;
const HIGHEST_HZ = 3000;

/** @throws RangeError where the recording is shorter than one stretch */
export function roomSpectrum({ samples, sampleRateHz }: Recording): Pick<PlotSpectrum, 'binWidthHz' | 'backgroundDbfs'> {
  const length = Math.round(STRETCH_S * sampleRateHz);
  if (samples.length < length) throw new RangeError(`roomSpectrum needs ${length} samples, got ${samples.length}`);
  const maker = spectrumMaker({ length, sampleRateHz, window: 'hann' });
  const count = Math.min(maker.binCount, Math.ceil(HIGHEST_HZ / maker.binWidthHz) + 1);
  const power = new Float64Array(count);
  let stretches = 0;
  for (let from = 0; from + length <= samples.length; from += length >> 1, stretches++) {
    const amplitudes = maker.amplitudes(samples.subarray(from, from + length));
    for (let k = 0; k < count; k++) power[k]! += amplitudes[k]! ** 2;
  }
  return { binWidthHz: maker.binWidthHz, backgroundDbfs: Float32Array.from(power, (sum) => levelDbfs(Math.sqrt(sum / stretches))) };
}
