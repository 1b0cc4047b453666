/** Each piece of advice where it gains something, and not where it would not; of several the one that gains most. */

import { describe, expect, test } from 'vitest';
import { type AdviceKind, adviceOn } from '../../../src/core/advice.ts';
import { readingOf, type Take } from '../../../src/core/answer.ts';
import type { PluckSound } from '../../../src/core/outcome.ts';
import { heardPluck, spanOf, WEIGHED_BELT } from '../../support/heard.ts';

/** Everything of the span is known well, so that the sound decides. */
const SETUP = spanOf(
  0.3,
  {
    ...WEIGHED_BELT,
    linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00002 },
    bendingStiffnessNm2: { kind: 'known', value: { value: 1.2e-4, standardUncertainty: 6e-6 } },
  },
  {
    spanLengthM: { value: 0.3, standardUncertainty: 0.0001 },
    ends: [
      { kind: 'known', value: { value: 0.3, standardUncertainty: 0.02 } },
      { kind: 'known', value: { value: 0.3, standardUncertainty: 0.02 } },
    ],
  },
);
const takeOf = (...sounds: readonly PluckSound[]): Take => ({ sounds, setup: SETUP, sampleRateHz: 48_000 });
const adviceFor = (take: Take) => adviceOn(take, readingOf(take)!);
const kindFor = (...sounds: readonly PluckSound[]): AdviceKind | undefined => adviceFor(takeOf(...sounds))?.kind;

/** First partial faint beside the second, and known the worse for it. */
function weakFirst(downDb: number): PluckSound {
  const sound = heardPluck(60, { relativeU: 0.0005 });
  const partials = sound.partials.map((partial) =>
    partial.number === 1 ? { ...partial, levelDbfs: -20 - downDb, frequencyHz: { value: 60, standardUncertainty: 0.6 } } : partial,
  );
  return { ...sound, frequencyHz: { value: 60, standardUncertainty: 0.03 }, partials };
}

test('a clean pluck is left in peace', () => {
  expect(kindFor(heardPluck(60, { relativeU: 0.0003, glideRelative: 0.0005 }))).toBeUndefined();
});

describe('each where it helps', () => {
  test.each([
    ['softer', heardPluck(60, { relativeU: 0.003, glideRelative: 0.06 })],
    ['softer', heardPluck(60, { relativeU: 0.0003, glideRelative: 0, clippedShare: 0.3 })],
    ['closer', heardPluck(60, { relativeU: 0.02, levelOverBackgroundDb: 15, glideRelative: 0 })],
    ['damp-neighbour', heardPluck(60, { glideRelative: 0, ownShare: 0.45, foreignHz: [66] })],
    ['wait-for-quiet', heardPluck(60, { glideRelative: 0, toneOn: { partialNumber: 1, toneHz: 60.5 } })],
    ['longer-silence', heardPluck(60, { relativeU: 0.0003, glideRelative: 0, touchMissed: true })],
  ] as const)('%s', (kind, sound) => {
    // The first of several would have to be the take's only one; silence before is told of the pluck before the last.
    const take = kind === 'longer-silence' ? takeOf(sound, sound) : takeOf(sound);
    const advice = adviceFor(take)!;
    expect(advice.kind).toBe(kind);
    const now = readingOf(take)!;
    const better = advice.grade !== now.grade || advice.forceN!.u95! < now.forceN!.u95!;
    expect(better).toBe(true);
  });

  test('nearer the middle where the first partial is faint, and not where it is not', () => {
    expect(kindFor(weakFirst(30))).toBe('nearer-middle');
    expect(kindFor(weakFirst(5))).not.toBe('nearer-middle');
  });

  test('a longer silence where a ring was cut off by the next pluck', () => {
    const cut = heardPluck(60, { relativeU: 0.02, glideRelative: 0 });
    const soon = { ...cut, startS: cut.startS + 0.15 };
    const late = { ...cut, startS: cut.startS + 2 };
    expect(kindFor(cut, soon)).toBe('longer-silence');
    expect(kindFor(cut, late)).toBeUndefined();
  });
});

test('of two that help the one that gains more is told', () => {
  const both = heardPluck(60, { relativeU: 0.02, levelOverBackgroundDb: 15, glideRelative: 0.01 });
  expect(kindFor(both)).toBe('closer');
  const beside = heardPluck(60, { relativeU: 0.02, levelOverBackgroundDb: 15, glideRelative: 0.01, ownShare: 0.3, foreignHz: [66] });
  expect(kindFor(beside)).toBe('damp-neighbour'); // nothing else lifts it above unusable
});

test('where the inputs decide, no way to pluck helps', () => {
  const take: Take = { ...takeOf(heardPluck(180, { glideRelative: 0.0005 })), setup: spanOf(0.1) };
  expect(adviceFor(take)).toBeUndefined();
});
