/** Both forces of an open octave with their probabilities, and what a pluck with a finger on the middle leaves of them. */

import { expect, test } from 'vitest';
import { answerOf, type Take } from '../../../src/core/answer.ts';
import { octaveDoubt } from '../../../src/core/octave.ts';
import { partialHz } from '../../../src/core/vibration/beam.ts';
import { heardPluck, spanOf } from '../../support/heard.ts';

/** A span of 250 mm under 8 N whose first partial is below what the microphone hears, and whose higher ones have died: only the second is left. */
const SPAN = { forceN: 8, spanLengthM: 0.25, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.3, 0.3] as const };
const SECOND_HZ = partialHz({ ...SPAN, number: 2 });
const heard = heardPluck(SECOND_HZ, { partialNumbers: [1], rivalHz: SECOND_HZ / 2, leadOverRival: 1.4 });
const TAKE: Take = { sounds: [heard], setup: spanOf(0.25), sampleRateHz: 48_000 };

test('both forces are told, with probabilities that sum to 1', () => {
  const reading = answerOf(TAKE).reading!;
  expect(reading.grade).not.toBe('trusted');
  const { own, rival } = octaveDoubt(TAKE, reading)!;
  expect(own.probability + rival.probability).toBeCloseTo(1, 12);
  expect(own.probability).toBeCloseTo(1 / (1 + Math.exp(-1.4)), 12);
  expect(own.forceN!.low!).toBeGreaterThan(3 * SPAN.forceN);
  expect(rival.forceN!.low!).toBeLessThan(SPAN.forceN);
  expect(rival.forceN!.high!).toBeGreaterThan(SPAN.forceN);
});

test('the touched pluck decides, and the reading holds the force that there is', () => {
  const touched = heardPluck(SECOND_HZ * 1.002, { partialNumbers: [1] });
  const { reading, plucks } = answerOf({ ...TAKE, touched: [touched] });
  expect(reading!.reasons.map(({ id }) => id)).not.toContain('octave-not-certain');
  expect(reading!.forceN!.low!).toBeLessThan(SPAN.forceN);
  expect(reading!.forceN!.high!).toBeGreaterThan(SPAN.forceN);
  expect(reading!.pluckCount).toBe(1); // the touched one tells nothing of the force
  expect(plucks).toHaveLength(1);
  expect(octaveDoubt({ ...TAKE, touched: [touched] }, reading!)).toBeUndefined();
});

test('where the numbering is sure there is nothing to tell', () => {
  const sure: Take = { ...TAKE, sounds: [heardPluck(120)] };
  expect(octaveDoubt(sure, answerOf(sure).reading!)).toBeUndefined();
});
