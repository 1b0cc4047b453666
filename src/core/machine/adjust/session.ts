/** A session of adjusting: from what has happened so far to what is believed now and what is asked for next. Nothing is kept but the steps. */

import type { PluckSound } from '../../outcome.ts';
import { type AdjustGroup, COUPLING } from './adjusters.ts';
import { type Belief, beliefBefore } from './belief.ts';
import { type GroupScale, groupScale } from './group-readings.ts';
import { type Advice, nextTurn } from './next-turn.ts';
import type { AdjustPlan } from './plan.ts';
import { type Course, courseAfter, neededAgain, type PathPoint, PLUCKS_NEEDED } from './replay.ts';
import { type Standing, standingOf } from './standing.ts';
import { type Reading, type Step, soundsTogether } from './steps.ts';

export type Ask =
  /** `why`: nothing is known of it yet, it was moved, its neighbour's move may have moved it, or the match is open. */
  | {
      readonly kind: 'pluck';
      readonly belt: number;
      readonly have: number;
      readonly need: number;
      readonly why: 'first' | 'moved' | 'neighbour' | 'open';
    }
  /** `need`: plucks of the belt afterwards. */
  | { readonly kind: 'move'; readonly advice: Advice; readonly need: number }
  | { readonly kind: 'done' }
  /**
   * `no-force`: the plucks tell no force. `no-move`: none helps without passing a limit. `inputs`: nothing better can be had, but density, length and
   * ends leave the target open. `cannot-tell`: more plucks do not make the match certain.
   */
  | { readonly kind: 'stuck'; readonly why: 'no-force' | 'no-move' | 'inputs' | 'cannot-tell' };

export interface Session {
  readonly ask: Ask;
  /** Missing until every belt was read once. */
  readonly belief?: Belief | undefined;
  readonly standing?: Standing | undefined;
  /** The last plucks of each belt; missing where it was not plucked since it was moved. */
  readonly latest: readonly (Reading | undefined)[];
  /** The group after the first readings and after each move. */
  readonly path: readonly PathPoint[];
}

/** This near to the middle of the target, relative, a verdict of 90 % is as good as any. */
const NEAR_MIDDLE = 0.05;
/** So many more plucks of each belt are asked for where the match is open. */
const MOST_MORE_EACH = 3;

export function sessionOf(plan: AdjustPlan, steps: readonly Step[]): Session {
  const { first, rest } = firstReadings(plan, steps);
  const have = (belt: number): number => first[belt]?.sounds.length ?? 0;
  const open = first.findIndex((_, belt) => have(belt) < PLUCKS_NEEDED);
  if (open >= 0)
    return { ask: { kind: 'pluck', belt: open, have: have(open), need: PLUCKS_NEEDED, why: 'first' }, latest: first, path: [] };
  const complete = first as readonly Reading[];
  const scale = groupScale(
    plan,
    complete.map(({ sounds }) => sounds),
  );
  if (scale === undefined) return { ask: { kind: 'stuck', why: 'no-force' }, latest: first, path: [] };
  const course = courseAfter(plan, scale, { belief: beliefBefore(groupOf(plan, scale)), first: complete, steps: rest });
  const standing = standingOf(course.belief);
  const { belief, latest, path } = course;
  return { ask: askAfter(plan, course, { standing, last: steps.at(-1) }), belief, standing, latest, path };
}

/** The first reading of every belt, in whatever order its plucks came, and what came after the last of them was complete. */
function firstReadings(plan: AdjustPlan, steps: readonly Step[]) {
  const first: (Reading | undefined)[] = plan.belts.map(() => undefined);
  for (const [at, step] of steps.entries()) {
    if (step.kind !== 'reading') return { first, rest: steps.slice(at) };
    const before = first[step.belt];
    first[step.belt] = before ? { ...step, sounds: soundsTogether(before.sounds, step.sounds) } : step;
    if (first.every((one) => (one?.sounds.length ?? 0) >= PLUCKS_NEEDED)) return { first, rest: steps.slice(at + 1) };
  }
  return { first, rest: [] };
}

const groupOf = (plan: AdjustPlan, { commonRelativeU, unlikeRelativeU }: GroupScale): AdjustGroup => ({
  targetForceN: plan.targetForceN,
  matchRelative: plan.matchRelative,
  belts: plan.belts,
  coupling: plan.crossed ? COUPLING.crossed : COUPLING.apart,
  commonRelativeU,
  unlikeRelativeU,
});

function askAfter(plan: AdjustPlan, course: Course, { standing, last }: { standing: Standing; last: Step | undefined }): Ask {
  const [next] = course.waited;
  if (next) return { kind: 'pluck', ...next, have: course.latest[next.belt]?.sounds.length ?? 0 };
  if (standing.done || (standing.met && isNearMiddle(plan, standing))) return { kind: 'done' };
  const all = plan.belts.map((_, i) => i);
  const mayTell = course.more < MOST_MORE_EACH * all.length;
  const advice = nextTurn(course.belief, course.round) ?? nextTurn(course.belief, all);
  if (advice && !standing.looksRight) return { kind: 'move', advice, need: neededAgain(plan, advice.belt, course.latest[advice.belt]) };
  if (standing.belts.some(({ verdict }) => verdict === 'low' || verdict === 'high')) return { kind: 'stuck', why: 'no-move' };
  if ((standing.match?.verdict ?? 'matched') === 'matched') return { kind: 'stuck', why: 'inputs' };
  if (!mayTell) return { kind: 'stuck', why: 'cannot-tell' };
  // Plucks alternate, so that a drift of all belts cancels.
  const belt = ((last?.kind === 'reading' ? last.belt : -1) + 1) % all.length;
  return { kind: 'pluck', belt, have: 0, need: 1, why: 'open' };
}

/** Where no move would make a verdict that stands much surer. */
function isNearMiddle({ targetForceN: { lowN, highN } }: AdjustPlan, { belts }: Standing): boolean {
  return belts.every(({ forceN }) => Math.abs(forceN.value / ((lowN + highN) / 2) - 1) <= NEAR_MIDDLE);
}

/** The steps after one more pluck: of the belt that was asked for, and after the move that was asked for. */
export function withPluck(plan: AdjustPlan, steps: readonly Step[], sound: PluckSound): readonly Step[] {
  const { ask } = sessionOf(plan, steps);
  switch (ask.kind) {
    case 'move':
      return [...steps, { kind: 'move', advice: ask.advice }, { kind: 'reading', belt: ask.advice.belt, sounds: [sound] }];
    case 'pluck': {
      const last = steps.at(-1);
      const goesOn = last?.kind === 'reading' && last.belt === ask.belt && ask.have > 0;
      if (goesOn) return [...steps.slice(0, -1), { ...last, sounds: [...last.sounds, sound] }];
      return [...steps, { kind: 'reading', belt: ask.belt, sounds: [sound] }];
    }
    default:
      return steps;
  }
}
