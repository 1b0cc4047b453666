import { expect, test } from 'vitest';
import { forceFromFrequency } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { gradeOfInterval } from '../../../../src/core/verdict/grade.ts';
import { trustedFromM } from '../../../../src/core/verdict/trusted-from.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { CATALOGUE_BELT, spanOf } from '../../../support/heard.ts';

const ASKED = { span: knownSpan(spanOf(0.05))!, frequencyRelativeU: 0.005, toleranceRelative: 0.2, atLeastM: 0.04 };

test.each([3, 5, 10, 20])('at %s N the length given is trusted, and a tenth less is not', (forceN) => {
  const fromM = trustedFromM({ ...ASKED, forceN })!;
  const gradeAt = (spanLengthM: number) => {
    const frequencyHz = partialHz({
      forceN,
      spanLengthM,
      linearDensityKgPerM: 0.0078,
      bendingStiffnessNm2: Math.sqrt(5e-5 * 3e-4),
      fixity: [0.5, 0.5],
      number: 1,
    });
    return gradeOfInterval(forceFromFrequency({ frequencyHz, relativeU: 0.005 }, knownSpan(spanOf(spanLengthM))!), 0.2);
  };
  expect(gradeAt(fromM)).toBe('trusted');
  expect(gradeAt(0.9 * fromM)).not.toBe('trusted');
});

test('more force or more tolerance shortens it', () => {
  const fromM = (forceN: number, toleranceRelative = 0.2) => trustedFromM({ ...ASKED, forceN, toleranceRelative })!;
  expect(fromM(20)).toBeLessThan(fromM(10));
  expect(fromM(10)).toBeLessThan(fromM(3));
  expect(fromM(10, 0.1)).toBeGreaterThan(fromM(10));
});

test('never below the shortest span that the beam is believed on', () => {
  expect(trustedFromM({ ...ASKED, forceN: 60, atLeastM: 0.1 })).toBe(0.1);
});

test('where the density alone is too vague no length helps', () => {
  expect(trustedFromM({ ...ASKED, span: knownSpan(spanOf(0.05, CATALOGUE_BELT))!, forceN: 10 })).toBeUndefined();
});
