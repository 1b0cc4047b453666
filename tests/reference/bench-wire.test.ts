/** The belt bench on a string of which others published the inharmonicity: partials by their law, not by ours; density and bending stiffness must come out. */

import { describe, expect, test } from 'vitest';
import { benchFit } from '../../src/core/belt/bench-fit.ts';

describe('Young, J. Acoust. Soc. Am. 24 (1952) 267, abstract', () => {
  // Mode n of a plain steel wire lies 3.4e13 n² d²/(ν0² l⁴) cents above n ν0, d and l in cm; Q/ρ = 25.5e10 (cm/s)².
  const centsAbove = (n: number, dCm: number, lCm: number, hz: number): number => (3.4e13 * n * n * dCm * dCm) / (hz * hz * lCm ** 4);
  const DENSITY_KG_PER_M3 = 7850;
  const MODULUS_PA = 25.5e6 * DENSITY_KG_PER_M3;

  test('wires of 1 mm on 62 and 31 cm, two tensions, give back μ and E I = E π d⁴/64', () => {
    const d = 0.001;
    const linearDensity = (DENSITY_KG_PER_M3 * Math.PI * d * d) / 4;
    const stiffness = (MODULUS_PA * Math.PI * d ** 4) / 64;
    const told = (value: number, relative: number) => ({ value, standardUncertainty: value * relative });
    const lengths = [0.62, 0.31];
    const forces = [300, 650];
    const fit = benchFit({
      spans: lengths.map((lengthM) => ({ lengthM: told(lengthM, 0.0002) })),
      loads: forces.map((forceN) => ({ forceN: told(forceN, 0.0005) })),
      takes: lengths.flatMap((lengthM, span) =>
        forces.map((forceN, load) => {
          const hz = Math.sqrt(forceN / linearDensity) / (2 * lengthM);
          return {
            span,
            load,
            sharedRelativeU: 0,
            partials: [1, 2, 3, 4].map((number) => ({
              number,
              frequencyHz: told(number * hz * 2 ** (centsAbove(number, 100 * d, 100 * lengthM, hz) / 1200), 0.0002),
            })),
          };
        }),
      ),
      forceScaleRelativeU: 0,
      prior: {
        linearDensityKgPerM: told(linearDensity * 1.08, 0.1),
        bendingStiffnessNm2: { low: stiffness / 4, high: stiffness * 2 },
      },
    })!;
    expect(Math.abs(fit.linearDensityKgPerM.value / linearDensity - 1)).toBeLessThan(0.003);
    // Their constant is printed with two digits; the bench must also say what it does not know.
    const { value, low, high } = fit.bendingStiffnessNm2;
    expect(Math.abs(value / stiffness - 1)).toBeLessThan(0.2);
    expect(low).toBeLessThan(stiffness);
    expect(high).toBeGreaterThan(stiffness);
    // The law is that of hinged ends.
    expect(fit.fixity.low).toBeLessThan(0.02);
    expect(fit.fixity.value).toBeLessThan(0.1);
  });
});
