/** Published inharmonicity of stiff strings against the solver: hinged ends, which is what their authors assume. */

import { describe, expect, test } from 'vitest';
import { partialHz } from '../../src/core/vibration/beam.ts';

/** A round steel wire tuned to a fundamental; the tension that an ideal string would need. */
function wire(given: { diameterM: number; lengthM: number; idealHz: number; modulusPa: number; densityKgPerM3: number }) {
  const { diameterM: d, lengthM: L, idealHz, modulusPa: E, densityKgPerM3: ρ } = given;
  const linearDensityKgPerM = (ρ * Math.PI * d * d) / 4;
  return {
    spanLengthM: L,
    linearDensityKgPerM,
    bendingStiffnessNm2: (E * Math.PI * d ** 4) / 64,
    forceN: linearDensityKgPerM * (2 * L * idealHz) ** 2,
    fixity: [0, 0] as const,
  };
}
const centsAbove = (string: ReturnType<typeof wire>, idealHz: number, number: number): number =>
  1200 * Math.log2(partialHz({ ...string, number }) / (number * idealHz));

describe('Young, J. Acoust. Soc. Am. 24 (1952) 267, abstract', () => {
  // Q/ρ = 25.5e10 (cm/s)²; cents = 3.4e13 n² d²/(ν0² l⁴) with lengths in cm.
  const steel = { modulusPa: 25.5e6 * 7850, densityKgPerM3: 7850 };
  const printed = (n: number, dCm: number, lCm: number, hz: number): number => (3.4e13 * n * n * dCm * dCm) / (hz * hz * lCm ** 4);

  test.each([
    { dCm: 0.1, lCm: 62, hz: 261.6, n: 1 },
    { dCm: 0.1, lCm: 62, hz: 261.6, n: 2 },
    { dCm: 0.1, lCm: 62, hz: 261.6, n: 4 },
    { dCm: 0.09, lCm: 33, hz: 523.3, n: 2 },
    { dCm: 0.08, lCm: 9, hz: 2093, n: 1 },
  ])('mode $n of $dCm cm on $lCm cm at $hz Hz', ({ dCm, lCm, hz, n }) => {
    const string = wire({ ...steel, diameterM: dCm / 100, lengthM: lCm / 100, idealHz: hz });
    // The constant is printed with two digits, and is the first term of a series.
    expect(centsAbove(string, hz, n) / printed(n, dCm, lCm, hz)).toBeCloseTo(1, 1);
    expect(Math.abs(centsAbove(string, hz, n) / printed(n, dCm, lCm, hz) - 1)).toBeLessThan(0.02);
  });

  test('about 1.2 cents for the second mode of the middle C string', () => {
    const string = wire({ ...steel, diameterM: 0.00103, lengthM: 0.655, idealHz: 261.6 }); // wire and length as such instruments have them, ours
    expect(Math.abs(centsAbove(string, 261.6, 2) - 1.2)).toBeLessThan(0.15);
  });
});

describe('a plain steel G string of a guitar, physics.stackexchange.com, answer 664548', () => {
  // Printed: EI/(L² T) = 9.725e-6 at 196 Hz. Wire and length are ours, as such instruments have them, and give it.
  const string = wire({ diameterM: 0.016 * 0.0254, lengthM: 25.5 * 0.0254, idealHz: 196, modulusPa: 200e9, densityKgPerM3: 7850 });

  test('has the printed ratio of stiffness to tension', () => {
    expect(string.bendingStiffnessNm2 / (string.spanLengthM ** 2 * string.forceN)).toBeCloseTo(9.725e-6, 8);
  });

  test('rings at n f0 sqrt(1 + n² π² ε)', () => {
    for (const number of [1, 2, 5, 10]) {
      const expected = number * 196 * Math.sqrt(1 + number ** 2 * Math.PI ** 2 * 9.725e-6);
      expect(Math.abs(partialHz({ ...string, number }) / expected - 1)).toBeLessThan(1e-6);
    }
  });
});
