import { describe, expect, test } from 'vitest';
import { coverageFactorOf, effectiveDegreesOfFreedom, firstOrderHolds, propagated } from '../../../../src/core/math/propagation.ts';

test('a product adds relative uncertainties in squares', () => {
  const inputs = [
    { name: 'a', value: 3, standardUncertainty: 0.03 },
    { name: 'b', value: 5, standardUncertainty: 0.1 },
  ];
  const result = propagated(inputs, ([a, b]) => a! * b!);
  expect(result.value).toBe(15);
  expect(result.standardUncertainty).toBeCloseTo(15 * Math.hypot(0.01, 0.02), 12);
  expect(result.contributions.map(({ sensitivity }) => sensitivity)).toEqual([expect.closeTo(5, 9), expect.closeTo(3, 9)]);
  expect(result.degreesOfFreedom).toBe(Infinity);
});

test('an input that is certain has no sensitivity to show', () => {
  const result = propagated([{ name: 'a', value: 2, standardUncertainty: 0 }], ([a]) => a! ** 2);
  expect(result).toMatchObject({ value: 4, standardUncertainty: 0, degreesOfFreedom: Infinity });
});

describe('effective degrees of freedom', () => {
  test('of one group are its own; of equals they add', () => {
    expect(effectiveDegreesOfFreedom([{ standardUncertainty: 0.3, degreesOfFreedom: 5 }])).toBeCloseTo(5, 12);
    const equal = { standardUncertainty: 1, degreesOfFreedom: 7 };
    expect(effectiveDegreesOfFreedom([equal, equal, equal])).toBeCloseTo(21, 12);
  });

  test('few ones drown in what is well known', () => {
    const few = { standardUncertainty: 1, degreesOfFreedom: 3 };
    expect(effectiveDegreesOfFreedom([few, { standardUncertainty: 3, degreesOfFreedom: Infinity }])).toBeCloseTo(300, 9);
  });

  test('are cut to a whole number before t is read, and never below one', () => {
    // GUM, table G.2, 95 %: ν 4 2.78, ν 5 2.57, ν 1 12.71, ∞ 1.960.
    expect(coverageFactorOf(4.99, 0.95)).toBeCloseTo(2.78, 2);
    expect(coverageFactorOf(5, 0.95)).toBeCloseTo(2.57, 2);
    expect(coverageFactorOf(0.4, 0.95)).toBeCloseTo(12.71, 2);
    expect(coverageFactorOf(Infinity, 0.95)).toBeCloseTo(1.96, 3);
  });
});

test('first order holds where both ends agree to half the last digit of u', () => {
  // u 0.44: one digit 0.4, half of its last place 0.05.
  const linear = { value: 10, standardUncertainty: 0.44, expanded: 0.88 };
  expect(firstOrderHolds(linear, { low: 9.08, high: 10.92 })).toBe(true);
  expect(firstOrderHolds(linear, { low: 9.06, high: 10.92 })).toBe(false);
  expect(firstOrderHolds(linear, { low: 9.12, high: 10.94 })).toBe(false);
  expect(firstOrderHolds(linear, { low: Number.NEGATIVE_INFINITY, high: 10.9 })).toBe(false);
});
