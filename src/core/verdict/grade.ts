/** How far an answer may be trusted: one rule for the interval, one for the reasons, and the worse of the two stands. */

import type { ForceN, Grade, Reason } from '../outcome.ts';
import { DEFAULT_TOLERANCE_RELATIVE, type SpanSetup } from '../setup.ts';

/** Within the tolerance: trusted. Within this many times it: doubtful. Beyond, the interval covers the target wherever in it the value lies. */
const DOUBTFUL_UP_TO = 2;

const RANK: Readonly<Record<Grade, number>> = { trusted: 0, doubtful: 1, unusable: 2 };

/** The worst of several grades; trusted where there is none. */
export const worstGrade = (grades: readonly Grade[]): Grade =>
  grades.reduce<Grade>((worst, grade) => (RANK[grade] > RANK[worst] ? grade : worst), 'trusted');

export const isWorse = (grade: Grade, than: Grade): boolean => RANK[grade] > RANK[than];

/** Tolerance of the force, relative: told, else half the target's width over its middle, else the trade's usual one. */
export function toleranceOf(setup: SpanSetup): number {
  if (setup.toleranceRelative !== undefined) return setup.toleranceRelative;
  const target = setup.targetForceN;
  const fromTarget = target === undefined ? 0 : (target.highN - target.lowN) / (target.highN + target.lowN);
  return fromTarget > 0 ? fromTarget : DEFAULT_TOLERANCE_RELATIVE;
}

/** Grade of an interval: its larger half against the tolerance. An interval without an end is unusable. */
export function gradeOfInterval(forceN: ForceN | undefined, toleranceRelative: number): Grade {
  if (forceN?.u95 === undefined) return 'unusable';
  return gradeOfRatio(forceN.u95 / (forceN.value * toleranceRelative));
}

/** Grade of a doubt that is so many times the tolerance. */
export function gradeOfRatio(ratio: number): Grade {
  if (ratio <= 1) return 'trusted';
  return ratio <= DOUBTFUL_UP_TO ? 'doubtful' : 'unusable';
}

/** The best grade that the reasons allow, of one kind or of all. */
export const gradeOfReasons = (reasons: readonly Reason[], about?: Reason['about']): Grade =>
  worstGrade(reasons.filter((reason) => about === undefined || reason.about === about).map((reason) => reason.holdsAt));
