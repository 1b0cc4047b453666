import { describe, expect, it } from 'vitest';
import { mixtureQuantile, shareBelow } from '../../../../src/core/math/mixture.ts';

describe('a mixture of normal distributions', () => {
  // Standard normal quantile of 0.975: Abramowitz & Stegun, table 26.5
  it('has the normal quantiles where it is one', () => {
    expect(mixtureQuantile(0.975, [{ weight: 1, mean: 2, sd: 3 }])).toBeCloseTo(2 + 3 * 1.959964, 5);
  });

  it('counts steps, and finds them', () => {
    const parts = [
      { weight: 0.5, mean: 0, sd: 0 },
      { weight: 0.5, mean: 1, sd: 0 },
    ];
    expect(shareBelow(0.5, parts)).toBe(0.5);
    expect(mixtureQuantile(0.7, parts)).toBeCloseTo(1, 12);
  });

  it('is the inverse of its own share', () => {
    const parts = [
      { weight: 0.3, mean: -1, sd: 0.2 },
      { weight: 0.7, mean: 2, sd: 1 },
    ];
    for (const share of [0.025, 0.3, 0.5, 0.975]) expect(shareBelow(mixtureQuantile(share, parts), parts)).toBeCloseTo(share, 10);
  });
});
