import { expect, test } from 'vitest';
import { normalCdf } from '../../../../src/core/math/normal.ts';

/** Abramowitz & Stegun 26.2.10: the power series, summed until nothing more is added; good to 1e-14 up to |z| = 4. */
function series(z: number): number {
  let term = z;
  let sum = 0;
  for (let n = 0; Math.abs(term) > 1e-18 * Math.abs(sum); n++) {
    sum += term / (2 * n + 1);
    term *= (-z * z) / (2 * (n + 1));
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}

test('the rational form agrees with the power series', () => {
  for (let z = -4.05; z < 4.1; z += 0.1) expect(Math.abs(normalCdf(z) - series(z))).toBeLessThan(2e-14);
});

test('the two forms meet where one hands over to the other, and both sides add up to 1', () => {
  expect(normalCdf(-7.071) / normalCdf(-7.0711)).toBeCloseTo(1 + 7.071 * 1e-4, 4);
  expect(normalCdf(-7.0710678) / normalCdf(-7.0710679)).toBeCloseTo(1, 5);
  for (const z of [0, 0.3, 2, 7.5]) expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
});

test('far out there is nothing, or everything', () => {
  expect(normalCdf(-40)).toBe(0);
  expect(normalCdf(40)).toBe(1);
  expect(normalCdf(-Infinity)).toBe(0);
  expect(normalCdf(Infinity)).toBe(1);
});
