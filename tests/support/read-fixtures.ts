/** The synthesised recordings of `fixtures/` as they lie on disk, with their truth. */

import { readdirSync, readFileSync } from 'node:fs';
import type { Recording } from '../../src/core/samples/recording.ts';
import { readWav } from '../../src/core/samples/wav.ts';
import { type BeltTruth, type BrokenTruth, type Fixture, type FixtureTruth, type NoBeltTruth, SOURCE } from './fixture-truth.ts';

const FOLDER = new URL('../../fixtures/', import.meta.url);

export const storedFixtures: readonly Fixture[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json') && !file.startsWith('string-')) // those were cut, not made: see cut-strings.mjs
  .map((file) => file.replace(/\.json$/, ''))
  .map((name) => ({
    name,
    bytes: readFileSync(new URL(`${name}.wav`, FOLDER)),
    truth: JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8')) as FixtureTruth,
  }))
  .filter(({ truth }) => truth.source === SOURCE.source);

type With<T extends FixtureTruth> = Fixture & { readonly truth: T };

export const storedBelts = storedFixtures.filter((fixture): fixture is With<BeltTruth> => 'forceN' in fixture.truth);
export const storedNoBelts = storedFixtures.filter((fixture): fixture is With<NoBeltTruth> => 'reading' in fixture.truth);
export const storedBroken = storedFixtures.filter((fixture): fixture is With<BrokenTruth> => 'fault' in fixture.truth);

/** The sound of a fixture that can be read. */
export function soundOf({ name, bytes }: Fixture): Recording {
  const answer = readWav(bytes);
  if (answer.kind !== 'wav') throw new Error(`fixtures/${name}.wav was refused: ${answer.why}`);
  return answer.recording;
}
