/** Real plucked strings through the whole chain: steadier than any belt, but nobody's model. The truth is their font's own tuning. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/measure.ts';
import type { Recording } from '../../src/core/samples/recording.ts';
import { readWav } from '../../src/core/samples/wav.ts';
import { UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { toneHz } from '../support/heterodyne.ts';

interface StringTruth {
  readonly frequencyHz: number;
  readonly startS: number;
  readonly sampleRateHz: number;
  readonly licence: string;
}

const FOLDER = new URL('../../fixtures/', import.meta.url);
const names = readdirSync(FOLDER)
  .filter((file) => /^string-.*\.wav$/.test(file))
  .map((file) => file.replace(/\.wav$/, ''));

const truthOf = (name: string) => JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8')) as StringTruth;

function recordingOf(name: string): Recording {
  const answer = readWav(readFileSync(new URL(`${name}.wav`, FOLDER)));
  if (answer.kind !== 'wav') throw new Error(`fixtures/${name}.wav was refused: ${answer.why}`);
  return answer.recording;
}

it('are nine of nylon and nine of steel, under a licence that lies beside them', () => {
  expect(names.filter((name) => name.includes('-nylon-'))).toHaveLength(9);
  expect(names.filter((name) => name.includes('-steel-'))).toHaveLength(9);
  expect(new Set(names.map((name) => truthOf(name).licence))).toEqual(new Set(['MIT, see strings-licence.txt']));
  expect(readFileSync(new URL('strings-licence.txt', FOLDER), 'utf8')).toMatch(/Permission is hereby granted, free of charge/);
});

describe.each(names)('%s', (name) => {
  const truth = truthOf(name);
  const recording = recordingOf(name);

  // Each partial alone is not enough: a string swings in two planes, and the beat of the two shifts a partial by up to 0.7 % for a while.
  it('has partials at the multiples of its truth, by phase alone', () => {
    const { frequencyHz, startS, sampleRateHz } = truth;
    expect(recording.sampleRateHz).toBe(sampleRateHz);
    const windows = { firstS: startS + 0.08, secondS: startS + 0.18, lengthS: 0.12, sampleRateHz };
    const off = [1, 2, 3, 4, 5].map((number) => {
      const nearHz = number * frequencyHz;
      return toneHz(recording.samples, { nearHz, ...windows }) / nearHz - 1;
    });
    const median = off.sort((a, b) => a - b)[2]!;
    expect(Math.abs(median)).toBeLessThan(0.004); // largest: 0.27 %; a tuning left out of the truth would be up to 0.75 %
  });

  it('is read within 1 % of its truth, as one pluck, by an estimator that is told nothing', () => {
    const { outcome, plucks } = measure(recording, { ends: UNKNOWN_ENDS });
    if (outcome.kind !== 'reading') throw new Error(`nothing heard: ${outcome.why}`);
    expect(Math.abs(outcome.frequencyHz.value / truth.frequencyHz - 1)).toBeLessThan(0.01);
    expect(plucks).toHaveLength(1);
    expect(Math.abs(plucks[0]!.sound.startS - truth.startS)).toBeLessThan(0.03);
  });
});
