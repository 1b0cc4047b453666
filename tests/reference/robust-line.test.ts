/** The robust line beside published fits: least squares where nothing is wild, Huber's estimate where six values are. */

import { describe, expect, it } from 'vitest';
import { robustFit } from '../../src/core/math/robust-fit.ts';

const ones = (values: readonly unknown[]): number[] => values.map(() => 1);

describe('robust line', () => {
  // International calls from Belgium, 1950 to 1973, tens of millions; 1964 to 1969 were counted otherwise.
  // Rousseeuw & Leroy, Robust Regression and Outlier Detection (1987), page 26, table 2 (from memory).
  const calls = [4.4, 4.7, 4.7, 5.9, 6.6, 7.3, 8.1, 8.8, 10.6, 12, 13.5, 14.9, 16.1, 21.2, 119, 124, 142, 159, 182, 212, 43, 24, 27, 29];
  const years = calls.map((_, index) => 50 + index);

  // Venables & Ripley, Modern Applied Statistics with S, 4th ed. (2002), section 6.5 (from memory): Huber's estimate with the scale by the
  // median gives intercept −102.622 (26.608), slope 2.041 (0.430), residual scale 9.032 on 22 degrees of freedom.
  // Printed figures stop at a change of 1e-4, as that library does unless told otherwise.
  it('is the published one for the Belgian calls', () => {
    const fit = robustFit({ columns: [ones(calls), years], values: calls, tolerance: 1e-4 })!;
    expect(Math.abs(fit.coefficients[0]! - -102.622)).toBeLessThan(0.0005);
    expect(Math.abs(fit.coefficients[1]! - 2.041)).toBeLessThan(0.0005);
    expect(Math.abs(fit.scale - 9.032)).toBeLessThan(0.0005);
    const [u0, u1] = [0, 3].map((at) => fit.standardDeviation * Math.sqrt(fit.unscaledCovariance[at]!));
    expect(Math.abs(u0! - 26.608)).toBeLessThan(0.0005);
    expect(Math.abs(u1! - 0.43)).toBeLessThan(0.0005);
    expect(fit.degreesOfFreedom).toBe(22);
  });

  // The same source: least squares gives −260.059 and 5.041 (from memory).
  it('is least squares where nothing counts as wild', () => {
    const fit = robustFit({ columns: [ones(calls), years], values: calls, smallestScale: 1e6 })!;
    expect(Math.abs(fit.coefficients[0]! - -260.059)).toBeLessThan(0.0005);
    expect(Math.abs(fit.coefficients[1]! - 5.041)).toBeLessThan(0.0005);
    expect(fit.weights.every((weight) => weight === 1)).toBe(true);
  });

  it('goes through points that lie on a line, and refuses columns that do not part', () => {
    const x = [1, 2, 3, 4, 5];
    const fit = robustFit({ columns: [ones(x), x], values: x.map((at) => 2 - 3 * at) })!;
    expect(fit.coefficients[0]).toBeCloseTo(2, 10);
    expect(fit.coefficients[1]).toBeCloseTo(-3, 10);
    expect(robustFit({ columns: [ones(x), x, x], values: x })).toBeUndefined();
    expect(() => robustFit({ columns: [ones(x), x], values: [1, 2] })).toThrow(RangeError);
  });
});
