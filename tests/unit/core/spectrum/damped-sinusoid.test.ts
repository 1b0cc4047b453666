import { describe, expect, it } from 'vitest';
import { fftPlan } from '../../../../src/core/math/fft.ts';
import {
  addSpectrumOf,
  amplitude,
  basisAt,
  binGrid,
  type DampedSinusoid,
  decayEnergySamples,
  decayS,
  halfWidthHz,
  polesOf,
  qualityFactor,
} from '../../../../src/core/spectrum/damped-sinusoid.ts';
import { directSum } from '../../../support/tones.ts';

const grid = binGrid({ rateHz: 8000, length: 700, size: 1024, highestHz: 3200 });

/** Re(c exp((−s + iω) t)) as sampled values. */
const sampled = ({ frequencyHz, decayPerS, re, im }: DampedSinusoid, extraDecayPerS = 0) =>
  Float64Array.from({ length: grid.length }, (_, i) => {
    const t = i / grid.rateHz;
    const angle = 2 * Math.PI * frequencyHz * t;
    return Math.exp(-(decayPerS + extraDecayPerS) * t) * (re * Math.cos(angle) - im * Math.sin(angle));
  });

const SINUSOIDS: readonly (readonly [string, DampedSinusoid])[] = [
  ['a belt’s partial', { frequencyHz: 113.2, decayPerS: 5, re: 0.3, im: -0.2 }],
  ['a knock', { frequencyHz: 741.3, decayPerS: 125, re: -0.1, im: 0.7 }],
  ['a steady tone between bins', { frequencyHz: 402.1, decayPerS: 0, re: 0.5, im: 0.5 }],
  ['nearly at nothing', { frequencyHz: 3, decayPerS: 40, re: 1, im: 0 }],
  ['above the last bin', { frequencyHz: 3777, decayPerS: 20, re: 0, im: 1 }],
];

describe.each(SINUSOIDS)('addSpectrumOf: %s', (_, sinusoid) => {
  it('is the transform of its samples', () => {
    const spectrum = new Float64Array(2 * grid.binCount);
    addSpectrumOf(sinusoid, { grid, spectrum, factor: 1 });
    const transform = fftPlan(grid.size).transform(sampled(sinusoid));
    spectrum.forEach((value, i) => {
      expect(Math.abs(value - transform[i]!)).toBeLessThan(1e-9);
    });
  });

  it('under a decaying window too, and is added with its factor to what is there', () => {
    const spectrum = new Float64Array(2 * grid.binCount).fill(0.25);
    addSpectrumOf(sinusoid, { grid, spectrum, factor: -2, extraDecayPerS: 20 });
    const samples = sampled(sinusoid, 20);
    for (const k of [0, 1, 14, 95, 200, grid.binCount - 1]) {
      const { re, im } = directSum(samples, k, grid.size);
      expect(Math.abs(spectrum[2 * k]! - (0.25 - 2 * re))).toBeLessThan(1e-9);
      expect(Math.abs(spectrum[2 * k + 1]! - (0.25 - 2 * im))).toBeLessThan(1e-9);
    }
  });
});

describe('basisAt', () => {
  // G(u) = Σ u^t and u G'(u) = Σ t u^t over the segment's samples, summed as they stand.
  it.each([14, 92, 300])('at bin %d is the sums in its definition', (k) => {
    const [frequencyHz, decayPerS] = [741.3, 30];
    const out = new Float64Array(10);
    basisAt(polesOf({ frequencyHz, decayPerS }, grid), grid, k, out, 1);
    const w = (2 * Math.PI * frequencyHz) / grid.rateHz;
    const wk = (2 * Math.PI * k) / grid.size;
    const expected = [w - wk, -w - wk].flatMap((turn) => {
      let [gRe, gIm, hRe, hIm] = [0, 0, 0, 0];
      for (let t = 0; t < grid.length; t++) {
        const size = Math.exp((-decayPerS * t) / grid.rateHz);
        gRe += size * Math.cos(turn * t);
        gIm += size * Math.sin(turn * t);
        hRe += t * size * Math.cos(turn * t);
        hIm += t * size * Math.sin(turn * t);
      }
      return [gRe, gIm, hRe, hIm];
    });
    const [uRe, uIm, uhRe, uhIm, vRe, vIm, vhRe, vhIm] = expected;
    [0, uRe, uIm, vRe, vIm, uhRe, uhIm, vhRe, vhIm, 0].forEach((value, i) => {
      expect(Math.abs(out[i]! - value!)).toBeLessThan(1e-9 * (1 + Math.abs(value!)));
    });
  });
});

it('binGrid covers 0 to the highest frequency asked for, at most half the rate', () => {
  expect(grid.binWidthHz).toBe(7.8125);
  expect((grid.binCount - 1) * grid.binWidthHz).toBeGreaterThanOrEqual(3200);
  expect((grid.binCount - 2) * grid.binWidthHz).toBeLessThan(3200);
  expect(binGrid({ rateHz: 8000, length: 700, size: 1024, highestHz: 9999 }).binCount).toBe(513);
});

it.each([0.5, 5, 200])('decayEnergySamples at %d per second is Σ exp(−2 s t)', (decayPerS) => {
  let sum = 0;
  for (let t = 0; t < 700; t++) sum += Math.exp((-2 * decayPerS * t) / 8000);
  expect(decayEnergySamples({ decayPerS, rateHz: 8000, length: 700 }) / sum).toBeCloseTo(1, 10);
});

it('tells amplitude, decay time, Q and width as their definitions do', () => {
  const sinusoid = { frequencyHz: 120, decayPerS: 5, re: 0.3, im: -0.4 };
  expect(amplitude(sinusoid)).toBeCloseTo(0.5, 12);
  expect(decayS(sinusoid)).toBeCloseTo(0.2, 12);
  expect(qualityFactor(sinusoid)).toBeCloseTo(Math.PI * 120 * 0.2, 12);
  // The power of 1/(s + iδ) is halved at δ = s.
  expect(2 * Math.PI * halfWidthHz(sinusoid)).toBeCloseTo(5, 12);
});
