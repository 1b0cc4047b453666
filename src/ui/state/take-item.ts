/** A take of a session of adjusting as it is kept: its sounds, the setup as typed and as understood, and what was answered. */

import type { KeptTake } from '../../../shared/document/take.ts';
import type { PluckSound, Reading } from '../../core/outcome.ts';
import type { SoundProcessing } from '../../core/samples/recording.ts';
import type { SpanSetup } from '../../core/setup.ts';
import type { EnteredSetup } from '../../ports.ts';
import { PROGRAM_VERSION } from '../../words/program.ts';
import { keptAnswer } from './keep-take.ts';
import { newItem, nowAt, nowWhen } from './new-item.ts';

export interface HeardTake {
  readonly sounds: readonly PluckSound[];
  readonly entered: EnteredSetup;
  readonly setup: SpanSetup;
  readonly reading: Reading;
  readonly sampleRateHz: number;
  readonly processing?: SoundProcessing | undefined;
  readonly source: KeptTake['source'];
}

export const newTake = (heard: HeardTake): KeptTake => plain({ ...newItem(), heard: nowWhen(), answeredBefore: [], ...partsOf(heard) });

/** The same take with more plucks, or fewer. */
export const changedTake = (take: KeptTake, heard: HeardTake): KeptTake => plain({ ...take, ...partsOf(heard) });

function partsOf({ sounds, entered: { on, ...entered }, setup, reading, sampleRateHz, processing, source }: HeardTake) {
  const now = { setup, answer: keptAnswer(reading), program: PROGRAM_VERSION, computedAt: nowAt() };
  return { on, source, processing, sampleRateHz, sounds, entered, now };
}

/** Only what a file can hold: no field that is not told, no object that is shared. */
const plain = (take: unknown): KeptTake => JSON.parse(JSON.stringify(take)) as KeptTake;
