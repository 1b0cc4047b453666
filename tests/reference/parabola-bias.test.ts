/**
 * A parabola through the logarithms of three bins misses a peak between bins by a bias that noise does not average out. The known size of
 * it is met by our windows and spectra; and the partials, which begin at such a parabola, end without it, since a fit follows.
 *
 * Largest bias in un-padded bins, zero-padding 1, 2 and 4, by exhaustive search over the place between bins (own computation from the
 * windows' closed transforms; Abe and Smith, AES 117th Convention (2004), give such curves; from memory).
 */
import { describe, expect, it } from 'vitest';
import { powerOfTwoFrom } from '../../src/core/math/fft.ts';
import { extractSinusoids } from '../../src/core/partials/extract.ts';
import { binGrid } from '../../src/core/spectrum/damped-sinusoid.ts';
import { spectrumMaker } from '../../src/core/spectrum/spectrum.ts';
import type { CosineWindow } from '../../src/core/spectrum/window.ts';
import { tones } from '../support/tones.ts';

const LARGEST_BIAS: readonly (readonly [CosineWindow, number, number])[] = [
  ['rectangular', 1, 0.167],
  ['rectangular', 2, 1.04e-2],
  ['hann', 1, 1.6e-2],
  ['hann', 2, 1.63e-3],
  ['hann', 4, 1.95e-4],
  ['blackman', 1, 6.64e-3],
  ['blackman', 2, 7.68e-4],
  ['blackman', 4, 9.43e-5],
  ['blackmanHarris4', 1, 3.2e-3],
  ['blackmanHarris4', 2, 3.85e-4],
];

const rateHz = 8192;
const N = 1024;

/** Where a parabola puts the peak, in un-padded bins. */
function parabolaBins(levels: Float64Array, padding: number): number {
  const top = levels.indexOf(Math.max(...levels));
  const [a, b, c] = [-1, 0, 1].map((offset) => Math.log(levels[top + offset]!)) as [number, number, number];
  return (top + (0.5 * (a - c)) / (a - 2 * b + c)) / padding;
}

describe.each(LARGEST_BIAS)('%s window, padded %d times', (window, padding, expected) => {
  it(`misses by at most ${expected} bins`, () => {
    const maker = spectrumMaker({ length: N, sampleRateHz: rateHz, window, padding });
    let largest = 0;
    for (let part = 0; part < 1; part += 0.02) {
      const bins = N / 4 + part; // far from its mirror image, which the table knows nothing of
      for (const phase of [0, Math.PI / 2]) {
        const samples = tones([{ frequencyHz: (bins * rateHz) / N, amplitude: 1, phase }], { rateHz, count: N });
        largest = Math.max(largest, Math.abs(parabolaBins(maker.amplitudes(samples), padding) - bins));
      }
    }
    // The mirror image moves a rectangular window's peak by some thousandths of a bin, and the step of the search misses a little of the top.
    const mirror = window === 'rectangular' ? 4e-3 : 0;
    expect(largest).toBeLessThan(1.02 * expected + mirror);
    expect(largest).toBeGreaterThan(0.95 * expected - mirror);
  });
});

describe('a partial of a ring, wherever it lies between bins', () => {
  const count = 4000;
  const grid = binGrid({ rateHz, length: count, size: powerOfTwoFrom(count), highestHz: 3000 });
  it.each([0, 0.1, 0.25, 0.4, 0.5, 0.6, 0.9])('at %d of a bin, has no such bias', (part) => {
    const frequencyHz = (60 + part) * grid.binWidthHz;
    const samples = tones([{ frequencyHz, amplitude: 0.3, decayS: 0.18, phase: 1 }], { rateHz, count });
    const noise = new Float64Array(grid.binCount).fill(1e-9);
    const [found] = extractSinusoids({ samples, grid, noise, room: new Uint8Array(grid.binCount) });
    // A thousandth of the least bias that the table has for an un-padded window.
    expect(Math.abs(found!.frequencyHz - frequencyHz) / grid.binWidthHz).toBeLessThan(3e-6);
  });
});
