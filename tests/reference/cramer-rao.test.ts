/**
 * No unbiased estimate of a frequency in white noise scatters less than the Cramér-Rao bound, and a good one scatters no more.
 *
 * Steady tone, amplitude, phase and frequency unknown: Rife and Boorstyn, Single-tone parameter estimation from discrete-time
 * observations, IEEE Trans. Inf. Theory 20 (1974) 591: with η = A²/(2σ²), sd(f) = (rate/2π) sqrt(12/(η N (N² − 1))).
 * Damped tone that is heard out, decay unknown too: by the same Fisher information sd(f) = (1/π) sqrt(2/(η rate τ³)), η at the start;
 * exact for many periods within τ, derived for this test and met by integrating the Fisher information numerically (three rows below).
 */
import { describe, expect, it, vi } from 'vitest';
import { fftPlan, powerOfTwoFrom } from '../../src/core/math/fft.ts';
import { fitSinusoids } from '../../src/core/partials/fit.ts';
import { backgroundOf } from '../../src/core/pluck/background.ts';
import { binGrid } from '../../src/core/spectrum/damped-sinusoid.ts';
import { createRandom } from '../../src/core/synthesis/random.ts';
import { spread, tones } from '../support/tones.ts';

/** Many draws; a busy machine takes its time. */
vi.setConfig({ testTimeout: 30_000 });

const steadyBoundHz = (o: { rateHz: number; count: number; overNoise: number }) =>
  (o.rateHz / (2 * Math.PI)) * Math.sqrt(12 / (o.overNoise * o.count * (o.count ** 2 - 1)));
const dampedBoundHz = (o: { rateHz: number; decayS: number; overNoise: number }) =>
  Math.sqrt(2 / (o.overNoise * o.rateHz * o.decayS ** 3)) / Math.PI;

/** One damped tone and its noise, fitted in all bins but those of the offset. */
function fitDamped(o: {
  rateHz: number;
  count: number;
  frequencyHz: number;
  decayS: number;
  noise: number;
  seed: number;
  highestHz: number;
}) {
  const { rateHz, count, frequencyHz, decayS, noise, seed } = o;
  const phase = 2 * Math.PI * createRandom(seed, 5).uniform();
  const samples = tones([{ frequencyHz, amplitude: 1, decayS, phase }], { rateHz, count, noise, seed });
  const grid = binGrid({ rateHz, length: count, size: powerOfTwoFrom(count), highestHz: o.highestHz });
  const spectrum = fftPlan(grid.size).transform(samples);
  const bins = Array.from({ length: grid.binCount - 1 }, (_, k) => k + 1);
  const start = [{ frequencyHz: frequencyHz + 0.4, decayPerS: 1.3 / decayS, re: 0, im: 0 }];
  return fitSinusoids({ grid, spectrum, noise: new Float64Array(grid.binCount).fill(noise ** 2) }, start, bins);
}

const noiseFor = (overNoiseDb: number) => Math.sqrt(0.5 / 10 ** (overNoiseDb / 10));

describe('a damped tone', () => {
  // rate, length, f, τ, η: numeric Fisher information with amplitude, phase, frequency and decay unknown (phase 0).
  it.each([
    [48_000, 1, 110, 0.1, 20, 6.473858e-3],
    [48_000, 1, 110, 0.05, 20, 1.826151e-2],
    [48_000, 0.5, 60, 0.1, 10, 2.047209e-2],
  ])(
    'rate %d Hz, %d s, %d Hz, τ %d s, %d dB: the stated uncertainty is the bound',
    (rateHz, lengthS, frequencyHz, decayS, db, fisherHz) => {
      const found = fitDamped({ rateHz, count: lengthS * rateHz, frequencyHz, decayS, noise: noiseFor(db), seed: 2, highestHz: 3000 });
      const closedHz = dampedBoundHz({ rateHz, decayS, overNoise: 10 ** (db / 10) });
      // Phase and the fitted decay stand in for the true ones: a few per cent.
      expect(Math.abs(found.frequencyU[0]! / fisherHz - 1)).toBeLessThan(0.05);
      expect(Math.abs(closedHz / fisherHz - 1)).toBeLessThan(0.01);
    },
  );

  it.each([
    [113, 0.19, 20],
    [240, 0.1, 10],
    [60, 0.3, 30],
  ])('%d Hz, τ %d s, %d dB: the fit scatters as the bound says, over 250 draws', (frequencyHz, decayS, db) => {
    const DRAWS = 250;
    const rateHz = 8000;
    const count = Math.round(8 * decayS * rateHz); // as good as heard out
    const errors = Array.from({ length: DRAWS }, (_, i) => {
      const fit = fitDamped({ rateHz, count, frequencyHz, decayS, noise: noiseFor(db), seed: i + 1, highestHz: frequencyHz + 100 });
      return fit.sinusoids[0]!.frequencyHz - frequencyHz;
    });
    const bound = dampedBoundHz({ rateHz, decayS, overNoise: 10 ** (db / 10) });
    const { mean, sd } = spread(errors);
    // Three standard errors of a standard deviation, and of a mean.
    expect(Math.abs(sd / bound - 1)).toBeLessThan(3 / Math.sqrt(2 * DRAWS) + 0.02);
    expect(Math.abs(mean)).toBeLessThan((3.5 * bound) / Math.sqrt(DRAWS));
  });
});

it.each([10, 25])('a steady tone of the room at %d dB: its line scatters as the bound says, over 80 draws', (db) => {
  const DRAWS = 80;
  const [rateHz, count] = [8000, 5600];
  const errors = Array.from({ length: DRAWS }, (_, i) => {
    const frequencyHz = createRandom(i, 3).between(80, 900);
    const samples = tones([{ frequencyHz, amplitude: 1, phase: i }], { rateHz, count, noise: noiseFor(db), seed: i + 1 });
    const { lines } = backgroundOf(samples, rateHz);
    return lines.reduce((a, b) => (Math.hypot(b.re, b.im) > Math.hypot(a.re, a.im) ? b : a)).frequencyHz - frequencyHz;
  });
  const bound = steadyBoundHz({ rateHz, count, overNoise: 10 ** (db / 10) });
  expect(Math.abs(spread(errors).sd / bound - 1)).toBeLessThan(3.5 / Math.sqrt(2 * DRAWS));
});

// The formula itself, with figures worked out for N = 1000 and 48 000.
it.each([
  [1000, 1000, 20, 1.743456e-3],
  [48_000, 48_000, 0, 2.516461e-3],
  [4800, 48_000, 0, 7.957747e-2],
])('Rife and Boorstyn’s form: N %d at %d Hz, %d dB', (count, rateHz, db, hz) => {
  expect(Math.abs(steadyBoundHz({ rateHz, count, overNoise: 10 ** (db / 10) }) / hz - 1)).toBeLessThan(1e-6);
});
