import { expect, test } from 'vitest';
import { risingRoot } from '../../../../src/core/math/root.ts';

test('finds where a rising function passes zero, however bent', () => {
  const cases = [
    { value: (x: number) => x ** 3 - 2, root: Math.cbrt(2) },
    { value: (x: number) => Math.exp(8 * x) - 5, root: Math.log(5) / 8 },
    { value: (x: number) => Math.tanh(40 * (x - 1.3)), root: 1.3 },
    { value: (x: number) => Math.expm1(-30 * (2 - x)) + 0.9, root: 2 + Math.log(0.1) / 30 },
  ];
  for (const { value, root } of cases) {
    expect(Math.abs(risingRoot({ value, low: 0, high: 3, tolerance: 1e-9 }) - root)).toBeLessThan(1e-7);
  }
});

test('an end that is the root already is given back', () => {
  expect(risingRoot({ value: (x) => x, low: 0, high: 1, tolerance: 1e-9 })).toBe(0);
  expect(risingRoot({ value: (x) => x - 1, low: 0, high: 1, tolerance: 1e-9 })).toBe(1);
});

test('an end at infinity is a caller’s mistake, not a search without end', () => {
  expect(() => risingRoot({ value: (x) => x, low: -1, high: Number.POSITIVE_INFINITY, tolerance: 1e-6 })).toThrow(RangeError);
});
