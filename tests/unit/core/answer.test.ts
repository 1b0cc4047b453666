import { describe, expect, test } from 'vitest';
import { answerOf, answerOfFrequency } from '../../../src/core/answer.ts';
import type { PluckSound, Reason } from '../../../src/core/outcome.ts';
import { FIXITY_OF_END, type SpanSetup, UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { partialHz } from '../../../src/core/vibration/beam.ts';
import { CATALOGUE_BELT, heardPluck, spanOf, WEIGHED_BELT } from '../../support/heard.ts';

const answer = (sounds: readonly PluckSound[], setup: SpanSetup) => answerOf({ sounds, setup, sampleRateHz: 48_000 });
const ids = (reasons: readonly Reason[]) => reasons.map(({ id }) => id);
const three = (frequencyHz: number, more: Parameters<typeof heardPluck>[1] = {}) =>
  [frequencyHz, 1.001 * frequencyHz, 0.9995 * frequencyHz].map((hz) => heardPluck(hz, more));
/** A span so stiff holds no series of plain multiples. */
const FIRST_ALONE = { partialNumbers: [1] };

test('no pluck, no reading', () => {
  expect(answer([], spanOf(0.15))).toEqual({ plucks: [], reading: undefined });
});

describe('three clear plucks', () => {
  test('of a weighed belt on 150 mm are trusted, with a budget and no reasons', () => {
    const { reading, plucks } = answer(three(122.5), spanOf(0.15));
    expect(reading).toMatchObject({ kind: 'reading', grade: 'trusted', soundGrade: 'trusted', reasons: [], pluckCount: 3 });
    expect(reading!.forceN!.value).toBeCloseTo(10, 0);
    expect(reading!.budget).toHaveLength(7);
    expect(plucks.map(({ used, grade }) => [used, grade])).toEqual([
      [true, 'trusted'],
      [true, 'trusted'],
      [true, 'trusted'],
    ]);
  });

  test('are surer together than one by one', () => {
    const { reading, plucks } = answer(three(122.5), spanOf(0.15));
    expect(reading!.forceN!.u95!).toBeLessThan(plucks[0]!.forceN!.u95!);
    expect(reading!.frequencyHz.u95).toBeLessThan(plucks[0]!.frequencyHz.u95);
  });

  test('of a belt that nobody weighed: clear sound, and the density is what is in doubt', () => {
    const { reading } = answer(three(122.5), spanOf(0.15, CATALOGUE_BELT));
    expect(reading).toMatchObject({ grade: 'doubtful', soundGrade: 'trusted' });
    expect(ids(reading!.reasons)).toEqual(['density-from-catalogue']);
  });

  test('on 45 mm decide nothing, and where they would is told', () => {
    const { reading } = answer(three(300, FIRST_ALONE), spanOf(0.045));
    expect(reading).toMatchObject({ grade: 'unusable' });
    expect(ids(reading!.reasons)).toContain('span-too-short');
    expect(ids(reading!.reasons)).toContain('ends-and-stiffness-unknown');
    const short = reading!.reasons.find((reason) => reason.id === 'span-too-short')!;
    expect(short).toMatchObject({ spanLengthM: 0.045, onceWeighed: false });
    expect(short.id === 'span-too-short' && short.trustedFromM).toBeGreaterThan(0.1);
  });

  test('that give no low bound say that the belt is slack', () => {
    const { reading } = answer(three(200, FIRST_ALONE), spanOf(0.045));
    expect(reading!.forceN!.low).toBeUndefined();
    expect(ids(reading!.reasons)).toContain('belt-too-slack');
  });

  test('too low for any force still give the frequency', () => {
    const { reading } = answer(three(20, FIRST_ALONE), spanOf(0.045));
    expect(reading!.forceN).toBeUndefined();
    expect(reading).toMatchObject({ grade: 'unusable', budget: [] });
    expect(reading!.frequencyHz.value).toBeCloseTo(20, 1);
    expect(ids(reading!.reasons)).toContain('belt-too-slack');
  });
});

describe('without span or belt', () => {
  test.each([
    { ends: UNKNOWN_ENDS },
    { ends: UNKNOWN_ENDS, belt: CATALOGUE_BELT },
    { ends: UNKNOWN_ENDS, spanLengthM: { value: 0.15, standardUncertainty: 0.0005 } },
  ])('%#: the frequency stands, graded by its sound, no word on inputs', (setup) => {
    const { reading, plucks } = answer(three(122.5), setup);
    expect(reading).toMatchObject({ grade: 'trusted', soundGrade: 'trusted', reasons: [], budget: [] });
    expect(reading!.forceN).toBeUndefined();
    expect(plucks[0]!.forceN).toBeUndefined();
  });
});

describe('plucks that do not belong', () => {
  test('one apart is left out, and the reading says so', () => {
    const { reading, plucks } = answer([...three(122.5), heardPluck(131)], spanOf(0.15));
    expect(plucks.map(({ used }) => used)).toEqual([true, true, true, false]);
    expect(reading).toMatchObject({ grade: 'trusted', pluckCount: 3 });
    expect(reading!.reasons).toMatchObject([{ id: 'plucks-disagree', pluckNumber: 4, leftOut: true }]);
    expect(plucks[3]!.forceN!.value).toBeGreaterThan(reading!.forceN!.value);
  });

  test('one whose sound is worth nothing takes no part, whatever its frequency', () => {
    const { reading, plucks } = answer([heardPluck(122.5), heardPluck(122.6, { clippedShare: 0.5 })], spanOf(0.15));
    expect(plucks.map(({ used, soundGrade }) => [used, soundGrade])).toEqual([
      [true, 'trusted'],
      [false, 'unusable'],
    ]);
    expect(reading).toMatchObject({ soundGrade: 'trusted', pluckCount: 1 });
    expect(reading!.reasons).toMatchObject([{ id: 'pluck-left-out', pluckNumber: 2, because: 'clipped' }]);
  });

  test('where all are worth nothing, they are still what was heard', () => {
    const clipped = { clippedShare: 0.5 };
    const { reading } = answer([heardPluck(122.5, clipped), heardPluck(122.6, clipped)], spanOf(0.15));
    expect(reading).toMatchObject({ grade: 'unusable', soundGrade: 'unusable', pluckCount: 2 });
    expect(ids(reading!.reasons)).toEqual(['clipped']);
  });
});

describe('what a person knows of span and belt', () => {
  test('above the rated force is said', () => {
    const { reading } = answer(three(215), spanOf(0.15));
    expect(reading!.reasons).toMatchObject([{ id: 'over-rated-force', ratedForceN: 26 }]);
    expect(reading!.grade).toBe('doubtful');
  });

  test('outside the expected range is said, and moves nothing', () => {
    const expectedForceN = { lowN: 30, highN: 50 };
    const asked = answer(three(122.5), spanOf(0.15, WEIGHED_BELT, { expectedForceN })).reading!;
    const free = answer(three(122.5), spanOf(0.15)).reading!;
    expect(ids(asked.reasons)).toEqual(['outside-expected']);
    expect(asked.forceN).toEqual(free.forceN);
  });

  test('a target moves nothing but the tolerance', () => {
    const targetForceN = { lowN: 9.7, highN: 10.3 };
    const asked = answer(three(122.5), spanOf(0.15, WEIGHED_BELT, { targetForceN })).reading!;
    const free = answer(three(122.5), spanOf(0.15)).reading!;
    expect(asked.forceN).toEqual(free.forceN);
    expect(asked.grade).toBe('unusable');
    expect(free.grade).toBe('trusted');
  });

  test('fewer than 20 tooth pitches are never trusted', () => {
    const known = { kind: 'known', value: { value: 0, standardUncertainty: 0.02 } } as const;
    const belt = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: { value: 3e-5, standardUncertainty: 1e-6 } } } as const;
    const setup = (toothPitchM?: number) => spanOf(0.05, { ...belt, toothPitchM, ratedForceN: undefined }, { ends: [known, known] });
    expect(answer(three(500), setup(0.002)).reading).toMatchObject({ grade: 'trusted', reasons: [] });
    const { reading } = answer(three(500), setup(0.003));
    expect(reading!.grade).toBe('doubtful');
    expect(reading!.reasons).toMatchObject([{ id: 'span-too-short', trustedFromM: 0.06 }]);
  });

  test('a tape measure that decides is named', () => {
    const { reading } = answer(three(122.5), spanOf(0.15, WEIGHED_BELT, { spanLengthM: { value: 0.15, standardUncertainty: 0.008 } }));
    expect(reading!.reasons).toMatchObject([{ id: 'input-decides', input: 'span length' }]);
    expect(reading!.grade).toBe('doubtful');
  });
});

/** A pluck whose partials are those of a real span, as its solver has them. */
function pluckOf(truth: {
  forceN: number;
  spanLengthM: number;
  bendingStiffnessNm2: number;
  fixity: readonly [number, number];
}): PluckSound {
  const hz = (number: number) => partialHz({ ...truth, linearDensityKgPerM: 0.0078, number });
  const pluck = heardPluck(hz(1));
  const partials = pluck.partials.map((one) => ({
    ...one,
    frequencyHz: { value: hz(one.number), standardUncertainty: 0.001 * hz(one.number) },
  }));
  return { ...pluck, partials };
}

describe('45 mm of a 2 mm belt at 4 N, heard with three partials', () => {
  const sounds = [1, 2, 3].map(() => pluckOf({ forceN: 4, spanLengthM: 0.045, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] }));
  const known = (value: number, standardUncertainty: number) => ({ kind: 'known', value: { value, standardUncertainty } }) as const;

  test.each([
    ['weighed, nothing told of the ends', spanOf(0.045)],
    ['its ends told by kind', spanOf(0.045, WEIGHED_BELT, { ends: [FIXITY_OF_END.clamp, FIXITY_OF_END['toothed pulley']] })],
    ['its ends measured, its stiffness not', spanOf(0.045, WEIGHED_BELT, { ends: [known(0.5, 0.02), known(0.5, 0.02)] })],
    ['its stiffness told, not its ends', spanOf(0.045, { ...WEIGHED_BELT, bendingStiffnessNm2: known(1.2e-4, 2.4e-5) })],
  ])('%s: not trusted, for the span, with its length and one that would do', (_, setup) => {
    const { reading } = answer(sounds, setup);
    expect(reading!.grade).not.toBe('trusted');
    const reason = reading!.reasons.find(({ id }) => id === 'span-too-short')!;
    expect(reason).toMatchObject({ spanLengthM: 0.045 });
    expect(reason.id === 'span-too-short' && reason.trustedFromM).toBeGreaterThan(0.045);
  });

  test('ends and stiffness known well: trusted', () => {
    const belt = { ...WEIGHED_BELT, bendingStiffnessNm2: known(1.2e-4, 2e-6) };
    const setup = spanOf(0.045, belt, {
      ends: [known(0.5, 0.02), known(0.5, 0.02)],
      spanLengthM: { value: 0.045, standardUncertainty: 0.0002 },
    });
    expect(answer(sounds, setup).reading).toMatchObject({ grade: 'trusted', reasons: [] });
  });
});

test('a partial that does not fit is named, and moves nothing', () => {
  const fine = pluckOf({ forceN: 10, spanLengthM: 0.15, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] });
  const moved = (share: number): PluckSound => ({
    ...fine,
    partials: fine.partials.map((one) =>
      one.number === 2 ? { ...one, frequencyHz: { ...one.frequencyHz, value: share * one.frequencyHz.value } } : one,
    ),
  });
  const { reading } = answer([moved(1.05)], spanOf(0.15));
  expect(reading!.reasons).toMatchObject([{ id: 'partials-do-not-fit', partialNumbers: [2], holdsAt: 'trusted' }]);
  expect(Math.abs(reading!.forceN!.value / 10 - 1)).toBeLessThan(0.02);
  expect(answer([moved(1.005)], spanOf(0.15)).reading!.reasons).toEqual([]);
});

describe('a frequency that was told', () => {
  const told = (value: number, setup: SpanSetup) =>
    answerOfFrequency({ frequencyHz: { value, standardUncertainty: 0.001 * value }, setup });

  test('reads as a pluck heard by its first partial alone, but for the sound', () => {
    const heard = answer([heardPluck(122.5, { partialNumbers: [1], glideRelative: 0 })], spanOf(0.15)).reading!;
    const reading = told(122.5, spanOf(0.15));
    expect(reading.forceN!.value).toBeCloseTo(heard.forceN!.value, 3);
    expect(reading.forceN!.u95!).toBeCloseTo(heard.forceN!.u95!, 2);
    expect(ids(reading.reasons)).toEqual(['not-heard-here']);
    expect(reading.pluckCount).toBe(0);
  });

  test('keeps the doubts of the inputs', () => {
    expect(ids(told(122.5, spanOf(0.15, CATALOGUE_BELT)).reasons)).toEqual(['not-heard-here', 'density-from-catalogue']);
  });
});

test('the budget says what it comes to, and whether first order is to be believed', () => {
  const long = answer(three(60.4, { partialNumbers: [1] }), spanOf(0.3)).reading!;
  expect(long.budgetSum!.forceUN).toBeCloseTo(Math.hypot(...long.budget.map(({ forceUN }) => forceUN)), 9);
  expect(long.budgetSum!.degreesOfFreedom!).toBeGreaterThan(6);
  expect(long.budgetSum!.coverageFactor).toBeGreaterThan(1.95);
  expect(answer(three(300, FIRST_ALONE), spanOf(0.045)).reading!.budgetSum!.firstOrderHolds).toBe(false);
});

test('a hard pluck leaves its glide in the budget', () => {
  const soft = answer([heardPluck(122.5)], spanOf(0.15)).reading!;
  const hard = answer([heardPluck(122.5, { glideRelative: 0.06 })], spanOf(0.15)).reading!;
  const amplitude = (reading: typeof soft) => reading.budget.find(({ input }) => input === 'amplitude')!.forceUN;
  expect(amplitude(hard)).toBeGreaterThan(20 * amplitude(soft));
  expect(hard.forceN!.u95!).toBeGreaterThan(soft.forceN!.u95!);
  expect(ids(hard.reasons)).toContain('plucked-too-hard');
});

test('a frequency of which next to nothing is known still ends in an answer', () => {
  for (const relativeU of [0.3, 3, 1e15]) {
    for (const partialNumbers of [[1], [1, 2, 3], [2, 3]]) {
      const { reading } = answer([heardPluck(122.5, { relativeU, partialNumbers })], spanOf(0.15));
      expect(reading!.grade).toBe('unusable');
    }
  }
  expect(answer([heardPluck(122.5), heardPluck(122.6, { relativeU: 1e15 })], spanOf(0.15)).reading!.forceN!.value).toBeCloseTo(10, 0);
});
