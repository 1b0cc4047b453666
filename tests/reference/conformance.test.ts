/** Conformance probabilities that the guide on conformity assessment prints. Its figures are given here from memory; each follows from its inputs to the digits printed. */
import { expect, it } from 'vitest';
import { conformanceOf, verdictOf } from '../../src/core/verdict/conformance.ts';

it.each([
  // JCGM 106:2012, 7.2.3 (from memory): breakdown voltage of a diode, −5.47 V with u 0.05 V, at most −5.40 V: 92 %
  { name: 'upper limit', value: -5.47, standardUncertainty: 0.05, range: { high: -5.4 }, inside: 0.92 },
  // JCGM 106:2012, 7.2.4 (from memory): pressure a vessel withstands, 509.7 kPa with u 8.6 kPa, at least 490 kPa: 99 %
  { name: 'lower limit', value: 509.7, standardUncertainty: 8.6, range: { low: 490 }, inside: 0.99 },
  // JCGM 106:2012, 7.4 (from memory): kinematic viscosity of an oil, 13.6 mm²/s with u 1.8 mm²/s, from 12.5 to 16.3 mm²/s: 66 %
  { name: 'both limits', value: 13.6, standardUncertainty: 1.8, range: { low: 12.5, high: 16.3 }, inside: 0.66 },
])('$name as printed', ({ value, standardUncertainty, range, inside }) => {
  const found = conformanceOf({ value, standardUncertainty }, range);
  expect(Math.abs(found.inside - inside)).toBeLessThan(0.005);
  expect(found.below + found.inside + found.above).toBeCloseTo(1, 12);
});

it('gives a verdict from 90 % on and not before', () => {
  // Φ(1.2816) = 0.9: a value that far above the low end of a range is inside at 90 % (normal tables)
  const at = (z: number) => verdictOf(conformanceOf({ value: z, standardUncertainty: 1 }, { low: 0, high: 100 }));
  expect([at(1.283), at(1.28), at(-1.28), at(-1.283)]).toEqual(['met', 'undecided', 'undecided', 'low']);
  expect(verdictOf(conformanceOf({ value: 101.3, standardUncertainty: 1 }, { low: 0, high: 100 }))).toBe('high');
});
