import { expect, it } from 'vitest';
import { median, quantile } from '../../../../src/core/math/quantile.ts';

// Type 7 by its definition (Hyndman and Fan 1996): h = (n − 1) p + 1, x_⌊h⌋ + (h − ⌊h⌋)(x_⌊h⌋+1 − x_⌊h⌋), worked by hand.
it.each([
  [[7], 0.3, 7],
  [[1, 2, 3, 4], 0, 1],
  [[1, 2, 3, 4], 1, 4],
  [[1, 2, 3, 4], 0.25, 1.75],
  [[4, 1, 3, 2], 0.5, 2.5],
  [[10, 2, 40], 0.75, 25],
  [[-1, 5, 5, 9, 100], 0.9, 63.6],
])('of %j at %d is %d', (values, probability, expected) => {
  expect(quantile(values, probability)).toBeCloseTo(expected, 12);
});

it('orders numbers as numbers, and leaves the given order', () => {
  const values = [100, 9, -3, 20];
  expect(median(values)).toBe(14.5);
  expect(values).toEqual([100, 9, -3, 20]);
});

it('needs at least one value', () => {
  expect(() => quantile([], 0.5)).toThrow(RangeError);
});
