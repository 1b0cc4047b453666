import { describe, expect, it } from 'vitest';
import { levelDbfs, spectrumMaker } from '../../../../src/core/spectrum/spectrum.ts';
import { COSINE_WINDOWS, type CosineWindow } from '../../../../src/core/spectrum/window.ts';
import { spread, tones } from '../../../support/tones.ts';

const sampleRateHz = 8000;
const NAMES = Object.keys(COSINE_WINDOWS) as CosineWindow[];

describe.each(NAMES)('spectrumMaker, %s', (window) => {
  it('shows a sine in the middle of a bin with its amplitude', () => {
    const maker = spectrumMaker({ length: 1024, sampleRateHz, window });
    const bin = 100;
    const amplitudes = maker.amplitudes(
      tones([{ frequencyHz: bin * maker.binWidthHz, amplitude: 0.3, phase: 1 }], { rateHz: sampleRateHz, count: 1024 }),
    );
    expect(amplitudes[bin]).toBeCloseTo(0.3, 10);
    expect(amplitudes.indexOf(Math.max(...amplitudes))).toBe(bin);
  });

  it('shows white noise with its variance, on average', () => {
    const maker = spectrumMaker({ length: 1000, sampleRateHz, window });
    const means = Array.from({ length: 40 }, (_, seed) => {
      const powers = maker.noisePower(tones([], { rateHz: sampleRateHz, count: 1000, noise: 0.2, seed: seed + 1 }));
      return powers.slice(10, -10).reduce((sum, p) => sum + p, 0) / (powers.length - 20);
    });
    const { mean, sd } = spread(means);
    expect(Math.abs(mean - 0.04)).toBeLessThan((4 * sd) / Math.sqrt(means.length));
  });

  it('says at which amplitude that noise stands', () => {
    const maker = spectrumMaker({ length: 1000, sampleRateHz, window, padding: 2 });
    const samples = tones([], { rateHz: sampleRateHz, count: 1000, noise: 0.2, seed: 9 });
    const amplitudes = maker.amplitudes(samples);
    maker.noisePower(samples).forEach((power, k) => {
      expect(maker.noiseAmplitude(power)).toBeCloseTo(amplitudes[k]!, 12);
    });
  });
});

it('pads to a power of two and counts bins from 0 to half the rate', () => {
  const plain = spectrumMaker({ length: 1000, sampleRateHz, window: 'hann' });
  expect([plain.binCount, plain.binWidthHz * (plain.binCount - 1)]).toEqual([513, 4000]);
  const padded = spectrumMaker({ length: 1000, sampleRateHz, window: 'hann', padding: 4 });
  expect([padded.binCount, padded.binWidthHz * (padded.binCount - 1)]).toEqual([2049, 4000]);
});

it('keeps nothing of the samples before, and leaves those given alone', () => {
  const maker = spectrumMaker({ length: 500, sampleRateHz, window: 'blackman' });
  const first = tones([{ frequencyHz: 700, amplitude: 1 }], { rateHz: sampleRateHz, count: 500 });
  const copy = first.slice();
  const amplitudes = maker.amplitudes(first).slice();
  maker.amplitudes(tones([{ frequencyHz: 1500, amplitude: 1 }], { rateHz: sampleRateHz, count: 500 }));
  expect(maker.amplitudes(first)).toEqual(amplitudes);
  expect(first).toEqual(copy);
});

it('refuses another number of samples', () => {
  const maker = spectrumMaker({ length: 1000, sampleRateHz, window: 'hann' });
  expect(() => maker.amplitudes(new Float64Array(1001))).toThrow('spectrum needs 1000 samples, got 1001');
});

it('levelDbfs: 1 is 0 dB, a tenth −20 dB, and silence a number', () => {
  expect(levelDbfs(1)).toBe(0);
  expect(levelDbfs(0.1)).toBeCloseTo(-20, 12);
  expect(levelDbfs(0)).toBe(-200);
});
