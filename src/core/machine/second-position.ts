/** Whether a second position of the carriage pays, reckoned before anything is plucked: typical plucks at both, combined as real ones are. */

import type { Take } from '../answer.ts';
import type { Grade } from '../outcome.ts';
import { type PlanQuestion, plannedSpan, setupAt } from './plan.ts';
import { twoPositions } from './two-positions.ts';
import { PLANNED_RATE_HZ, typicalSounds } from './typical-pluck.ts';
import type { Reach } from './zones.ts';

export interface PlannedSecond {
  readonly firstM: number;
  readonly secondM: number;
  /** Larger half of each 95 % interval over the force: of the first alone, of the second alone, of both together. */
  readonly firstAlone: number;
  readonly secondAlone: number;
  readonly together: number;
  readonly grade: Grade;
}

/** Below this share of the better of both alone, the walk to the machine pays. */
const PAYS_BELOW = 0.85;
/** Lengths to try, as multiples of the first; the far ones tell more of the ends, the near ones are to be had on more machines. */
const FACTORS = [2, 3, 1.5, 1 / 2, 2 / 3] as const;
const TO_WHOLE_M = 0.01;

/**
 * @param forceN  one of the forces of the question
 * @returns `undefined` where the belt was not told, one of the spans gives no force, or the lengths are alike
 */
export function plannedSecond(
  question: PlanQuestion,
  lengths: { firstM: number; secondM: number },
  forceN: number,
): PlannedSecond | undefined {
  const takes = [lengths.firstM, lengths.secondM].map((spanLengthM): Take | undefined => {
    const setup = setupAt(question, spanLengthM);
    const sounds = typicalSounds(setup, forceN, question);
    return sounds?.length ? { sounds, setup, sampleRateHz: PLANNED_RATE_HZ } : undefined;
  });
  const [first, second] = takes;
  if (!first || !second) return undefined;
  const found = twoPositions([first, second]);
  if (found.kind !== 'combined') return undefined;
  const one = { ...question, forceN: { lowN: forceN, highN: forceN } };
  const alone = (spanLengthM: number): number => plannedSpan(one, spanLengthM)?.worst.forceU95Relative ?? Number.POSITIVE_INFINITY;
  return {
    ...lengths,
    firstAlone: alone(lengths.firstM),
    secondAlone: alone(lengths.secondM),
    together: found.forceN.u95! / found.forceN.value,
    grade: found.grade,
  };
}

export const pays = ({ firstAlone, secondAlone, together }: PlannedSecond): boolean =>
  together <= PAYS_BELOW * Math.min(firstAlone, secondAlone);

/** The second length that pays most among a few that people would park at; `undefined` where none within reach pays. */
export function bestSecond(question: PlanQuestion, firstM: number, forceN: number, { fromM, toM }: Reach): PlannedSecond | undefined {
  const candidates = FACTORS.map((factor) => Math.round((factor * firstM) / TO_WHOLE_M) * TO_WHOLE_M).filter(
    (length) => length >= fromM && length <= toM,
  );
  return candidates
    .map((secondM) => plannedSecond(question, { firstM, secondM }, forceN))
    .filter((second) => second !== undefined)
    .filter(pays)
    .toSorted((a, b) => a.together - b.together)[0];
}

export interface AskedSecond {
  readonly question: PlanQuestion;
  readonly firstM: number;
  /** Left out: the one that pays most within reach. */
  readonly secondM?: number | undefined;
  readonly reach: Reach;
}

/** For a told second length whatever it gives; else the best one, where one pays. */
export function askSecond({ question, firstM, secondM, reach }: AskedSecond): PlannedSecond | undefined {
  const { lowN, highN } = question.forceN;
  const forceN = Math.sqrt(lowN * highN);
  return secondM === undefined ? bestSecond(question, firstM, forceN, reach) : plannedSecond(question, { firstM, secondM }, forceN);
}
