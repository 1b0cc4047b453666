/** The spectrum of one pluck beside its room, for the eye; nothing is computed from it. */

import type { PlotSpectrum } from '../outcome.ts';
import type { PluckSegment } from '../pluck/segment.ts';
import { levelDbfs, spectrumMaker } from '../spectrum/spectrum.ts';

/** Long enough to part the partials of a slack span, short enough that most of it is ring. */
const LENGTH_S = 0.4;
const HIGHEST_HZ = 3000;

export function plotSpectrum(segment: PluckSegment): PlotSpectrum {
  const { rateHz, background } = segment;
  const length = Math.round(LENGTH_S * rateHz);
  const samples = new Float64Array(length);
  samples.set(segment.heard.subarray(0, length));
  const maker = spectrumMaker({ length, sampleRateHz: rateHz, window: 'blackman', padding: 2 });
  const amplitudes = maker.amplitudes(samples);
  const count = Math.min(amplitudes.length, Math.ceil(HIGHEST_HZ / maker.binWidthHz) + 1);
  return {
    binWidthHz: maker.binWidthHz,
    levelsDbfs: Float32Array.from({ length: count }, (_, k) => levelDbfs(amplitudes[k]!)),
    backgroundDbfs: Float32Array.from({ length: count }, (_, k) =>
      levelDbfs(maker.noiseAmplitude(background.noiseAt(k * maker.binWidthHz))),
    ),
    steadyHz: background.lines.map(({ frequencyHz }) => frequencyHz),
  };
}
