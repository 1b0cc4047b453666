import { describe, expect, test } from 'vitest';
import { forceFromPartial, partialHz } from '../../../../src/core/vibration/beam.ts';
import { ritzPartialsHz } from '../../../support/ritz-beam.ts';

const BELT = { linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4 };
const SPAN = { ...BELT, spanLengthM: 0.15, fixity: [0.5, 0.5] as const };

describe('against Ritz’s method, which knows energies only', () => {
  test.each([
    { forceN: 10, spanLengthM: 0.15, fixity: [0, 0], terms: 120 },
    { forceN: 10, spanLengthM: 0.15, fixity: [1, 1], terms: 120 },
    { forceN: 10, spanLengthM: 0.15, fixity: [0.3, 0.9], terms: 120 },
    { forceN: 3, spanLengthM: 0.04, fixity: [0, 1], terms: 60 },
    { forceN: 0.05, spanLengthM: 0.05, fixity: [0.8, 0.1], terms: 60 },
    { forceN: 0.002, spanLengthM: 0.05, fixity: [1, 1], terms: 60 },
    { forceN: 40, spanLengthM: 0.4, fixity: [0.5, 0.5], terms: 220 },
  ] as const)('$forceN N on $spanLengthM m, ends $fixity', ({ terms, ...span }) => {
    ritzPartialsHz({ ...BELT, ...span }, 4, terms).forEach((expectedHz, i) => {
      const solvedHz = partialHz({ ...BELT, ...span, number: i + 1 });
      expect(Math.abs(solvedHz / expectedHz - 1)).toBeLessThan(1e-6);
    });
  });
});

describe('limits that have a closed form', () => {
  test('without stiffness the beam is the string, whatever the ends', () => {
    for (const fixity of [
      [0, 0],
      [1, 1],
      [0.2, 0.7],
    ] as const) {
      const span = { ...SPAN, bendingStiffnessNm2: 0, fixity, number: 3 };
      expect(partialHz({ ...span, forceN: 10 })).toBeCloseTo((3 * Math.sqrt(10 / 0.0078)) / 0.3, 9);
      expect(forceFromPartial({ ...span, partialHz: 300 })).toBeCloseTo(4 * 0.0078 * 0.15 ** 2 * 100 ** 2, 9);
    }
  });

  test('a stiffness next to nothing comes down to it', () => {
    const string = partialHz({ ...SPAN, bendingStiffnessNm2: 0, forceN: 10, number: 2 });
    const nearly = partialHz({ ...SPAN, bendingStiffnessNm2: 1e-14, forceN: 10, number: 2 });
    expect(nearly / string - 1).toBeGreaterThan(0);
    expect(nearly / string - 1).toBeLessThan(1e-6);
  });

  test('hinged ends: T = 4 μ L² f²/n² − n² π² EI/L²', () => {
    for (const number of [1, 2, 5]) {
      const forceN = 4 * 0.0078 * (0.15 * 130) ** 2 - ((number * Math.PI) / 0.15) ** 2 * 1.2e-4;
      expect(forceFromPartial({ ...SPAN, fixity: [0, 0], number, partialHz: number * 130 })).toBeCloseTo(forceN, 10);
    }
  });
});

describe('where there is no force', () => {
  const short = { ...BELT, spanLengthM: 0.05, number: 1 };
  // 50 mm of this belt ring without any force at 77.93 Hz between hinges (b = π) and at 176.7 Hz between clamps (b = 4.730041).
  const withoutForceHz = (b: number): number => (b ** 2 / (2 * Math.PI * 0.05 ** 2)) * Math.sqrt(1.2e-4 / 0.0078);

  test.each([
    { fixity: [0, 0], b: Math.PI },
    { fixity: [0, 1], b: 3.926602312047919 },
    { fixity: [1, 1], b: 4.730040744862704 },
  ] as const)('ends $fixity: none below the beam’s own frequency, a little above it', ({ fixity, b }) => {
    expect(forceFromPartial({ ...short, fixity, partialHz: 0.999 * withoutForceHz(b) })).toBeUndefined();
    const forceN = forceFromPartial({ ...short, fixity, partialHz: 1.001 * withoutForceHz(b) });
    expect(forceN).toBeGreaterThan(0);
    expect(forceN).toBeLessThan(0.005);
  });

  test('ends of constant fixity turn hinged as the force goes', () => {
    expect(forceFromPartial({ ...short, fixity: [0.5, 0.9], partialHz: 0.99 * withoutForceHz(Math.PI) })).toBeUndefined();
    expect(forceFromPartial({ ...short, fixity: [0.5, 0.9], partialHz: 1.01 * withoutForceHz(Math.PI) })).toBeLessThan(0.005);
  });
});

test('which end is which makes no difference, and nearly only their sum counts', () => {
  const at = (fixity: readonly [number, number]) => forceFromPartial({ ...SPAN, fixity, number: 1, partialHz: 122 })!;
  expect(at([0.2, 0.9])).toBeCloseTo(at([0.9, 0.2]), 12);
  expect(Math.abs(at([0, 1]) / at([0.5, 0.5]) - 1)).toBeLessThan(0.001);
});

test('what cannot be is refused by its name', () => {
  expect(() => partialHz({ ...SPAN, forceN: 10, number: 1.5 })).toThrow(/mode number/u);
  expect(() => partialHz({ ...SPAN, forceN: -1, number: 1 })).toThrow(/forceN/u);
  expect(() => partialHz({ ...SPAN, forceN: 10, number: 1, fixity: [0, 1.2] })).toThrow(/1\.2/u);
  expect(() => forceFromPartial({ ...SPAN, partialHz: 100, number: 1, bendingStiffnessNm2: -1e-4 })).toThrow(/bendingStiffnessNm2/u);
});
