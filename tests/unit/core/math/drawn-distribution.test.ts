import { expect, test } from 'vitest';
import { drawnDistribution } from '../../../../src/core/math/drawn-distribution.ts';
import { createRandom } from '../../../../src/core/math/random.ts';

test('of many normal draws: the moments and quantiles of the normal distribution', () => {
  const random = createRandom(4);
  const drawn = drawnDistribution(Float64Array.from({ length: 100_000 }, () => 7 + 2 * random.gaussian()));
  expect(drawn.mean).toBeCloseTo(7, 1);
  expect(drawn.standardDeviation).toBeCloseTo(2, 1);
  // Normal distribution, 97.5 %: 1.959964 standard deviations.
  expect(Math.abs(drawn.quantile(0.975) - (7 + 2 * 1.959964))).toBeLessThan(0.05);
  expect(drawn.effectiveDraws).toBeCloseTo(100_000, 6);
  const { from, binWidth, shares } = drawn.histogram(20);
  expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  const middle = Math.floor((7 - from) / binWidth);
  expect(shares[middle]!).toBeGreaterThan(shares[0]!);
});

test('weights count as so many draws', () => {
  const weighed = drawnDistribution(Float64Array.of(3, 1, 2), Float64Array.of(1, 2, 1));
  const plain = drawnDistribution(Float64Array.of(1, 1, 2, 3));
  expect(weighed.mean).toBeCloseTo(plain.mean, 12);
  expect(weighed.standardDeviation).toBeCloseTo(plain.standardDeviation, 12);
  expect([0.2, 0.5, 0.7, 0.9].map((share) => weighed.quantile(share))).toEqual([1, 1, 2, 3]);
  expect(weighed.effectiveDraws).toBeCloseTo(16 / 6, 12);
});

test('nothing to go by is a caller’s mistake', () => {
  expect(() => drawnDistribution(new Float64Array(0))).toThrow(RangeError);
  expect(() => drawnDistribution(Float64Array.of(1), Float64Array.of(0))).toThrow(RangeError);
});
