import { describe, expect, it } from 'vitest';
import { fftPlan } from '../../../../src/core/math/fft.ts';
import { rms } from '../../../../src/core/synthesis/level.ts';
import { pinkNoise, scrape, whiteNoise } from '../../../../src/core/synthesis/noise.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { db } from '../../../support/gain.ts';

const sampleRateHz = 32_768;
const sampleCount = 32_768;

/** Power between two frequencies, from the spectrum of one second. */
function bandPower(samples: Float64Array, lowHz: number, highHz: number): number {
  const spectrum = fftPlan(sampleCount).transform(samples);
  let power = 0;
  for (let bin = lowHz; bin < highHz; bin++) power += (spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2) / sampleCount ** 2;
  return power;
}

describe('whiteNoise', () => {
  const noise = whiteNoise(createRandom(1), sampleCount);

  it('has equal power in equal bands', () => {
    expect(rms(noise)).toBeCloseTo(1, 1);
    for (const lowHz of [1000, 5000, 12_000])
      expect(Math.abs(db(bandPower(noise, lowHz, lowHz + 2000) / bandPower(noise, 8000, 10_000)))).toBeLessThan(0.6);
  });

  it('knows nothing of what it was a moment before', () => {
    for (const lag of [1, 2, 3, 10, 100]) {
      let product = 0;
      for (let t = lag; t < sampleCount; t++) product += noise[t]! * noise[t - lag]!;
      // Standard deviation of the mean product of independent normal numbers: 1/√count.
      expect(Math.abs(product / sampleCount)).toBeLessThan(4 / Math.sqrt(sampleCount));
    }
  });
});

describe('pinkNoise', () => {
  const noise = pinkNoise(createRandom(2), sampleCount, sampleRateHz);

  it('has equal power in each octave', () => {
    expect(rms(noise)).toBeCloseTo(1, 6);
    const octaves = [63, 125, 250, 500, 1000, 2000, 4000].map((lowHz) => db(bandPower(noise, lowHz, 2 * lowHz)));
    const mean = octaves.reduce((sum, level) => sum + level, 0) / octaves.length;
    // The ripple of the poles is 0.3 dB; the lowest octave holds 63 bins, whose power scatters by 0.55 dB.
    for (const level of octaves) expect(Math.abs(level - mean)).toBeLessThan(1.6);
  });

  it('falls by 3 dB an octave at any rate', () => {
    const lowRate = pinkNoise(createRandom(3), sampleCount, 8192);
    // Four seconds: a bin is a quarter of a hertz.
    const perHz = (lowHz: number) => bandPower(lowRate, 4 * lowHz, 8 * lowHz) / lowHz;
    expect(Math.abs(db(perHz(800) / perHz(100)) + 9.03)).toBeLessThan(1);
  });
});

describe('scrape', () => {
  const decayS = 0.02;
  const make = (seed: number, rateHz = sampleRateHz) => scrape(createRandom(seed), { decayS, sampleRateHz: rateHz });
  const energy = (sound: Float64Array, fromS: number) => {
    const part = sound.subarray(Math.round(fromS * sampleRateHz), Math.round((fromS + decayS) * sampleRateHz));
    return part.reduce((sum, x) => sum + x * x, 0);
  };

  it('dies by a factor e in each time constant, 8.69 dB of level', () => {
    const means = [0, 1, 2, 3].map((k) => Array.from({ length: 30 }, (_, seed) => energy(make(seed), k * decayS)).reduce((a, b) => a + b));
    for (const k of [1, 2, 3]) expect(Math.abs(db(means[k]! / means[k - 1]!) + 20 * Math.log10(Math.E))).toBeLessThan(0.4);
  });

  it('begins at once, is about as high as told, and ends in next to nothing', () => {
    const peaks = Array.from({ length: 30 }, (_, seed) => make(seed).reduce((most, x) => Math.max(most, Math.abs(x)), 0));
    const mean = peaks.reduce((a, b) => a + b) / peaks.length;
    expect(mean).toBeGreaterThan(0.5);
    expect(mean).toBeLessThan(1.5);
    expect(energy(make(1), 0)).toBeGreaterThan(1);
    expect(Math.abs(make(1).at(-1)!)).toBeLessThan(1e-3);
  });

  it('rustles, with little below 500 Hz', () => {
    const padded = new Float64Array(sampleCount);
    padded.set(make(4));
    expect(bandPower(padded, 0, 200)).toBeLessThan(0.05 * bandPower(padded, 500, 5000));
  });

  it('can be made at rates that hold no 5 kHz', () => {
    expect(make(1, 8000).every(Number.isFinite)).toBe(true);
  });
});

it('the same seed, the same noise', () => {
  expect(pinkNoise(createRandom(5), 100, 8000)).toEqual(pinkNoise(createRandom(5), 100, 8000));
  expect(whiteNoise(createRandom(5), 100)).not.toEqual(whiteNoise(createRandom(6), 100));
});
