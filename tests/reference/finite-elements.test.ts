/** Cubic finite elements of a tensioned beam, the textbooks' matrices: another method than the frequency equation, over the whole range of use. */

import { expect, test } from 'vitest';
import { partialHz } from '../../src/core/vibration/beam.ts';
import { finiteElementPartialsHz } from '../support/finite-element-beam.ts';

const SPAN = { forceN: 10, spanLengthM: 0.15, linearDensityKgPerM: 0.0078 };

test.each([0.002, 0.02, 0.1, 1])('sqrt(EI/(T L²)) = %f: partials 1 to 4 within 1e-5, whatever the ends', (slackness) => {
  for (const fixity of [
    [0, 0],
    [0, 1],
    [1, 1],
    [0.3, 0.9],
  ] as const) {
    const span = { ...SPAN, bendingStiffnessNm2: 10 * (slackness * 0.15) ** 2, fixity };
    finiteElementPartialsHz(span, 4, 60).forEach((hz, index) => {
      expect(Math.abs(partialHz({ ...span, number: index + 1 }) / hz - 1)).toBeLessThan(1e-5);
    });
  }
});

test('without stiffness the elements ring as the string does', () => {
  const [first] = finiteElementPartialsHz({ ...SPAN, bendingStiffnessNm2: 1e-12, fixity: [0, 0] }, 1, 40);
  expect(first! / (Math.sqrt(10 / 0.0078) / 0.3)).toBeCloseTo(1, 5);
});
