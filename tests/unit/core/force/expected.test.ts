import { describe, expect, test } from 'vitest';
import { answerOf } from '../../../../src/core/answer.ts';
import { expectedFrequencyHz, expectedPartialsHz, frequencyUnderForce } from '../../../../src/core/force/expected.ts';
import { forceFromFrequency } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { MODEL_ERROR_EACH } from '../../../../src/core/force/partial-nodes.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { heardPluck, spanOf } from '../../../support/heard.ts';

const TARGET = { lowN: 6, highN: 9 };

describe('of a range of force', () => {
  test('the first partial at both ends, above the string and not far from it', () => {
    const { lowHz, highHz } = expectedFrequencyHz(spanOf(0.18), TARGET)!;
    const stringHz = (forceN: number) => Math.sqrt(forceN / 0.0078) / 0.36;
    expect(lowHz / stringHz(6)).toBeGreaterThan(1);
    expect(lowHz / stringHz(6)).toBeLessThan(1.05);
    expect(highHz / lowHz).toBeLessThan(Math.sqrt(9 / 6));
    expect(highHz / lowHz).toBeGreaterThan(1.2);
  });

  test('six partials, each above the one before', () => {
    const places = expectedPartialsHz(spanOf(0.18), TARGET);
    expect(places.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
    for (const [i, place] of places.entries()) {
      expect(place.highHz).toBeGreaterThan(place.lowHz);
      if (i > 0) expect(place.lowHz).toBeGreaterThan(places[i - 1]!.lowHz);
    }
  });
});

test('a range that begins at nothing begins with the tone of a slack belt', () => {
  const places = expectedPartialsHz(spanOf(0.18), { lowN: 0, highN: 9 });
  expect(places.map(({ highHz }) => highHz)).toEqual(expectedPartialsHz(spanOf(0.18), TARGET).map(({ highHz }) => highHz));
  for (const { number, lowHz } of places) {
    expect(lowHz).toBeGreaterThan(0);
    expect(lowHz).toBeLessThan(expectedPartialsHz(spanOf(0.18), { lowN: 0.1, highN: 9 })[number - 1]!.lowHz);
  }
});

describe('of a reading', () => {
  const setup = spanOf(0.15);

  test.each([
    [1e-4, [0, 0]],
    [2.5e-4, [1, 1]],
    [6e-5, [0.2, 0.9]],
  ] as const)('the places hold the partials of a belt of %s N m² between ends %s', (bendingStiffnessNm2, fixity) => {
    const truth = { forceN: 10, spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2, fixity };
    const { reading } = answerOf({ sounds: [heardPluck(partialHz({ ...truth, number: 1 }))], setup, sampleRateHz: 48_000 });
    for (const { number, lowHz, highHz } of expectedPartialsHz(setup, reading!)) {
      const trueHz = partialHz({ ...truth, number });
      expect(trueHz).toBeGreaterThanOrEqual(lowHz);
      expect(trueHz).toBeLessThanOrEqual(highHz);
      expect(highHz / lowHz).toBeLessThan(1.35);
    }
  });
});

test('without span or belt there is nothing to expect', () => {
  expect(expectedFrequencyHz({ ends: UNKNOWN_ENDS }, TARGET)).toBeUndefined();
  expect(expectedPartialsHz({ ends: UNKNOWN_ENDS }, TARGET)).toEqual([]);
});

describe('the frequency under a known force', () => {
  test('lies about that of middling ends and stiffness, and its interval holds the extremes of both', () => {
    const expected = frequencyUnderForce(spanOf(0.15), 10)!;
    const hz = (bendingStiffnessNm2: number, fixity: number) =>
      partialHz({ forceN: 10, spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2, fixity: [fixity, fixity], number: 1 });
    expect(Math.abs(expected.valueHz / hz(1.2e-4, 0.5) - 1)).toBeLessThan(0.01);
    expect(expected.lowHz).toBeLessThan(hz(5e-5, 0));
    expect(expected.highHz).toBeGreaterThan(hz(2.5e-4, 1));
  });

  test('read back gives the force: median to median', () => {
    for (const spanLengthM of [0.06, 0.15, 0.4]) {
      const setup = spanOf(spanLengthM);
      const { valueHz } = frequencyUnderForce(setup, 8)!;
      const back = forceFromFrequency({ frequencyHz: valueHz, relativeU: MODEL_ERROR_EACH }, knownSpan(setup)!)!;
      expect(back.value).toBeCloseTo(8, 4);
    }
  });

  test('is not told without span or belt', () => {
    expect(frequencyUnderForce({ ends: UNKNOWN_ENDS }, 8)).toBeUndefined();
  });
});
