import quantile from '@stdlib/stats-base-dists-t-quantile';
import { expect, test } from 'vitest';
import { coverageFactor, incompleteBeta, lnGamma, studentCoverage } from '../../../../src/core/math/student-t.ts';

test('the coverage factor agrees with an independent library, whole and broken degrees of freedom alike', () => {
  for (const degreesOfFreedom of [1, 1.5, 2, 3, 4, 5.25, 7, 12, 16.7, 40, 300, 1e5]) {
    for (const coverage of [0.5, 0.6827, 0.9, 0.95, 0.99, 0.999]) {
      const expected = quantile(0.5 + coverage / 2, degreesOfFreedom);
      expect(Math.abs(coverageFactor({ degreesOfFreedom, coverage }) / expected - 1)).toBeLessThan(1e-9);
    }
  }
});

test('one degree of freedom is the Cauchy distribution, two have a closed form', () => {
  for (const t of [0.2, 1, 3, 12]) {
    expect(studentCoverage(t, 1)).toBeCloseTo((2 / Math.PI) * Math.atan(t), 13);
    expect(studentCoverage(t, 2)).toBeCloseTo(t / Math.sqrt(2 + t * t), 13);
  }
});

test('the functions below it meet values that everybody knows', () => {
  expect(lnGamma(1)).toBeCloseTo(0, 13);
  expect(lnGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
  expect(lnGamma(6)).toBeCloseTo(Math.log(120), 12);
  expect(incompleteBeta(0.3, 1, 1)).toBeCloseTo(0.3, 13);
  expect(incompleteBeta(0.3, 2, 1)).toBeCloseTo(0.09, 13);
  expect(incompleteBeta(0, 2, 3)).toBe(0);
  expect(incompleteBeta(1, 2, 3)).toBe(1);
});

test('what makes no sense is refused', () => {
  expect(() => coverageFactor({ degreesOfFreedom: 0, coverage: 0.95 })).toThrow(RangeError);
  expect(() => coverageFactor({ degreesOfFreedom: 5, coverage: 1 })).toThrow(RangeError);
});
