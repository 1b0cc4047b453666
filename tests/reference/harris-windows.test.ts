import { describe, expect, it } from 'vitest';
import {
  COSINE_WINDOWS,
  type CosineWindow,
  coherentGain,
  cosineWindow,
  equivalentNoiseBandwidthBins,
} from '../../src/core/spectrum/window.ts';

/**
 * Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66 (1978) 51, Table I: equivalent
 * noise bandwidth (bins), scallop loss (dB), highest side lobe (dB), as widely reproduced; no copy of the table itself was at hand.
 * Tolerance: half of the last printed digit.
 *
 * One figure differs from what the formulas give: Hamming's scallop loss is printed as 1.78 and computes to 1.75. The computed one is right.
 */
const PRINTED = {
  rectangular: { enbw: 1.0, scallop: 3.92, sideLobe: -13 },
  hann: { enbw: 1.5, scallop: 1.42, sideLobe: -32 },
  hamming: { enbw: 1.36, scallop: undefined, sideLobe: -43 },
  blackman: { enbw: 1.73, scallop: 1.1, sideLobe: -58 },
  blackmanHarris4: { enbw: 2.0, scallop: 0.83, sideLobe: -92 },
} as const;

/** The same from the definitions at higher precision, N = 1024, periodic form, with worst-case process loss and widths at half and quarter power. */
const COMPUTED = {
  rectangular: { gain: 1, enbw: 1.0, scallop: 3.9224, worst: 3.9224, sideLobe: -13.26, half: 0.886, quarter: 1.207 },
  hann: { gain: 0.5, enbw: 1.5, scallop: 1.4236, worst: 3.1845, sideLobe: -31.47, half: 1.441, quarter: 2.0 },
  hamming: { gain: 0.54, enbw: 1.3628, scallop: 1.7514, worst: 3.0958, sideLobe: -42.67, half: 1.303, quarter: 1.815 },
  blackman: { gain: 0.42, enbw: 1.7268, scallop: 1.0989, worst: 3.4712, sideLobe: -58.11, half: 1.644, quarter: 2.299 },
  blackmanHarris4: { gain: 0.35875, enbw: 2.0044, scallop: 0.8256, worst: 3.8453, sideLobe: -92.01, half: 1.899, quarter: 2.666 },
} as const;

const N = 1024;

/** Level of the window's transform between bins, dB relative to its middle. */
function levelDb(weights: Float64Array, bins: number): number {
  let [re, im, sum] = [0, 0, 0];
  for (let t = 0; t < N; t++) {
    re += weights[t]! * Math.cos((2 * Math.PI * bins * t) / N);
    im += weights[t]! * Math.sin((2 * Math.PI * bins * t) / N);
    sum += weights[t]!;
  }
  return 20 * Math.log10(Math.hypot(re, im) / sum);
}

/** Full width at which the level has fallen by so much, by bisection. */
function widthBins(weights: Float64Array, fallDb: number): number {
  let [low, high] = [0, 2];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (levelDb(weights, middle) > -fallDb) low = middle;
    else high = middle;
  }
  return 2 * low;
}

/** Beyond the main lobe, whose half-width is as many bins as the window has coefficients. */
function highestSideLobeDb(weights: Float64Array, from: number): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let bins = from; bins < from + 8; bins += 0.02) highest = Math.max(highest, levelDb(weights, bins));
  return highest;
}

describe.each(Object.keys(PRINTED) as CosineWindow[])('%s', (name) => {
  const weights = cosineWindow(name, N);
  const [printed, computed] = [PRINTED[name], COMPUTED[name]];
  const enbw = equivalentNoiseBandwidthBins(weights);
  const scallop = -levelDb(weights, 0.5);
  const sideLobe = highestSideLobeDb(weights, COSINE_WINDOWS[name].length);
  const near = (found: number, expected: number, halfDigit: number) =>
    expect(Math.abs(found - expected)).toBeLessThanOrEqual(1.0001 * halfDigit);

  it('meets the printed table', () => {
    near(enbw, printed.enbw, 0.005);
    if (printed.scallop !== undefined) near(scallop, printed.scallop, 0.005);
    near(sideLobe, printed.sideLobe, 0.55); // −31.47 is printed as −32
  });

  it('meets the figures computed from the definitions', () => {
    near(coherentGain(weights), computed.gain, 1e-9);
    near(enbw, computed.enbw, 0.00005);
    near(scallop, computed.scallop, 0.00005);
    near(scallop + 10 * Math.log10(enbw), computed.worst, 0.0001); // the sum of two roundings
    near(sideLobe, computed.sideLobe, 0.01);
    near(widthBins(weights, 10 * Math.log10(2)), computed.half, 0.0005);
    near(widthBins(weights, 20 * Math.log10(2)), computed.quarter, 0.0005);
  });
});
