import { describe, expect, test } from 'vitest';
import { sharpnessReason, soundReasons } from '../../../../src/core/verdict/reasons.ts';
import { heardPluck } from '../../../support/heard.ts';

const SOURCE = { sampleRateHz: 48_000 };
const brief = (sound: ReturnType<typeof heardPluck>, source: Parameters<typeof soundReasons>[1] = SOURCE) =>
  soundReasons(sound, source).map(({ id, holdsAt }) => `${id} ${holdsAt}`);

test('a clean pluck gives no reason to doubt it', () => {
  expect(brief(heardPluck(120))).toEqual([]);
});

test.each([
  [{ cyclesToDecay: 3.2 }, 'too-few-cycles doubtful'],
  [{ cyclesToDecay: 1.2 }, 'too-few-cycles unusable'],
  [{ levelOverBackgroundDb: 12 }, 'noisy doubtful'],
  [{ levelOverBackgroundDb: 5 }, 'noisy unusable'],
  [{ clippedShare: 0.01 }, 'clipped doubtful'],
  [{ clippedShare: 0.5 }, 'clipped unusable'],
  [{ glideRelative: 0.04 }, 'plucked-too-hard doubtful'],
  [{ glideRelative: 0.12 }, 'plucked-too-hard unusable'],
  [{ rivalHz: 60, leadOverRival: 1 }, 'octave-not-certain doubtful'],
  [{ rivalHz: 60, leadOverRival: 0.1 }, 'octave-not-certain unusable'],
  [{ ownShare: 0.5 }, 'not-one-span doubtful'],
  [{ ownShare: 0.2 }, 'not-one-span unusable'],
  [{ ownShare: 0.5, foreignHz: [131] }, 'other-span-rings doubtful'],
  [{ ownShare: 0.7, foreignHz: [131] }, 'other-span-rings doubtful'],
  [{ ownShare: 0.5, foreignHz: [300] }, 'not-one-span doubtful'],
  [{ humOn: { partialNumber: 1, humHz: 120 } }, 'hum-on-partial doubtful'],
  [{ toneOn: { partialNumber: 1, toneHz: 121 } }, 'tone-on-partial doubtful'],
  [{ bandwidthHz: 300 }, 'sample-rate-too-low doubtful'],
  [{ touchMissed: true }, 'touch-not-heard doubtful'],
  [{ firstPartialHeard: false, partialNumbers: [2, 3] }, 'first-partial-not-heard trusted'],
  [{ firstPartialHeard: false, partialNumbers: [2] }, 'first-partial-not-heard doubtful'],
] as const)('%o raises %s', (evidence, expected) => {
  const { partialNumbers = [1, 2, 3], foreignHz = [], ...rest } = evidence as Parameters<typeof heardPluck>[1] & object;
  expect(brief(heardPluck(120, { ...rest, foreignHz, partialNumbers }))).toEqual([expected]);
});

test.each([
  { rivalHz: 60, leadOverRival: 6 }, // far behind
  { foreignHz: [131], ownShare: 0.93 }, // rings along, but faintly
  { humOn: { partialNumber: 2, humHz: 240 } }, // not on the partial that decides
])('%o raises nothing', (evidence) => {
  expect(brief(heardPluck(120, evidence))).toEqual([]);
});

describe('a microphone that alters the sound', () => {
  test('holds it at doubtful where that is certain, and is only named where it may be', () => {
    expect(brief(heardPluck(120), { ...SOURCE, processing: 'altered' })).toEqual(['sound-altered doubtful']);
    expect(brief(heardPluck(120), { ...SOURCE, processing: 'unknown' })).toEqual(['sound-altered trusted']);
    expect(brief(heardPluck(120), { ...SOURCE, processing: 'untouched' })).toEqual([]);
  });
});

test('a frequency that would miss the tolerance by itself is a reason', () => {
  const at = (u95: number) => sharpnessReason({ value: 100, u95 }, 0.2).map(({ holdsAt }) => holdsAt);
  expect(at(9)).toEqual([]);
  expect(at(12)).toEqual(['doubtful']);
  expect(at(25)).toEqual(['unusable']);
});
