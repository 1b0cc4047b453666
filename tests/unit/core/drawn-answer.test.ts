/** The check by draws of a whole take: it agrees where the closed form holds, says so where bounds lie apart, and is the same for the same seed. */

import { describe, expect, test } from 'vitest';
import { answerOf, type Take } from '../../../src/core/answer.ts';
import { agreement, drawnAnswer } from '../../../src/core/drawn-answer.ts';
import { heardPluck, spanOf } from '../../support/heard.ts';

const take = (more: Partial<Take> = {}): Take => ({
  sounds: [112, 112.4, 111.8].map((hz) => heardPluck(hz, { partialNumbers: [1] })),
  setup: spanOf(0.15),
  processing: 'untouched',
  sampleRateHz: 48_000,
  ...more,
});

describe('the check by draws', () => {
  test.each(['edge', 'flat'] as const)('agrees with the reading of a usual span that lies %s', (lie) => {
    const checked = take({ setup: spanOf(0.15, undefined, { lie }) });
    const drawn = drawnAnswer(checked, { seed: 1, draws: 20_000 })!;
    const told = answerOf(checked).reading!.forceN!;
    expect(drawn.agreement).toBe('agree');
    expect(Math.abs(drawn.forceN!.value / told.value - 1)).toBeLessThan(0.01);
    expect(drawn.histogram.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  test('gives the same for the same seed, and tells how far it is', () => {
    const shares: number[] = [];
    const one = drawnAnswer(take(), { seed: 5, draws: 2000, progress: (share) => shares.push(share) });
    expect(drawnAnswer(take(), { seed: 5, draws: 2000 })).toEqual(one);
    expect(drawnAnswer(take(), { seed: 6, draws: 2000 })).not.toEqual(one);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  test('has nothing to check without plucks or without a span', () => {
    expect(drawnAnswer(take({ sounds: [] }), { seed: 1 })).toBeUndefined();
    expect(drawnAnswer(take({ setup: { ...spanOf(0.15), spanLengthM: undefined } }), { seed: 1 })).toBeUndefined();
  });
});

describe('agreement', () => {
  const told = { value: 10, low: 9, high: 11, u95: 1 };
  test.each([
    [{ value: 10, low: 9.08, high: 10.95 }, 'agree'],
    [{ value: 10, low: 8.8, high: 11 }, 'differ'],
    [{ value: 10, low: 9, high: 11.2 }, 'differ'],
    [{ value: 10, high: 11 }, 'differ'],
    [undefined, 'differ'],
  ] as const)('%o: %s', (drawn, expected) => {
    expect(agreement(told, drawn, 50_000)).toBe(expected);
  });
  test('is not judged by a handful of draws', () => {
    expect(agreement(told, { value: 10, low: 8.8, high: 11 }, 100)).toBe('too-few');
  });
});
