/** The corpus gives the same takes for the same seed, others for another, and every take is what its truth says. */

import { expect, test, vi } from 'vitest';
import { corpus, corpusTake, nonBelts } from '../../support/corpus/corpus.ts';
import { KINDS } from '../../support/corpus/kinds.ts';
import { NON_BELTS } from '../../support/corpus/non-belts.ts';
import { toneHz } from '../../support/heterodyne.ts';

// Some twenty takes are made below, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

test('the same seed gives the same samples and truth, another seed others', () => {
  const take = () => corpusTake(7, 'three difficulties', 3);
  expect(take()).toEqual(take());
  expect(corpusTake(8, 'three difficulties', 3).truth).not.toEqual(take().truth);
  const kinds = ['glass', 'speech'];
  expect([...nonBelts(7, { takesPerKind: 1, kinds })]).toEqual([...nonBelts(7, { takesPerKind: 1, kinds })]);
});

test('asking for fewer kinds or takes changes none of those that remain', () => {
  const [alone] = [...corpus(7, { takesPerKind: 1, kinds: ['hard pluck'] })];
  expect(alone).toEqual(corpusTake(7, 'hard pluck', 0));
});

test('every kind gives finite samples within the rails, belts in the range of real use, releases within the take', () => {
  const seen = new Set<string>();
  for (const { kind, recording, truth } of corpus(21, { takesPerKind: 1 })) {
    seen.add(kind);
    expect(
      recording.samples.every((value) => Math.abs(value) <= 1),
      kind,
    ).toBe(true);
    expect(truth.frequencyHz).toBeGreaterThan(20);
    expect(truth.frequencyHz).toBeLessThan(700);
    expect(truth.forceN).toBeGreaterThanOrEqual(1);
    expect(truth.forceN).toBeLessThanOrEqual(60);
    expect(truth.boundHz).toBeGreaterThan(0);
    const durationS = recording.samples.length / recording.sampleRateHz;
    for (const startS of truth.pluckStartsS) expect(startS).toBeLessThan(durationS - 0.5);
  }
  expect([...seen]).toEqual(KINDS.map(({ name }) => name));
});

test('each kind of sound that is no belt can be made', () => {
  const made = [...nonBelts(3, { takesPerKind: 1 })];
  expect(made.map(({ kind }) => kind)).toEqual(NON_BELTS.map(({ name }) => name));
  for (const { recording } of made) expect(recording.samples.every((value) => Math.abs(value) <= 1)).toBe(true);
});

test('clean takes ring at the frequency of their truth late in the decay', () => {
  let judged = 0;
  for (const { recording, truth } of corpus(5, { takesPerKind: 16, kinds: ['clean'] })) {
    const { frequencyHz, decayS, pluckStartsS } = truth;
    if (decayS > 0.2 || frequencyHz * decayS < 4) continue; // the windows below must lie within the take and hold some periods
    const dampedHz = Math.sqrt(frequencyHz ** 2 - (1 / (2 * Math.PI * decayS)) ** 2);
    const firstS = pluckStartsS[0]! + decayS;
    const at = { nearHz: dampedHz, firstS, secondS: firstS + 0.5 * decayS, lengthS: 1.5 * decayS, sampleRateHz: recording.sampleRateHz };
    // What is left of the glide about two decay times after the release, and the leakage of overtones in a window of few periods.
    const tolerance = 0.15 * truth.glideRelative + 1e-3;
    expect(Math.abs(toneHz(recording.samples, at) / dampedHz - 1)).toBeLessThan(tolerance);
    judged++;
  }
  expect(judged).toBeGreaterThan(5);
});
