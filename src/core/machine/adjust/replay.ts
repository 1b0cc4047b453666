/** The course of a session after its first readings, step by step: which plucks are waited for, what is believed, the path so far. */

import { type Belief, believedForceN } from './belief.ts';
import { beltReading, type GroupScale } from './group-readings.ts';
import { read, turned } from './learning.ts';
import type { Advice } from './next-turn.ts';
import type { AdjustPlan } from './plan.ts';
import { type Standing, standingOf } from './standing.ts';
import { type Reading, type Step, soundsTogether } from './steps.ts';

export interface PathPoint {
  /** Missing for the start. */
  readonly move?: Advice | undefined;
  readonly standing: Standing;
}

export interface Waited {
  readonly belt: number;
  /** It was moved, or its neighbour's move may have moved it. */
  readonly why: 'moved' | 'neighbour';
  readonly need: number;
}

export interface Course {
  readonly belief: Belief;
  /** Belts whose plucks are waited for. */
  readonly waited: readonly Waited[];
  /** Belts whose adjuster may still be moved in this round: each once. */
  readonly round: readonly number[];
  /** Plucks since the last move that were asked for only because the match was open. */
  readonly more: number;
  /** The plucks of each belt since it was moved. */
  readonly latest: readonly (Reading | undefined)[];
  readonly path: readonly PathPoint[];
}

export const PLUCKS_NEEDED = 3;
/** Plucks that repeat within this share of the frequency, standard deviation, need not be taken three times again. */
const REPEATS_WELL = 0.004;
/** A single pluck is believed where it lies within this many standard deviations of what was expected. */
const EXPECTED_WITHIN_SD = 3;
/** A belt beside the one that was moved is plucked where its force has become this uncertain. */
const UNSURE_RELATIVE = 0.012;

/** @param first  a complete reading of each belt */
export function courseAfter(
  plan: AdjustPlan,
  scale: GroupScale,
  given: { belief: Belief; first: readonly Reading[]; steps: readonly Step[] },
): Course {
  const { first, steps } = given;
  const belief = first.reduce((before, reading) => withReading(before, scale, reading), given.belief);
  const start: Course = {
    belief,
    waited: [],
    round: plan.belts.map((_, i) => i),
    more: 0,
    latest: first,
    path: [{ standing: standingOf(belief) }],
  };
  return steps.reduce((course, step) => (step.kind === 'move' ? moved(plan, course, step.advice) : plucked(scale, course, step)), start);
}

function moved(plan: AdjustPlan, course: Course, advice: Advice): Course {
  const { belt } = advice;
  const belief = turned(course.belief, { belt, turns: advice.kind === 'turn' ? advice.turns : advice.way });
  const all = plan.belts.map((_, i) => i);
  const isUnsure = (other: number): boolean => {
    const { value, standardUncertainty } = believedForceN(belief, other);
    return standardUncertainty > UNSURE_RELATIVE * value;
  };
  const need = (one: number): number => neededAgain(plan, one, course.latest[one]);
  const neighbours = all.filter((other) => other !== belt && isUnsure(other));
  const waited: Waited[] = [
    { belt, why: 'moved', need: need(belt) },
    ...neighbours.map((other): Waited => ({ belt: other, why: 'neighbour', need: need(other) })),
  ];
  return {
    belief,
    waited,
    round: (course.round.includes(belt) ? course.round : all).filter((other) => other !== belt),
    more: 0,
    latest: course.latest.map((reading, one) => (waited.some((w) => w.belt === one) ? undefined : reading)),
    path: [...course.path, { move: advice, standing: standingOf(belief) }],
  };
}

/** One pluck where the belt's plucks have repeated well before, else three. */
export function neededAgain(plan: AdjustPlan, belt: number, before: Reading | undefined): number {
  if (before === undefined) return PLUCKS_NEEDED;
  const { sounds } = before;
  if (sounds.length === 1) return 1;
  const { value } = beltReading(plan, belt, sounds).reading.frequencyHz;
  const squares = sounds.reduce((sum, { frequencyHz }) => sum + (frequencyHz.value / value - 1) ** 2, 0);
  return Math.sqrt(squares / (sounds.length - 1)) <= REPEATS_WELL ? 1 : PLUCKS_NEEDED;
}

function plucked(scale: GroupScale, course: Course, step: Reading): Course {
  const { belt } = step;
  const waited = course.waited.find((one) => one.belt === belt);
  const before = course.latest[belt];
  const reading = waited && before ? { ...step, sounds: soundsTogether(before.sounds, step.sounds) } : step;
  const latest = course.latest.map((one, i) => (i === belt ? reading : one));
  if (waited === undefined)
    return { ...markedAgain(course, withReading(course.belief, scale, step)), latest, more: course.more + step.sounds.length };
  const count = reading.sounds.length;
  if (count >= waited.need && (count > 1 || isAsExpected(course.belief, scale, reading))) {
    const rest = course.waited.filter((one) => one !== waited);
    return { ...markedAgain(course, withReading(course.belief, scale, reading)), latest, waited: rest };
  }
  const need = count >= waited.need ? PLUCKS_NEEDED : waited.need;
  return { ...course, latest, waited: course.waited.map((one) => (one === waited ? { ...one, need } : one)) };
}

/** Whether a single pluck lies where the move should have brought the belt. */
function isAsExpected(belief: Belief, scale: GroupScale, { belt, sounds }: Reading): boolean {
  const found = scale.read(belt, sounds);
  if (found === undefined) return false;
  const { value, standardUncertainty } = believedForceN(belief, belt);
  return Math.abs(found.forceN - value) <= EXPECTED_WITHIN_SD * Math.hypot(standardUncertainty, found.ownRelativeU * value);
}

function withReading(belief: Belief, scale: GroupScale, { belt, sounds }: Reading): Belief {
  const found = scale.read(belt, sounds);
  return found ? read(belief, { belt, ...found }) : belief;
}

/** The last point of the path is where the group stands now. */
function markedAgain(course: Course, belief: Belief): Course {
  const last = course.path.at(-1);
  return { ...course, belief, path: [...course.path.slice(0, -1), { move: last?.move, standing: standingOf(belief) }] };
}
