/** The force from those partials that fit one span: what does not fit is named and left out before it can pull. */

import type { ForceN } from '../outcome.ts';
import { forceFromFrequency, forceFromPartials, forceNodes } from './force.ts';
import type { KnownSpan, WeighedCell } from './known-span.ts';
import { type HeardSet, MODEL_ERROR_EACH } from './partial-nodes.ts';

export interface FittingForce {
  /** Missing where the sound leaves no room for a force. */
  readonly forceN: ForceN | undefined;
  /** Stiffness and ends as the partials leave them. */
  readonly cells: readonly WeighedCell[];
  /** Numbers of the partials that the force rests on. */
  readonly numbers: readonly number[];
  /** Numbers of partials that fit no stiffness and ends together with the others; the first to go first. */
  readonly leftOut: readonly number[];
}

/** 99 % points of χ² for one to three degrees of freedom (Abramowitz & Stegun, table 26.8), by count of partials. */
const MISFIT_LIMIT: Readonly<Record<number, number>> = { 1: Infinity, 2: 6.635, 3: 9.21, 4: 11.345 };

/** @param heard  at least one partial, at most four */
export function fittingForce(heard: HeardSet, span: KnownSpan): FittingForce {
  const prior = forceNodes(span);
  const leftOut: number[] = [];
  let set = heard;
  let judged = forceFromPartials(set, span, prior);
  while (judged.misfit > MISFIT_LIMIT[set.partials.length]!) {
    // The lowest partial carries the force; of the others the one goes without which the rest is likeliest: one that only a stiffness far out
    // of the ordinary could fit is not fitted.
    const fewer = set.partials.slice(1).map((gone) => {
      const without = { ...set, partials: set.partials.filter((partial) => partial !== gone) };
      return { gone, without, judged: forceFromPartials(without, span, prior) };
    });
    const best = fewer.reduce((a, b) => (b.judged.lnEvidence > a.judged.lnEvidence ? b : a));
    leftOut.push(best.gone.number);
    set = best.without;
    judged = best.judged;
  }
  const numbers = set.partials.map(({ number }) => number);
  const only = set.partials[0]!;
  if (set.partials.length > 1 || only.number !== 1) {
    return { forceN: judged.forceN, cells: judged.nodes.map(({ node, weight }) => ({ ...node, weight })), numbers, leftOut };
  }
  const relativeU = Math.hypot(only.relativeU, set.sharedRelativeU, MODEL_ERROR_EACH);
  return { forceN: forceFromFrequency({ frequencyHz: only.frequencyHz, relativeU }, span), cells: prior, numbers, leftOut };
}
