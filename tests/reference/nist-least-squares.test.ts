/** NIST Statistical Reference Datasets, linear least squares: https://www.itl.nist.gov/div898/strd/lls/lls.shtml. Certified to 15 digits. */

import { describe, expect, it } from 'vitest';
import { refinedLeastSquares } from '../../src/core/math/refined-least-squares.ts';
import { digitsAgreeing, nistCoefficients, nistData, nistResidualDeviation } from '../support/nist-file.ts';

function fitted(name: string, degree: number) {
  const rows = nistData(name);
  const design = Float64Array.from(rows.flatMap(({ x }) => Array.from({ length: degree + 1 }, (_, power) => x ** power)));
  const fit = refinedLeastSquares({ design, response: rows.map(({ y }) => y) })!;
  const s = Math.sqrt(fit.residualSumOfSquares / (rows.length - degree - 1));
  const p = degree + 1;
  return {
    count: rows.length,
    s,
    coefficients: Array.from(fit.coefficients, (value, j) => ({ value, deviation: s * Math.sqrt(fit.inverse[j * p + j]!) })),
  };
}

describe('certified regressions', () => {
  // Norris: line, lower difficulty. Pontius: a load cell, quadratic. Wampler5: degree 5 under large residuals, the ill-conditioned one.
  it.each([
    { name: 'Norris', degree: 1, rows: 36, digits: 12 },
    { name: 'Pontius', degree: 2, rows: 40, digits: 12 },
    { name: 'Wampler5', degree: 5, rows: 21, digits: 11 },
  ])('$name: coefficients, their deviations and the residual deviation to $digits digits', ({ name, degree, rows, digits }) => {
    const fit = fitted(name, degree);
    const certified = nistCoefficients(name);
    expect(fit.count).toBe(rows);
    expect(certified).toHaveLength(degree + 1);
    for (const [j, { value, deviation }] of certified.entries()) {
      expect(digitsAgreeing(fit.coefficients[j]!.value, value)).toBeGreaterThan(digits);
      expect(digitsAgreeing(fit.coefficients[j]!.deviation, deviation)).toBeGreaterThan(digits);
    }
    expect(digitsAgreeing(fit.s, nistResidualDeviation(name))).toBeGreaterThan(digits);
  });
});
