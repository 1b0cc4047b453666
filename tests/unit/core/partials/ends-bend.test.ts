import { expect, it } from 'vitest';
import { endsBend, partialRatio } from '../../../../src/core/partials/series.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';

/** B that brings the second partial of a beam to its place in the law. */
function inharmonicityOf(ratio: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (partialRatio(2, middle) < ratio) low = middle;
    else high = middle;
  }
  return low;
}

const beam = (stiffness: number, fixity: number) =>
  [1, 2, 3, 4, 5, 6].map((number) =>
    partialHz({
      forceN: 10,
      spanLengthM: 0.2,
      linearDensityKgPerM: 0.008,
      bendingStiffnessNm2: 10 * (0.2 * stiffness) ** 2,
      fixity: [fixity, fixity],
      number,
    }),
  );

it.each([0.02, 0.03, 0.05, 0.08])(
  'clamped ends lower the partials about as told, hinged ones not at all, at sqrt(EI/T)/L %d',
  (stiffness) => {
    for (const [fixity, share] of [
      [0, 0],
      [1, 1],
    ] as const) {
      const hertz = beam(stiffness, fixity);
      const b = inharmonicityOf(hertz[1]! / hertz[0]!);
      for (let m = 3; m <= 6; m++) {
        const lower = Math.log(partialRatio(m, b) / (hertz[m - 1]! / hertz[0]!));
        expect(Math.abs(lower - share * endsBend(m, b))).toBeLessThan(0.5 * share * lower + 1e-5);
      }
    }
  },
);
