/** Which adjuster to move next, which way and how far: in steps that a person can make, never past a belt's limit, never down to a slack belt. */

import type { Measured } from '../../math/measured.ts';
import { type Adjuster, RESPONSE_SPREAD, STEPS, STICTION_RELATIVE } from './adjusters.ts';
import { type Belief, believedForceN, believedResponseN, type Turn } from './belief.ts';
import { movingTurn, turned } from './learning.ts';
import { plannedMoves } from './planned-moves.ts';
import { standingOf } from './standing.ts';

/** A move by so much; of a spring only the way. */
export type Advice = ({ readonly kind: 'turn' } & Turn) | { readonly kind: 'way'; readonly belt: number; readonly way: -1 | 1 };

/** How far the middle stays from the limit, in standard deviations of what is known. */
const LIMIT_SD = 3.5;
/** A belt is not let go below this share of the target's low end, at this many standard deviations: a slack one says nothing when plucked. */
const SLACK = { share: 0.15, sd: 2 } as const;
/** A step may round the force by this share of the target at most; else a finer one is taken. */
const ROUNDING_SHARE = 0.012;
/** Puts loosening before any distance from the target. */
const ORDER_OF_LOOSENING = 1e3;
/** A move that would change the force by less than this share of the target is not asked for: as like as not it would stick. */
const WORTH_SHARE = 0.01;
/** How far beyond the largest response that was thought possible one still is feared. */
const FEARED_BEYOND = 1.1;

/**
 * The next move; undefined where none would help.
 *
 * @param adjusters  belts whose adjusters may be moved now
 */
export function nextTurn(belief: Belief, adjusters: readonly number[]): Advice | undefined {
  const { belts } = belief.group;
  const known = belts.flatMap(({ adjuster }, belt) => (adjuster.kind === 'spring' ? [] : [belt]));
  const moves = plannedMoves(belief, known);
  const turns = known
    .map((belt, k) => ({ belt, turns: moves[k]! }))
    .filter(({ belt }) => adjusters.includes(belt))
    .map((moving) => makeable(belief, moving))
    .filter(({ turns }) => turns !== 0);
  const [first] = turns.sort((a, b) => order(belief, a) - order(belief, b));
  return first ? { kind: 'turn', ...first } : springWay(belief, adjusters);
}

/** What is too tight is loosened first, which leaves room below the limit for what the others add; then the belt that is furthest off. */
function order(belief: Belief, { belt, turns }: Turn): number {
  const { lowN, highN } = belief.group.targetForceN;
  const { value } = believedForceN(belief, belt);
  const distance = Math.abs(value / ((lowN + highN) / 2) - 1);
  return turns < 0 && value > highN ? -distance - ORDER_OF_LOOSENING : -distance;
}

function springWay(belief: Belief, adjusters: readonly number[]): Advice | undefined {
  const { group } = belief;
  const { lowN, highN } = group.targetForceN;
  const standing = standingOf(belief);
  const belt = adjusters.find((one) => group.belts[one]!.adjuster.kind === 'spring' && standing.belts[one]!.verdict !== 'met');
  if (belt === undefined) return undefined;
  return { kind: 'way', belt, way: believedForceN(belief, belt).value < (lowN + highN) / 2 ? 1 : -1 };
}

/** A move as a person can make it: play added where the way changes, rounded to a step, shortened until it is safe; 0 where nothing is left. */
function makeable(belief: Belief, moving: Turn): Turn {
  const { belt } = moving;
  const way = Math.sign(moving.turns);
  if (way === 0) return moving;
  const { lowN, highN } = belief.group.targetForceN;
  const [responseN, aimN] = [believedResponseN(belief, belt, belt).value, (lowN + highN) / 2];
  if (Math.abs(moving.turns) * responseN < WORTH_SHARE * aimN) return { belt, turns: 0 };
  const step = stepFor(belief.group.belts[belt]!.adjuster, responseN, aimN);
  // A turn that is longer than any play shows how much is lost in it.
  const lost = way - movingTurn(belief, { belt, turns: way }).turns;
  let steps = Math.round((moving.turns + lost) / step);
  if (Math.sign(steps) !== way) return { belt, turns: 0 };
  while (steps !== 0 && !isSafe(belief, { belt, turns: steps * step })) steps -= way;
  return { belt, turns: steps * step };
}

/** The largest step that rounds the force finely enough, else the finest there is. */
function stepFor({ kind }: Adjuster, responseN: number, aimN: number): number {
  const steps = kind === 'slide' ? STEPS.slide : STEPS.screw;
  return steps.find((step) => (step / 2) * responseN <= ROUNDING_SHARE * aimN) ?? steps[steps.length - 1]!;
}

/** Whether every belt that rises stays below its limit, and every one that falls above slack, however badly the adjuster is known. */
function isSafe(belief: Belief, turn: Turn): boolean {
  const { group } = belief;
  const after = turned(belief, turn);
  return group.belts.every(({ limitN = Infinity }, i) => {
    const now = believedForceN(belief, i).value;
    const { value: mean, standardUncertainty } = believedForceN(after, i);
    if (turn.turns > 0) return (i !== turn.belt && group.coupling.mean === 0) || mostAfter(belief, turn, i) <= limitN;
    const sd = Math.hypot(standardUncertainty, group.commonRelativeU * mean);
    return mean >= now || mean - SLACK.sd * sd >= Math.min(SLACK.share * group.targetForceN.lowN, now);
  });
}

/** The force after a tightening turn if the adjuster does the most that is feared of it; what the belt held back may come on top. */
function mostAfter(belief: Belief, turn: Turn, belt: number): number {
  const { commonRelativeU } = belief.group;
  const { value, standardUncertainty } = believedForceN(belief, belt);
  const doubt = LIMIT_SD * Math.hypot(standardUncertainty, commonRelativeU * value);
  return value * (1 + STICTION_RELATIVE) + doubt + fearedResponseN(belief, turn.belt, belt) * turn.turns;
}

function fearedResponseN(belief: Belief, adjuster: number, belt: number): number {
  const { belts, coupling } = belief.group;
  const { modelResponseN = Infinity } = belts[adjuster]!.adjuster;
  const most = FEARED_BEYOND * RESPONSE_SPREAD.high * modelResponseN;
  const own = believedResponseN(belief, adjuster, adjuster);
  if (adjuster === belt) return Math.min(most, highOfPositive(own, LIMIT_SD));
  // Small changes stick, so that a coupling can look like none: the layout's usual one is feared all the same.
  const cross = believedResponseN(belief, adjuster, belt);
  const feared = Math.max(cross.value + LIMIT_SD * cross.standardUncertainty, coupling.mean * own.value);
  return Math.min(most * (Math.max(0, coupling.mean) + 2 * coupling.sd), feared);
}

/** Quantile of a quantity that cannot be negative: log-normal with this mean and standard deviation, so that an ill-known one has its long upper tail. */
function highOfPositive({ value, standardUncertainty }: Measured, sds: number): number {
  const lnSd = Math.sqrt(Math.log1p((standardUncertainty / value) ** 2));
  return value * Math.exp(sds * lnSd - lnSd ** 2 / 2);
}
