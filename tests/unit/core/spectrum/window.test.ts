import { describe, expect, it } from 'vitest';
import {
  COSINE_WINDOWS,
  type CosineWindow,
  coherentGain,
  cosineWindow,
  decayWindow,
  energy,
  equivalentNoiseBandwidthBins,
} from '../../../../src/core/spectrum/window.ts';
import { directSum } from '../../../support/tones.ts';

const NAMES = Object.keys(COSINE_WINDOWS) as CosineWindow[];

describe.each(NAMES)('%s', (name) => {
  const a: readonly number[] = COSINE_WINDOWS[name];
  const weights = cosineWindow(name, 240);

  // Orthogonality of the cosines over one period: Σw = N a0, Σw² = N (a0² + ½ Σ a_j²).
  it('has the sums of its cosines', () => {
    const squares = a.reduce((sum, x, j) => sum + (j === 0 ? x * x : (x * x) / 2), 0);
    expect(coherentGain(weights)).toBeCloseTo(a[0]!, 12);
    expect(energy(weights) / 240).toBeCloseTo(squares, 12);
    expect(equivalentNoiseBandwidthBins(weights)).toBeCloseTo(squares / a[0]! ** 2, 12);
  });

  // A periodic window touches only as many bins as it has cosines: −a_1/2 at bin 1, a_2/2 at bin 2, nothing beyond.
  it('is periodic: its transform stands on its own few bins', () => {
    for (let k = 0; k < 8; k++) {
      const { re, im } = directSum(weights, k, 240);
      const coefficient = (a[k] ?? 0) * (k === 0 ? 1 : 0.5) * (k % 2 ? -1 : 1);
      expect(re / 240).toBeCloseTo(coefficient, 12);
      expect(im / 240).toBeCloseTo(0, 12);
    }
  });
});

it('decayWindow begins at 1 and falls to 1/e in its decay time', () => {
  const weights = decayWindow({ length: 900, decaySamples: 150 });
  expect(weights.length).toBe(900);
  expect(weights[0]).toBe(1);
  expect(weights[150]).toBeCloseTo(Math.exp(-1), 12);
  expect(weights[750]).toBeCloseTo(Math.exp(-5), 12);
});
