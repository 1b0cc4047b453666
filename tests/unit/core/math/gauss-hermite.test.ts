import { expect, test } from 'vitest';
import { normalNodes } from '../../../../src/core/math/gauss-hermite.ts';

test('the moments of a normal distribution come out exactly', () => {
  for (const count of [1, 2, 5, 7, 12, 20]) {
    const { deviations, weights } = normalNodes(count);
    // E[x^k] of a standard normal: 0 for odd k, else (k − 1)!!
    let doubleFactorial = 1;
    for (let k = 0; k < 2 * count; k++) {
      const moment = deviations.reduce((sum, x, i) => sum + weights[i]! * x ** k, 0);
      if (k > 0 && k % 2 === 0) doubleFactorial *= k - 1;
      if (k % 2 === 1) expect(Math.abs(moment)).toBeLessThan(1e-9 * doubleFactorial * (k + 1));
      else expect(Math.abs(moment / doubleFactorial - 1)).toBeLessThan(1e-9);
    }
  }
});

test('a count that makes no sense is refused', () => {
  expect(() => normalNodes(0)).toThrow(RangeError);
  expect(() => normalNodes(2.5)).toThrow(RangeError);
});
