/** GUM (JCGM 100:2008), H.1: an end gauge of 50 mm against a known one, from the observations' own uncertainties to the expanded uncertainty. */

import { expect, test } from 'vitest';
import { drawnDistribution } from '../../src/core/math/drawn-distribution.ts';
import { coverageFactorOf, effectiveDegreesOfFreedom, expandedUncertainty, propagated } from '../../src/core/math/propagation.ts';
import { createRandom } from '../../src/core/math/random.ts';

const NM = 1e-9;

// H.1.3.2: mean of five observations with a pooled deviation (24 degrees of freedom), random and systematic error of the comparator.
const DIFFERENCE = [
  { standardUncertainty: 5.8, degreesOfFreedom: 24 },
  { standardUncertainty: 3.9, degreesOfFreedom: 5 },
  { standardUncertainty: 6.7, degreesOfFreedom: 8 },
];
const differenceU = Math.hypot(...DIFFERENCE.map((part) => part.standardUncertainty));

/** l = lS + d − lS (δα θ + αS δθ), equation H.3 with table H.1. */
const INPUTS = [
  { name: 'lS', value: 50.000623e-3, standardUncertainty: 25 * NM, degreesOfFreedom: 18 },
  {
    name: 'd',
    value: 215 * NM,
    standardUncertainty: differenceU * NM,
    degreesOfFreedom: effectiveDegreesOfFreedom(DIFFERENCE),
  },
  { name: 'αS', value: 11.5e-6, standardUncertainty: 2e-6 / Math.sqrt(3) },
  { name: 'θ', value: -0.1, standardUncertainty: Math.hypot(0.2, 0.5 / Math.SQRT2) },
  { name: 'δα', value: 0, standardUncertainty: 1e-6 / Math.sqrt(3), degreesOfFreedom: 50 },
  { name: 'δθ', value: 0, standardUncertainty: 0.05 / Math.sqrt(3), degreesOfFreedom: 2 },
];
const lengthM = ([lS, d, αS, θ, δα, δθ]: readonly number[]): number => lS! + d! - lS! * (δα! * θ! + αS! * δθ!);

test('H.1.3.2: u(d) = 9.7 nm with 25.6 degrees of freedom', () => {
  expect(differenceU).toBeCloseTo(9.7, 1);
  expect(Math.abs(effectiveDegreesOfFreedom(DIFFERENCE) - 25.6)).toBeLessThan(0.6); // 6.7 ± 0.05 nm alone moves it by 0.6
});

test('H.1.4 and table H.1: l = 50.000 838 mm, u_c² = 1002 nm², u_c = 32 nm', () => {
  const result = propagated(INPUTS, lengthM);
  expect(result.value * 1e3).toBeCloseTo(50.000838, 6);
  const nm = Object.fromEntries(result.contributions.map((line) => [line.name, line.standardUncertainty / NM]));
  expect(nm.lS).toBeCloseTo(25, 0);
  expect(nm.d).toBeCloseTo(9.7, 1);
  expect(nm.αS).toBeCloseTo(0, 9);
  expect(nm.θ).toBeCloseTo(0, 9);
  expect(nm.δα).toBeCloseTo(2.9, 1);
  expect(nm.δθ).toBeCloseTo(16.6, 1);
  expect(Math.abs((result.standardUncertainty / NM) ** 2 - 1002)).toBeLessThan(5); // the table adds terms rounded to a tenth
  expect(Math.round(result.standardUncertainty / NM)).toBe(32);
});

test('H.1.6: ν_eff = 16.7, cut to 16; t99 = 2.92; U99 = 93 nm', () => {
  const result = propagated(INPUTS, lengthM);
  expect(Math.abs(result.degreesOfFreedom - 16.7)).toBeLessThan(0.1);
  expect(coverageFactorOf(result.degreesOfFreedom, 0.99)).toBeCloseTo(2.92, 2);
  expect(Math.abs(expandedUncertainty(result, 0.99) / NM - 93)).toBeLessThan(0.6); // 2.92 × 32 there, u_c not rounded here
});

test('H.1.7: the term that first order does not see makes it 34 nm, and draws show it', () => {
  const random = createRandom(1995);
  const draws = Float64Array.from({ length: 200_000 }, () =>
    lengthM(INPUTS.map(({ value, standardUncertainty }) => value + standardUncertainty * random.gaussian())),
  );
  expect(Math.round(drawnDistribution(draws).standardDeviation / NM)).toBe(34);
});
