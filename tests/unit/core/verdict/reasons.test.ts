import { describe, expect, test } from 'vitest';
import { misfitReason, sharpnessReason, soundReasons } from '../../../../src/core/verdict/reasons.ts';
import { heardPluck } from '../../../support/heard.ts';

const SOURCE = { sampleRateHz: 48_000 };
/** The same without its promise to be read only. */
const changeable = (evidence: object) => structuredClone(evidence) as NonNullable<Parameters<typeof heardPluck>[1]>;
const brief = (sound: ReturnType<typeof heardPluck>, source: Parameters<typeof soundReasons>[1] = SOURCE) =>
  soundReasons(sound, source).map(({ id, holdsAt }) => `${id} ${holdsAt}`);

test('a clean pluck gives no reason to doubt it', () => {
  expect(brief(heardPluck(120))).toEqual([]);
});

/** Each doubt on the near side of its limit and just beyond it; a limit that moves must move here too. */
test.each([
  [{ cyclesToDecay: 2.1 }, { cyclesToDecay: 1.9 }, 'too-few-cycles doubtful'],
  [{ cyclesToDecay: 2.1 }, { cyclesToDecay: 0.7 }, 'too-few-cycles unusable'],
  [{ cyclesToDecay: 99 }, { cyclesToDecay: 101 }, 'rings-too-long doubtful'],
  [{ levelOverBackgroundDb: 14.5 }, { levelOverBackgroundDb: 13.5 }, 'noisy doubtful'],
  [{ levelOverBackgroundDb: 14.5 }, { levelOverBackgroundDb: 7.5 }, 'noisy unusable'],
  [{ clippedShare: 0.19 }, { clippedShare: 0.21 }, 'clipped doubtful'],
  [{ clippedShare: 0.19 }, { clippedShare: 0.41 }, 'clipped unusable'],
  [{ glideRelative: 0.049 }, { glideRelative: 0.051 }, 'plucked-too-hard doubtful'],
  [{ glideRelative: 0.049 }, { glideRelative: 0.081 }, 'plucked-too-hard unusable'],
  [{ rivalHz: 240, leadOverRival: 2.1 }, { rivalHz: 240, leadOverRival: 1.9 }, 'octave-not-certain doubtful'],
  [{ rivalHz: 60, leadOverRival: 4.1 }, { rivalHz: 60, leadOverRival: 3.9 }, 'octave-not-certain doubtful'], // half of it: the first may be unheard
  [{ rivalHz: 60, leadOverRival: 2.1, numberingTested: true }, { rivalHz: 60, leadOverRival: 3.9 }, 'octave-not-certain doubtful'],
  [{ rivalHz: 40, leadOverRival: 2.1 }, { rivalHz: 40, leadOverRival: 1.9 }, 'octave-not-certain doubtful'],
  [{ leadOverRival: 0.4 }, { rivalHz: 60, leadOverRival: 0.4 }, 'octave-not-certain unusable'], // no rival, nothing to lead
  [{ partialNumbers: [1, 3] }, { partialNumbers: [1] }, 'octave-not-certain doubtful'], // one alone has no witness
  [{ ownShare: 0.51 }, { ownShare: 0.49 }, 'not-one-span doubtful'],
  [{ ownShare: 0.51 }, { ownShare: 0.34 }, 'not-one-span unusable'],
  [{ ownShare: 0.66, foreignHz: [131] }, { ownShare: 0.64, foreignHz: [131] }, 'other-span-rings doubtful'],
  [{ ownShare: 0.9, foreignHz: [131] }, { ownShare: 0.9, foreignHz: [131], partialNumbers: [1, 2] }, 'other-span-rings doubtful'],
  [{ ownShare: 0.64, foreignHz: [162] }, { ownShare: 0.64, foreignHz: [160] }, 'other-span-rings doubtful'], // a third off or nearer
  [{ ownShare: 0.66, foreignHz: [131] }, { ownShare: 0.34, foreignHz: [131] }, 'other-span-rings unusable'],
  [{ humOn: { partialNumber: 2, humHz: 240 } }, { humOn: { partialNumber: 1, humHz: 120 } }, 'hum-on-partial doubtful'],
  [{ toneOn: { partialNumber: 2, toneHz: 241 } }, { toneOn: { partialNumber: 1, toneHz: 121 } }, 'tone-on-partial doubtful'],
  [{ touchMissed: false }, { touchMissed: true }, 'touch-not-heard doubtful'],
  [{ bandwidthHz: 390 }, { bandwidthHz: 380 }, 'sample-rate-too-low doubtful'], // 3.2 × 120 Hz
  [{ firstPartialHeard: true }, { firstPartialHeard: false, partialNumbers: [2, 3] }, 'first-partial-not-heard trusted'],
  [{ firstPartialHeard: true }, { firstPartialHeard: false, partialNumbers: [2] }, 'first-partial-not-heard doubtful'],
] as const)('%o raises nothing, %o raises %s', (nearly, beyond, expected) => {
  expect(brief(heardPluck(120, changeable(nearly)))).toEqual([]);
  expect(brief(heardPluck(120, changeable(beyond)))).toEqual([expected]);
});

describe('a microphone that alters the sound', () => {
  test('holds it at doubtful where few partials bear it, and is only named where three do or where it may not be so', () => {
    const altered = { ...SOURCE, processing: 'altered' } as const;
    expect(brief(heardPluck(120, { partialNumbers: [1, 2] }), altered)).toEqual(['sound-altered doubtful']);
    expect(brief(heardPluck(120, { partialNumbers: [1, 2, 3] }), altered)).toEqual(['sound-altered trusted']);
    expect(brief(heardPluck(120, { partialNumbers: [2, 3, 4], firstPartialHeard: false }), altered)).toContain('sound-altered doubtful');
    expect(brief(heardPluck(120), { ...SOURCE, processing: 'unknown' })).toEqual(['sound-altered trusted']);
    expect(brief(heardPluck(120), { ...SOURCE, processing: 'untouched' })).toEqual([]);
  });
});

test('a frequency that would miss the tolerance by itself is a reason', () => {
  const at = (u95: number) => sharpnessReason({ value: 100, u95 }, 0.2).map(({ holdsAt }) => holdsAt);
  expect(at(9.9)).toEqual([]);
  expect(at(10.1)).toEqual(['doubtful']);
  expect(at(19.9)).toEqual(['doubtful']);
  expect(at(20.1)).toEqual(['unusable']);
});

test('one partial alone is believed once a finger on the middle has told its number', () => {
  expect(brief(heardPluck(120, { partialNumbers: [1], numberingTested: true }))).toEqual([]);
  expect(brief(heardPluck(120, { partialNumbers: [2], firstPartialHeard: false, numberingTested: true }))).toEqual([
    'first-partial-not-heard trusted',
  ]);
});

test('partials that do not fit are named, and count where one alone is left', () => {
  expect(misfitReason([], 1)).toEqual([]);
  expect(misfitReason([4, 3], 2)).toMatchObject([{ id: 'partials-do-not-fit', partialNumbers: [3, 4], holdsAt: 'trusted' }]);
  expect(misfitReason([2], 1)).toMatchObject([{ id: 'partials-do-not-fit', partialNumbers: [2], holdsAt: 'doubtful' }]);
});
