/** What a pluck with a finger on the middle tells: the belts are strings here, so that every place is a plain multiple. */

import { describe, expect, test } from 'vitest';
import { searchBounds } from '../../../../src/core/frequency/search-bounds.ts';
import { readAsRival, settledByTouch } from '../../../../src/core/frequency/touched-middle.ts';
import type { PluckSound } from '../../../../src/core/outcome.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { heardPluck, spanOf } from '../../../support/heard.ts';

const BOUNDS = searchBounds(spanOf(0.3));

/** Heard as one partial alone that may be the first or the second. */
const alone = (hertz: number): PluckSound => heardPluck(hertz, { partialNumbers: [1], rivalHz: hertz / 2, leadOverRival: 1.4 });
/** A touched span: its partials lie at the given frequencies, the first of them numbered 1 for want of better. */
const touchedAt = (...hertz: readonly number[]): PluckSound => {
  const sound = heardPluck(hertz[0]!);
  return {
    ...sound,
    partials: hertz.map((value, index) => ({
      number: index + 1,
      frequencyHz: { value, standardUncertainty: 0.001 * value },
      levelDbfs: -20 - 10 * index,
      decayS: 0.1,
    })),
  };
};
const leadOf = ({ evidence }: PluckSound): number => evidence.leadOverRival;

describe('one partial at 200 Hz, the span touched', () => {
  test('rings at 200 again: it was the second partial, and the first lies at half of it', () => {
    const settled = settledByTouch(alone(200), [touchedAt(200)], BOUNDS);
    expect(settled.partials.map(({ number }) => number)).toEqual([2]);
    expect(Math.abs(settled.frequencyHz.value / 100 - 1)).toBeLessThan(0.03);
    expect(settled.frequencyHz.value).toBeLessThan(100); // stiffness puts the second partial above twice the first
    expect(settled.evidence).toMatchObject({ firstPartialHeard: false, rivalHz: 200, numberingTested: true });
    expect(leadOf(settled)).toBeGreaterThan(2);
  });

  test('rings an octave higher: it was the first', () => {
    const settled = settledByTouch(alone(200), [touchedAt(402)], BOUNDS);
    expect(settled.frequencyHz.value).toBe(200);
    expect(leadOf(settled)).toBeGreaterThan(4);
  });

  test('rings somewhere else, or is drowned by something else: nothing is told', () => {
    const elsewhere = settledByTouch(alone(200), [touchedAt(317)], BOUNDS);
    expect(Math.abs(leadOf(elsewhere) - 1.4)).toBeLessThan(0.01);
    const drowned = touchedAt(200);
    const unsaid = settledByTouch(alone(200), [{ ...drowned, evidence: { ...drowned.evidence, ownShare: 0.4 } }], BOUNDS);
    expect(unsaid).toEqual(alone(200));
  });

  test('two touched plucks that agree tell more than one, two that differ tell next to nothing', () => {
    const one = leadOf(settledByTouch(alone(200), [touchedAt(402)], BOUNDS));
    const two = leadOf(settledByTouch(alone(200), [touchedAt(402), touchedAt(401)], BOUNDS));
    expect(two).toBeGreaterThan(one + 2);
    const torn = settledByTouch(alone(200), [touchedAt(402), touchedAt(200)], BOUNDS);
    expect(leadOf(torn)).toBeLessThan(2);
  });
});

test('partials 2 to 5 read as 1, 2 and what else fits, against the numbering with a first partial that was not heard', () => {
  const span = { ...spanTruth(), number: 1 };
  const numbers = [2, 3, 4, 5];
  const sound: PluckSound = {
    ...heardPluck(partialHz(span), { rivalHz: partialHz({ ...span, number: 2 }), leadOverRival: 0.3, firstPartialHeard: false }),
    partials: numbers.map((number) => {
      const value = partialHz({ ...span, number });
      return { number, frequencyHz: { value, standardUncertainty: 0.001 * value }, levelDbfs: -20 - number, decayS: 0.1 };
    }),
  };
  const rival = readAsRival(sound, BOUNDS)!;
  expect(rival.partials.map(({ number }) => number)).toEqual([1, 2]);
  expect(rival.frequencyHz.value).toBeCloseTo(partialHz({ ...span, number: 2 }), 0);
  // Truth: the second partial rings under a finger, and the sixth with it.
  const touched = touchedAt(partialHz({ ...span, number: 2 }), partialHz({ ...span, number: 6 }));
  const settled = settledByTouch(sound, [touched], BOUNDS);
  expect(settled.partials.map(({ number }) => number)).toEqual(numbers);
  expect(leadOf(settled)).toBeGreaterThan(3);
});

test('without a rival a sound stays what it is', () => {
  const sure = heardPluck(120);
  expect(settledByTouch(sure, [touchedAt(240)], BOUNDS)).toBe(sure);
  expect(readAsRival(sure, BOUNDS)).toBeUndefined();
});

function spanTruth() {
  return { forceN: 8, spanLengthM: 0.3, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.4, 0.4] as const };
}
