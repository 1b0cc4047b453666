/** One recording of each kind of difficulty, and of each kind of sound that is no belt, through the whole chain. */

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import { readWav } from '../../src/core/samples/wav.ts';
import { KIND_SOURCE, type KindTruth, kindFixtures } from '../support/kind-fixtures.ts';

const FOLDER = new URL('../../fixtures/', import.meta.url);

const stored = readdirSync(FOLDER)
  .filter((file) => file.startsWith('kind-') && file.endsWith('.json'))
  .map((file) => file.replace(/\.json$/, ''))
  .map((name) => ({ name, truth: JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8')) as KindTruth }));

/** In a double pluck the second finger comes too soon to be told from the first: both count as one. */
const COUNTED_AS_ONE = ['double pluck'];

function heard(name: string) {
  const answer = readWav(readFileSync(new URL(`${name}.wav`, FOLDER)));
  if (answer.kind !== 'wav') throw new Error(`fixtures/${name}.wav was refused: ${answer.why}`);
  return answer.recording;
}

it('are those that are made', () => {
  const made = new Map(kindFixtures().map(({ name, truth }) => [name, JSON.parse(JSON.stringify(truth))]));
  expect(stored.map(({ name }) => name).sort()).toEqual([...made.keys()].sort());
  for (const { name, truth } of stored) expect(truth).toEqual(made.get(name));
  expect(stored.every(({ truth }) => truth.source === KIND_SOURCE.source)).toBe(true);
});

describe.each(stored)('$name', ({ name, truth }) => {
  const { outcome, plucks } = measure(heard(name), truth.setup);

  if (truth.frequencyHz === null) {
    it('gives no reading', () => {
      expect(outcome.kind).toBe('nothing');
    });
    return;
  }

  it('gives the first partial within its uncertainty and 0.5 %', () => {
    if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
    const off = Math.abs(outcome.frequencyHz.value - truth.frequencyHz!);
    expect(off).toBeLessThan(0.005 * truth.frequencyHz!);
    expect(off).toBeLessThan(outcome.frequencyHz.u95);
  });

  it('counts its plucks', () => {
    const count = COUNTED_AS_ONE.includes(truth.kind) ? 1 : truth.pluckStartsS!.length;
    expect(plucks.length).toBe(count);
  });
});
