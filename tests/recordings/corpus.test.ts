/**
 * One take of every kind of the simulated corpus, and one of every sound that is no belt: counts that must not get worse. The benchmark
 * tells how good the estimator is; this only notices when it has been broken.
 */

import { beforeAll, expect, test } from 'vitest';
import { isOctaveType, isRight, isWithin, NEAR } from '../bench/judge.ts';
import { type BeltResult, beltResult, type NonBeltResult, nonBeltResult } from '../bench/ours.ts';
import { corpus, nonBelts } from '../support/corpus/corpus.ts';

/** Not the benchmark's: what is tuned there is not tuned on these. */
const SEED = 62;

let belts: readonly BeltResult[] = [];
let others: readonly NonBeltResult[] = [];

beforeAll(() => {
  belts = Array.from(corpus(SEED, { takesPerKind: 1 }), (take) => beltResult(take));
  others = Array.from(nonBelts(SEED, { takesPerKind: 1 }), nonBeltResult);
}, 300_000);

const idsOf = (results: readonly { readonly id: string }[]) => results.map(({ id }) => id);

test('nearly every belt is right within 1 %', () => {
  const wrong = belts.filter((result) => !isRight(result));
  expect(wrong.length, idsOf(wrong).join(', ')).toBeLessThanOrEqual(4);
});

test('what is answered is hardly ever wrong, and never in a reading to be trusted', () => {
  const wrong = belts.filter((result) => result.hertz !== undefined && !isWithin(result, NEAR));
  expect(wrong.length, idsOf(wrong).join(', ')).toBeLessThanOrEqual(1);
  expect(idsOf(wrong.filter(({ grade }) => grade === 'trusted'))).toEqual([]);
  expect(idsOf(belts.filter((result) => result.grade === 'trusted' && isOctaveType(result)))).toEqual([]);
});

test('intervals of frequency and force hold the truth', () => {
  const answered = belts.filter(({ hertz }) => hertz !== undefined);
  const outside = answered.filter(({ hertz, truthHz, u95 }) => Math.abs(hertz! - truthHz) > u95!);
  expect(outside.length, idsOf(outside).join(', ')).toBeLessThanOrEqual(3);
  const beside = answered.filter(({ force, truth }) => !force || force.low > truth.forceN || force.high < truth.forceN);
  expect(beside.length, idsOf(beside).join(', ')).toBeLessThanOrEqual(5);
});

test('grades still trust something', () => {
  expect(belts.filter(({ grade }) => grade === 'trusted').length).toBeGreaterThanOrEqual(10);
});

test('sounds that are no belt give hardly a reading', () => {
  const heard = others.filter(({ hertz }) => hertz !== undefined);
  expect(heard.length, idsOf(heard).join(', ')).toBeLessThanOrEqual(2);
  expect(idsOf(heard.filter(({ grade }) => grade === 'trusted'))).toEqual([]);
});
