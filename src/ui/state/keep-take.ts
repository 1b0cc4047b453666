/** From a take on the page to one that is kept, and a kept one computed again where an input was corrected. */

import type { KeptBelt } from '../../../shared/document/belt.ts';
import type { When } from '../../../shared/document/common.ts';
import type { KeptAnswer, KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { answerOf } from '../../core/answer.ts';
import type { Reading } from '../../core/outcome.ts';
import { PROGRAM_VERSION } from '../../words/program.ts';
import type { NewItem } from './new-item.ts';
import { understood } from './span-setup.ts';
import type { AppState } from './state.ts';

/** What is told along with a take. */
export interface KeepNotes {
  readonly name?: string | undefined;
  readonly note?: string | undefined;
}

/** Undefined where there is no reading to keep: nothing heard, the demo, or another place's take. */
export function keepable({ take, answer, ownEntered, errand }: AppState): boolean {
  return take !== undefined && take.source !== 'demo' && answer.reading !== undefined && !ownEntered && !errand;
}

/** The plucks and inputs that an answer rests on, in short. */
export const keptMark = ({ take, understood: { setup }, entered: { on } }: AppState): string =>
  JSON.stringify([take?.plucks.length, setup, on]);

export const isKeptAsItIs = (state: AppState): boolean => state.keptAs !== undefined && state.keptAs.mark === keptMark(state);

/**
 * @param item   id and times of a new item
 * @param heard  when the plucks were heard
 */
export function takeToKeep(state: AppState, item: NewItem, heard: When, { name, note }: KeepNotes): KeptTake | undefined {
  const { take, answer, understood: told } = state;
  if (!take || !answer.reading || !keepable(state)) return undefined;
  const { on, ...entered } = state.entered;
  return plain({
    ...item,
    heard,
    name,
    on,
    source: take.source,
    fileName: take.fileName,
    processing: take.processing,
    sampleRateHz: take.sampleRateHz,
    sounds: take.plucks.map(({ sound }) => sound),
    entered,
    now: { setup: told.setup, answer: keptAnswer(answer.reading), program: PROGRAM_VERSION, computedAt: item.changedAt },
    answeredBefore: [],
    note,
  });
}

/** The same take kept once more, after more plucks or a corrected input: what was told of it stays, and what it said under other inputs. */
export function keptAgain(state: AppState, before: KeptTake, changedAt: string): KeptTake | undefined {
  const { id, made, heard, name, note, temperatureK, answeredBefore } = before;
  const take = takeToKeep(state, { id, made, changedAt }, heard, { name, note });
  if (!take) return undefined;
  const isCorrected = JSON.stringify(take.now.setup) !== JSON.stringify(before.now.setup);
  return plain({ ...take, temperatureK, answeredBefore: isCorrected ? [...answeredBefore, before.now] : answeredBefore });
}

/** Only what a file can hold: no field that is not told, no object that is shared. */
const plain = (take: unknown): KeptTake => JSON.parse(JSON.stringify(take)) as KeptTake;

export const keptAnswer = ({ frequencyHz, forceN, grade, soundGrade, reasons, pluckCount }: Reading): KeptAnswer => ({
  frequencyHz: { value: frequencyHz.value, standardUncertainty: frequencyHz.standardUncertainty, u95: frequencyHz.u95 },
  forceN: forceN && { value: forceN.value, low: forceN.low, high: forceN.high, u95: forceN.u95 },
  grade,
  soundGrade,
  reasonIds: reasons.map(({ id }) => id),
  pluckCount,
});

/** The whole answer of a kept take, with its budget and its reasons, as this version of the program computes it. */
export const answerOfKept = ({ sounds, now, processing, sampleRateHz }: KeptTake): Reading | undefined =>
  answerOf({ sounds, setup: now.setup, processing, sampleRateHz }).reading;

/** The take under what is known of its belt by now; itself where that changes nothing. The answer so far stays with it. */
export function recomputed(take: KeptTake, belts: readonly KeptBelt[], computedAt: string): KeptTake {
  const { setup } = understood(take.entered, belts);
  if (JSON.stringify(setup) === JSON.stringify(take.now.setup)) return take;
  const { reading } = answerOf({ sounds: take.sounds, setup, processing: take.processing, sampleRateHz: take.sampleRateHz });
  if (!reading) return take;
  const now = { setup, answer: keptAnswer(reading), program: PROGRAM_VERSION, computedAt };
  return plain({ ...take, now, answeredBefore: [...take.answeredBefore, take.now] });
}

/** Takes follow a belt whose values were corrected, in the same change that corrects them. */
export function withTakesRecomputed(before: KeptDocument, after: KeptDocument, computedAt: string): KeptDocument {
  if (before.belts === after.belts) return after;
  const old = new Map(before.belts.map((belt) => [belt.id, belt]));
  const corrected = new Set(after.belts.filter((belt) => old.has(belt.id) && old.get(belt.id) !== belt).map(({ id }) => id));
  if (!after.takes.some(({ entered }) => corrected.has(entered.beltId))) return after;
  const takes = after.takes.map((take) => (corrected.has(take.entered.beltId) ? recomputed(take, after.belts, computedAt) : take));
  return { ...after, takes };
}
