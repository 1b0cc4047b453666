/** Before and after: whether something that happened changed the force, and by how much. */

import { expandedUncertainty } from '../math/propagation.ts';
import { robustFit } from '../math/robust-fit.ts';
import { type LoggedReading, ownRelativeU } from './time-line.ts';

export interface Change {
  /** After minus before, N. */
  readonly differenceN: number;
  /** Half of its 95 % interval. */
  readonly u95N: number;
  readonly before: number;
  readonly after: number;
  readonly verdict: 'rose' | 'fell' | 'not-seen';
}

/** So many readings on each side; further ones say more of what happened since than of the event. */
const NEAREST = 5;
/** Below so many readings a course cannot be told from a step. */
const FEWEST_FOR_COURSE = 6;
/** The readings' own doubt counts as so many degrees of freedom (our judgement). */
const PRIOR_DEGREES_OF_FREEDOM = 2;

/**
 * Step of the force at a moment, from the readings nearest before and after it, beside the course that both sides share; a wild reading is held
 * back. What all readings of the belt share falls out.
 *
 * @param readings  of one belt, with a force each, in any order
 * @returns undefined where a side has no reading, or both together fewer than three
 */
export function changeAt(readings: readonly LoggedReading[], atS: number): Change | undefined {
  const inOrder = [...readings].filter(({ forceN }) => forceN !== undefined).sort((a, b) => a.atS - b.atS);
  const before = inOrder.filter((one) => one.atS < atS).slice(-NEAREST);
  const after = inOrder.filter((one) => one.atS >= atS).slice(0, NEAREST);
  if (before.length === 0 || after.length === 0 || before.length + after.length < 3) return undefined;
  const both = [...before, ...after];
  const us = both.map((one) => ownRelativeU(one) * one.forceN!.value);
  const step = us.map((u, index) => (index < before.length ? 0 : 1 / u));
  const level = us.map((u) => 1 / u);
  // What went on changing all the while is not the event's doing, as far as there are readings enough to tell it.
  const canTellCourse = Math.min(before.length, after.length) >= 2 && both.length >= FEWEST_FOR_COURSE;
  const span = both.at(-1)!.atS - both[0]!.atS || 1;
  const course = us.map((u, index) => (both[index]!.atS - atS) / span / u);
  const fit = robustFit({
    columns: canTellCourse ? [level, step, course] : [level, step],
    values: both.map(({ forceN }, index) => forceN!.value / us[index]!),
    smallestScale: 1,
  });
  if (!fit) return undefined;
  const shown = fit.standardDeviation ** 2;
  const all = PRIOR_DEGREES_OF_FREEDOM + fit.degreesOfFreedom;
  const shrunk = (PRIOR_DEGREES_OF_FREEDOM + fit.degreesOfFreedom * shown) / all;
  const [variance, degreesOfFreedom] = shown > 1 ? [shown, fit.degreesOfFreedom] : [shrunk, all];
  const standardUncertainty = Math.sqrt(variance * fit.unscaledCovariance[canTellCourse ? 4 : 3]!);
  const u95N = expandedUncertainty({ standardUncertainty, degreesOfFreedom }, 0.95);
  const differenceN = fit.coefficients[1]!;
  const isSeen = Math.abs(differenceN) > u95N;
  return {
    differenceN,
    u95N,
    before: before.length,
    after: after.length,
    verdict: isSeen ? (differenceN > 0 ? 'rose' : 'fell') : 'not-seen',
  };
}
