import { expect, test } from 'vitest';
import { forceFromPartials } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { gradeOfInterval } from '../../../../src/core/verdict/grade.ts';
import { trustedFromM } from '../../../../src/core/verdict/trusted-from.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { CATALOGUE_BELT, spanOf } from '../../../support/heard.ts';

const FIRST = [{ number: 1, relativeU: 0.001 }];
const ASKED = { span: knownSpan(spanOf(0.05))!, partials: FIRST, sharedRelativeU: 0.005, toleranceRelative: 0.2, atLeastM: 0.04 };

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
    const heard = { partials: [{ number: 1, frequencyHz, relativeU: 0.001 }], sharedRelativeU: 0.005 };
    return gradeOfInterval(forceFromPartials(heard, knownSpan(spanOf(spanLengthM))!).forceN, 0.2);
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

test('what hears more partials is trusted on shorter spans', () => {
  const partials = [1, 2, 3].map((number) => ({ number, relativeU: 0.001 }));
  expect(trustedFromM({ ...ASKED, partials, forceN: 5 })).toBeLessThan(0.9 * trustedFromM({ ...ASKED, forceN: 5 })!);
});

test('never below the shortest span that the beam is believed on', () => {
  expect(trustedFromM({ ...ASKED, forceN: 60, atLeastM: 0.1 })).toBe(0.1);
});

test('where the density alone is too vague no length helps', () => {
  expect(trustedFromM({ ...ASKED, span: knownSpan(spanOf(0.05, CATALOGUE_BELT))!, forceN: 10 })).toBeUndefined();
});
