import { describe, expect, it } from 'vitest';
import { fftPlan } from '../../../../src/core/math/fft.ts';
import { binsAround, type Fit, fitSinusoids } from '../../../../src/core/partials/fit.ts';
import { amplitude, binGrid, decayS } from '../../../../src/core/spectrum/damped-sinusoid.ts';
import { spread, type Tone, tones } from '../../../support/tones.ts';

const rateHz = 8000;
const grid = binGrid({ rateHz, length: 3600, size: 4096, highestHz: 3000 });
const start = (frequencyHz: number, decayTimeS = 0.1) => ({ frequencyHz, decayPerS: 1 / decayTimeS, re: 0, im: 0 });

function fitOf(list: readonly Tone[], guesses: readonly ReturnType<typeof start>[], options: { noise?: number; seed?: number } = {}): Fit {
  const { noise = 0, seed = 1 } = options;
  const samples = tones(list, { rateHz, count: grid.length, noise, seed });
  const spectrum = fftPlan(grid.size).transform(samples);
  const told = new Float64Array(grid.binCount).fill(noise ** 2 || 1e-12);
  const bins = binsAround(
    grid,
    guesses.map(({ frequencyHz }) => ({ frequencyHz, withinHz: 40 })),
  );
  return fitSinusoids({ grid, spectrum, noise: told }, guesses, bins);
}

describe('without noise', () => {
  it.each([
    ['a belt', { frequencyHz: 113.37, amplitude: 0.2, decayS: 0.19, phase: 1.1 }, start(112.6)],
    ['a slack one', { frequencyHz: 41.2, amplitude: 0.2, decayS: 0.05, phase: -2 }, start(42.5)],
    ['a short one', { frequencyHz: 803.9, amplitude: 0.01, decayS: 0.02, phase: 0.3 }, start(800, 0.05)],
    ['a long ring', { frequencyHz: 330.03, amplitude: 0.3, decayS: 1.5, phase: 2 }, start(330.5, 0.2)],
  ])('%s: frequency, decay, amplitude and phase as they are', (_, tone, guess) => {
    const sinusoid = fitOf([tone], [guess]).sinusoids[0]!;
    expect(Math.abs(sinusoid.frequencyHz - tone.frequencyHz)).toBeLessThan(1e-4);
    expect(decayS(sinusoid) / tone.decayS).toBeCloseTo(1, 4);
    expect(amplitude(sinusoid) / tone.amplitude).toBeCloseTo(1, 4);
    expect(Math.cos(Math.atan2(sinusoid.im, sinusoid.re) - tone.phase)).toBeCloseTo(1, 6);
  });

  it('two within each other’s width, told apart', () => {
    const list = [
      { frequencyHz: 113, amplitude: 0.2, decayS: 0.15 },
      { frequencyHz: 116.5, amplitude: 0.1, decayS: 0.12, phase: 1 },
    ];
    const { sinusoids } = fitOf(list, [start(112.5), start(117.5)]);
    list.forEach((tone, i) => {
      expect(Math.abs(sinusoids[i]!.frequencyHz - tone.frequencyHz)).toBeLessThan(0.01);
      expect(amplitude(sinusoids[i]!) / tone.amplitude).toBeCloseTo(1, 2);
    });
  });
});

describe('in white noise', () => {
  const list = [
    { frequencyHz: 113.37, amplitude: 0.2, decayS: 0.19, phase: 1.1 },
    { frequencyHz: 131, amplitude: 0.08, decayS: 0.1, phase: 0.2 },
  ];
  const SEEDS = 150;
  const fits = Array.from({ length: SEEDS }, (_, i) => fitOf(list, [start(113), start(131.5)], { noise: 0.02, seed: i + 1 }));

  it.each([0, 1])('scatters about the truth as much as it says it does, sinusoid %d', (i) => {
    const { frequencyHz, decayS: truthS } = list[i]!;
    for (const [errors, stated] of [
      [fits.map((fit) => fit.sinusoids[i]!.frequencyHz - frequencyHz), fits.map((fit) => fit.frequencyU[i]!)],
      [fits.map((fit) => fit.sinusoids[i]!.decayPerS - 1 / truthS), fits.map((fit) => fit.decayU[i]!)],
    ] as const) {
      const { mean, sd } = spread(errors.map((error, k) => error / stated[k]!));
      // Standard errors of a mean and of a standard deviation; four of them.
      expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(SEEDS));
      expect(Math.abs(sd - 1)).toBeLessThan(4 / Math.sqrt(2 * SEEDS));
    }
  });

  it('leaves what the noise leaves: a chi-square of its degrees of freedom', () => {
    // Bins within 40 Hz of each, which overlap: 71 to 171 Hz, two components each, thinned by the padding; four numbers fitted to each.
    const bins = binsAround(grid, [{ frequencyHz: 122.2, withinHz: 49.2 }]).length;
    const freedom = (2 * bins * grid.length) / grid.size - 8;
    const { mean } = spread(fits.map(({ cost }) => cost));
    expect(Math.abs(mean / freedom - 1)).toBeLessThan(0.1);
  });

  it('says more doubt for more noise, in proportion', () => {
    const quiet = fitOf(list, [start(113), start(131.5)], { noise: 0.002, seed: 3 });
    const loud = fitOf(list, [start(113), start(131.5)], { noise: 0.02, seed: 3 });
    expect(loud.frequencyU[0]! / quiet.frequencyU[0]!).toBeCloseTo(10, 0);
  });
});

describe('whatever it is given', () => {
  it('never raises the cost of its start, and stays finite', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const fit = fitOf([], [start(100 + 30 * seed), start(105 + 30 * seed)], { noise: 0.1, seed });
      for (const { frequencyHz, decayPerS, re, im } of fit.sinusoids) {
        expect([frequencyHz, decayPerS, re, im].every(Number.isFinite)).toBe(true);
        expect(frequencyHz).toBeGreaterThan(0);
        expect(decayPerS).toBeGreaterThan(0);
      }
    }
  });

  it('two starts at one place do not break it', () => {
    const fit = fitOf([{ frequencyHz: 113, amplitude: 0.2, decayS: 0.15 }], [start(113), start(113)], { noise: 0.01 });
    expect(fit.sinusoids.every(({ frequencyHz }) => Math.abs(frequencyHz - 113) < 5)).toBe(true);
    expect(fit.frequencyU.some(Number.isNaN)).toBe(false);
  });

  it('digital silence has no sinusoid in it', () => {
    const fit = fitOf([], [start(113)]);
    expect(amplitude(fit.sinusoids[0]!)).toBe(0);
    expect(fit.frequencyU[0]).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('binsAround', () => {
  it('takes the bins within the distance, each once, in order, never bin 0', () => {
    const bins = binsAround(grid, [
      { frequencyHz: 100, withinHz: 5 },
      { frequencyHz: 104, withinHz: 5 },
      { frequencyHz: 1, withinHz: 4 },
    ]);
    const expected = Array.from({ length: grid.binCount }, (_, k) => k).filter((k) => {
      const hz = k * grid.binWidthHz;
      return k > 0 && (Math.abs(hz - 100) <= 5 || Math.abs(hz - 104) <= 5 || hz <= 5);
    });
    expect(bins).toEqual(expected);
  });

  it('stays inside the grid', () => {
    expect(binsAround(grid, [{ frequencyHz: 3900, withinHz: 20 }])).toEqual([]);
  });
});
