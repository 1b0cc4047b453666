import { describe, expect, test } from 'vitest';
import type { Reason } from '../../../../src/core/outcome.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { gradeOfInterval, gradeOfReasons, toleranceOf, worstGrade } from '../../../../src/core/verdict/grade.ts';

const force = (u95: number | undefined) => ({ value: 10, low: 9, high: 11, u95 });

test.each([
  [1.9, 'trusted'],
  [2, 'trusted'],
  [2.1, 'doubtful'],
  [4, 'doubtful'],
  [4.1, 'unusable'],
  [undefined, 'unusable'],
] as const)('a larger half of %s N of 10 N at 20 %% is %s', (u95, grade) => {
  expect(gradeOfInterval(force(u95), 0.2)).toBe(grade);
});

test('no force at all is unusable', () => {
  expect(gradeOfInterval(undefined, 0.2)).toBe('unusable');
});

describe('the tolerance', () => {
  const setup = { ends: UNKNOWN_ENDS };
  test('is what was told', () => {
    expect(toleranceOf({ ...setup, toleranceRelative: 0.1, targetForceN: { lowN: 6, highN: 9 } })).toBe(0.1);
  });
  test('else half the target’s width over its middle', () => {
    expect(toleranceOf({ ...setup, targetForceN: { lowN: 6, highN: 9 } })).toBeCloseTo(1.5 / 7.5, 12);
  });
  test('else 20 %, also where the target has no width', () => {
    expect(toleranceOf(setup)).toBe(0.2);
    expect(toleranceOf({ ...setup, targetForceN: { lowN: 9, highN: 9 } })).toBe(0.2);
  });
});

test('the worst of all stands, and sound can be asked for alone', () => {
  const reasons: Reason[] = [
    { about: 'sound', holdsAt: 'trusted', id: 'first-partial-not-heard', frequencyHz: 60 },
    { about: 'inputs', holdsAt: 'doubtful', id: 'density-from-catalogue', relativeUncertainty: 0.1 },
  ];
  expect(gradeOfReasons(reasons)).toBe('doubtful');
  expect(gradeOfReasons(reasons, 'sound')).toBe('trusted');
  expect(worstGrade(['doubtful', 'unusable', 'trusted'])).toBe('unusable');
  expect(worstGrade([])).toBe('trusted');
});
