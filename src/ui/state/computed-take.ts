/** A kept take computed anew with what is known now; what it said before stays with it. */

import type { KeptBelt } from '../../../shared/document/belt.ts';
import type { KeptAnswer, KeptTake } from '../../../shared/document/take.ts';
import { answerOf } from '../../core/answer.ts';
import type { PluckSound, Reading } from '../../core/outcome.ts';
import type { EnteredSetup } from '../../ports.ts';
import { understood } from './span-setup.ts';

/** An answer in short, as it is kept. */
export function answerInShort(reading: Reading): KeptAnswer {
  const { frequencyHz, forceN, grade, soundGrade, reasons, pluckCount } = reading;
  const { value, standardUncertainty, u95 } = frequencyHz;
  return {
    frequencyHz: { value, standardUncertainty, u95 },
    forceN: forceN && { value: forceN.value, low: forceN.low, high: forceN.high, u95: forceN.u95 },
    grade,
    soundGrade,
    reasonIds: reasons.map(({ id }) => id),
    pluckCount,
  };
}

/** Whether the take was computed with other values of its belt, or of its bench's ends, than count now. */
export function isOutOfDate(take: KeptTake, ownBelts: readonly KeptBelt[]): boolean {
  if (!ownBelts.some(({ id }) => id === take.entered.beltId)) return false;
  const { belt, ends } = understood(take.entered as EnteredSetup, ownBelts).setup;
  return !sameJson(take.now.setup.belt, belt) || !sameJson(take.now.setup.ends, ends);
}

/** @param at  moment of the computation, UTC */
export function recomputedTake(take: KeptTake, ownBelts: readonly KeptBelt[], at: string): KeptTake {
  const { setup } = understood(take.entered as EnteredSetup, ownBelts);
  const sounds = take.sounds as readonly PluckSound[];
  const { reading } = answerOf({ sounds, setup, processing: take.processing, sampleRateHz: take.sampleRateHz });
  if (!reading) return take;
  const now: KeptTake['now'] = {
    setup: { ...setup, ends: [...setup.ends] },
    answer: answerInShort(reading),
    program: take.now.program,
    computedAt: at,
  };
  return { ...take, now, answeredBefore: [...take.answeredBefore, take.now] };
}

/** What is left out and what is undefined are the same once it was kept. */
const sameJson = (one: unknown, other: unknown): boolean => canonical(one) === canonical(other);
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  ) ?? '';
