/** Where a group stands: each belt against the target, each two against each other, and whether all is done. */

import type { Measured } from '../../math/measured.ts';
import { type Conformance, type ConformanceVerdict, conformanceOf, verdictOf } from '../../verdict/conformance.ts';
import { type Belief, believedForceN, forceCovariance } from './belief.ts';

export interface BeltStanding {
  /** With what all readings share. */
  readonly forceN: Measured;
  readonly conformance: Conformance;
  readonly verdict: ConformanceVerdict;
}

export interface Standing {
  readonly belts: readonly BeltStanding[];
  /** The two belts that are the least sure to match; missing where nothing needs to. */
  readonly match?: MatchStanding | undefined;
  /** Every belt meets the target and every two match, all of it together at `DONE_FROM` or more. */
  readonly done: boolean;
  /** The same for each by itself, at the 90 % of any verdict. */
  readonly met: boolean;
  /** Every belt meets the target, and no two are found further apart than half of what they may be: to be made certain by plucks, not by moving. */
  readonly looksRight: boolean;
}

export interface MatchStanding {
  readonly pair: readonly [number, number];
  /** Force of the first over that of the second, less one; what both readings share has cancelled. */
  readonly difference: Measured;
  /** Shares of what is known of the ratio: below, inside and above the tolerance. */
  readonly conformance: Conformance;
  readonly verdict: MatchVerdict;
}

export type MatchVerdict = 'matched' | 'not-matched' | 'undecided';

/** Several verdicts at 90 % each would together too often be wrong: a person is sent home at 95 % for all of them at once. */
const DONE_FROM = 0.95;

/** Smallest relative uncertainty of a ratio, so that a belief without doubt still divides. */
const LEAST_RELATIVE_U = 1e-6;

export function standingOf(belief: Belief): Standing {
  const { group } = belief;
  const belts = group.belts.map((_, i) => beltStanding(belief, i));
  const match = group.matchRelative === undefined ? undefined : worstMatch(belief, group.matchRelative);
  // The forces share most of their doubt, so that together they are about as sure as the least sure of them; the match is free of it.
  const together = Math.min(...belts.map(({ conformance }) => conformance.inside)) * (match?.conformance.inside ?? 1);
  const allMet = belts.every(({ verdict }) => verdict === 'met');
  const near = match === undefined || Math.abs(match.difference.value) <= (group.matchRelative ?? 0) / 2;
  const met = allMet && (match?.verdict ?? 'matched') === 'matched';
  return { belts, match, done: together >= DONE_FROM, met, looksRight: allMet && near };
}

function beltStanding(belief: Belief, belt: number): BeltStanding {
  const { targetForceN, commonRelativeU } = belief.group;
  const { value, standardUncertainty: own } = believedForceN(belief, belt);
  const forceN = { value, standardUncertainty: Math.hypot(own, commonRelativeU * value) };
  const conformance = conformanceOf(forceN, { low: targetForceN.lowN, high: targetForceN.highN });
  return { forceN, conformance, verdict: verdictOf(conformance) };
}

function worstMatch(belief: Belief, tolerance: number): MatchStanding | undefined {
  const { belts } = belief.group;
  const pairs = belts.flatMap((_, i) => belts.slice(i + 1).map((_, k) => matchOf(belief, [i, i + 1 + k], tolerance)));
  return pairs.sort(
    (a, b) => a.conformance.inside - b.conformance.inside || Math.abs(b.difference.value) - Math.abs(a.difference.value),
  )[0];
}

function matchOf(belief: Belief, pair: readonly [number, number], tolerance: number): MatchStanding {
  const [a, b] = pair;
  const [A, B] = [a, b].map((belt) => Math.max(believedForceN(belief, belt!).value, Number.MIN_VALUE)) as [number, number];
  const variance =
    forceCovariance(belief, a, a) / (A * A) + forceCovariance(belief, b, b) / (B * B) - (2 * forceCovariance(belief, a, b)) / (A * B);
  const { unlikeRelativeU = LEAST_RELATIVE_U } = belief.group;
  const ratio = { value: A / B, standardUncertainty: (A / B) * Math.sqrt(Math.max(0, variance) + unlikeRelativeU ** 2) };
  const conformance = conformanceOf(ratio, { low: 1 - tolerance, high: 1 + tolerance });
  return { pair, difference: { ...ratio, value: ratio.value - 1 }, conformance, verdict: matchVerdict(conformance) };
}

/** Matched or not at 90 %; which of the two is the tighter makes no difference to whether they match. */
function matchVerdict(conformance: Conformance): MatchVerdict {
  if (verdictOf(conformance) === 'met') return 'matched';
  return verdictOf({ below: 0, inside: conformance.inside, above: conformance.below + conformance.above }) === 'high'
    ? 'not-matched'
    : 'undecided';
}
