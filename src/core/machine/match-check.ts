/** A check of a pair's match: plucks in turn, from which follow both readings, the ratio, and whether another pluck is wanted. */

import type { PluckSound, Reading } from '../outcome.ts';
import { beltReading, heardBelt } from './adjust/group-readings.ts';
import type { AdjustPlan } from './adjust/plan.ts';
import { type PairTest, pairTest } from './pair-test.ts';

export interface MatchPluck {
  readonly belt: 0 | 1;
  readonly sound: PluckSound;
}

export interface MatchCheck {
  readonly test: PairTest;
  readonly readings: readonly [Reading | undefined, Reading | undefined];
  /** The sounds of each belt, in order; the same list for the same plucks. */
  readonly sounds: readonly [readonly PluckSound[], readonly PluckSound[]];
}

/** @param plan  of two belts that must match */
export function matchCheck(plan: AdjustPlan, plucks: readonly MatchPluck[]): MatchCheck {
  const soundsOf = (belt: 0 | 1): readonly PluckSound[] => plucks.filter((pluck) => pluck.belt === belt).map(({ sound }) => sound);
  const sounds = [soundsOf(0), soundsOf(1)] as const;
  const answered = sounds.map((own, belt) => (own.length > 0 ? beltReading(plan, belt, own) : undefined));
  const [one, other] = answered.map((answer) => answer?.basis && heardBelt(answer.reading, answer.basis));
  const test = pairTest({
    plucks: plucks.map(({ belt, sound }) => ({ belt, frequencyHz: sound.frequencyHz })),
    belts: one && other && [one, other],
    likeness: plan.likeness,
    toleranceRelative: plan.matchRelative ?? 1,
  });
  return { test, readings: [answered[0]?.reading, answered[1]?.reading], sounds };
}
