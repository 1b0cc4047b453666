import { describe, expect, test } from 'vitest';
import { combinedPlucks } from '../../../../src/core/frequency/combine.ts';
import type { Reason } from '../../../../src/core/outcome.ts';
import { agreementReasons, sharedReasons } from '../../../../src/core/verdict/take-reasons.ts';

const noisy = (levelOverBackgroundDb: number, holdsAt: Reason['holdsAt'] = 'doubtful'): Reason => ({
  about: 'sound',
  holdsAt,
  id: 'noisy',
  levelOverBackgroundDb,
});
const plucks = (...values: readonly number[]) => values.map((value) => ({ value, standardUncertainty: 0.001 * value }));
const agreement = (...values: readonly number[]) =>
  agreementReasons(
    combinedPlucks(plucks(...values)),
    values.map((_, i) => i + 1),
  );

describe('what several plucks share', () => {
  test('counts where at least half have it, in its worst form', () => {
    expect(sharedReasons([[noisy(12)], [noisy(7, 'unusable')], []])).toEqual([noisy(7, 'unusable')]);
    expect(sharedReasons([[noisy(12)], []])).toEqual([noisy(12)]);
  });
  test('counts too where each of two in three has a doubt of its own', () => {
    const clipped: Reason = { about: 'sound', holdsAt: 'doubtful', id: 'clipped', clippedShare: 0.01 };
    expect(sharedReasons([[noisy(12)], [clipped], []])).toEqual([noisy(12), clipped]);
  });
  test('does not count where fewer have it', () => {
    expect(sharedReasons([[noisy(12)], [], []])).toEqual([]);
  });
});

describe('whether they agree', () => {
  test('they do: nothing to say', () => {
    expect(agreement(120, 120.3, 119.9)).toEqual([]);
    expect(agreement(120)).toEqual([]);
  });

  test('one of three left out holds it at doubtful, one of four does not', () => {
    const figures = { about: 'sound', id: 'plucks-disagree', leftOut: true };
    expect(agreement(120, 120.1, 127.3)).toEqual([
      { ...figures, holdsAt: 'doubtful', pluckNumber: 3, differenceRelative: expect.closeTo(0.0604, 3) },
    ]);
    expect(agreement(120, 127.3, 120.1, 119.9)).toMatchObject([{ ...figures, holdsAt: 'trusted', pluckNumber: 2 }]);
  });

  test('two that differ are told as far from each other as they are', () => {
    expect(agreement(120, 126)).toMatchObject([
      { holdsAt: 'doubtful', leftOut: false, pluckNumber: 2, differenceRelative: expect.closeTo(0.05, 2) },
    ]);
    expect(agreement(120, 240)).toMatchObject([{ holdsAt: 'unusable', leftOut: false }]);
  });
});
