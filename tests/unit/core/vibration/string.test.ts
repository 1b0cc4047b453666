import { expect, test } from 'vitest';
import { forceOfString, fundamentalOfString } from '../../../../src/core/vibration/string.ts';

test('the example of the docstring', () => {
  expect(forceOfString({ fundamentalHz: 113.2, spanLengthM: 0.15, linearDensityKgPerM: 0.0084 })).toBeCloseTo(9.69, 2);
});

test('the frequency of a force gives the force back', () => {
  const span = { spanLengthM: 0.31, linearDensityKgPerM: 0.0117 };
  const fundamentalHz = fundamentalOfString({ ...span, forceN: 23.4 });
  expect(forceOfString({ ...span, fundamentalHz })).toBeCloseTo(23.4, 12);
});

test('a quantity that cannot be is refused by its name', () => {
  expect(() => forceOfString({ fundamentalHz: 100, spanLengthM: -0.15, linearDensityKgPerM: 0.0084 })).toThrow(/spanLengthM.*-0\.15/u);
  expect(() => fundamentalOfString({ forceN: 0, spanLengthM: 0.15, linearDensityKgPerM: 0.0084 })).toThrow(/forceN/u);
  expect(() => forceOfString({ fundamentalHz: Number.NaN, spanLengthM: 0.15, linearDensityKgPerM: 0.0084 })).toThrow(RangeError);
});
