/** Whether a force meets its target: another question than how far it may be trusted, answered beside the grade. */

import { normalCdf } from '../math/normal.ts';
import type { ForceN } from '../outcome.ts';
import type { ForceRange } from '../setup.ts';
import { type Conformance, conformance, DECIDED_FROM, verdictOf } from './conformance.ts';

export type AgainstTarget =
  /** Outside at 90 % or more; `byN` from the value to the nearer end of the target. */
  | { readonly kind: 'low' | 'high'; readonly byN: number }
  /** Inside at 90 % or more; `part`: where that holds of one half of the target too. */
  | { readonly kind: 'inside'; readonly part: 'whole' | 'lower' | 'upper' }
  /** Undecided, and the value lies inside. */
  | { readonly kind: 'probably-inside' }
  /** Undecided. */
  | { readonly kind: 'cannot-tell' };

/**
 * Decided by the probability of conformance (JCGM 106:2012, 7): what is less sure than 90 % is said to be open.
 *
 * @param target  from its low to its high end, in newtons
 */
export function againstTarget(forceN: ForceN, target: ForceRange): AgainstTarget {
  const { value, low = 0, high = Infinity } = forceN;
  const { lowN, highN } = target;
  switch (verdictOf(forceConformance(forceN, target))) {
    case 'low':
      return { kind: 'low', byN: lowN - value };
    case 'high':
      return { kind: 'high', byN: value - highN };
    case 'met':
      return { kind: 'inside', part: partOf(forceN, target) };
    case 'undecided': {
      const coversAll = low < lowN && high > highN;
      return !coversAll && value >= lowN && value <= highN ? { kind: 'probably-inside' } : { kind: 'cannot-tell' };
    }
  }
}

/** Probabilities that a force lies below, inside and above a range. */
export const forceConformance = (forceN: ForceN, { lowN, highN }: ForceRange): Conformance =>
  conformance(shareBelow(forceN), { low: lowN, high: highN });

/** The same where the probabilities are known otherwise; of a force inside, no part is told. */
export function verdictAgainst(found: Conformance, valueN: number, { lowN, highN }: ForceRange): AgainstTarget {
  switch (verdictOf(found)) {
    case 'low':
      return { kind: 'low', byN: Math.max(0, lowN - valueN) };
    case 'high':
      return { kind: 'high', byN: Math.max(0, valueN - highN) };
    case 'met':
      return { kind: 'inside', part: 'whole' };
    case 'undecided':
      return found.inside >= 0.5 ? { kind: 'probably-inside' } : { kind: 'cannot-tell' };
  }
}

function partOf(forceN: ForceN, { lowN, highN }: ForceRange): 'whole' | 'lower' | 'upper' {
  const middleN = (lowN + highN) / 2;
  if (forceConformance(forceN, { lowN, highN: middleN }).inside >= DECIDED_FROM) return 'lower';
  return forceConformance(forceN, { lowN: middleN, highN }).inside >= DECIDED_FROM ? 'upper' : 'whole';
}

/** 97.5 % point of the normal distribution: an end of a 95 % interval in standard deviations. */
const END_SD = 1.959964;

/**
 * Share of what is known of a force that lies below another: half of a normal distribution on each side of the median, each as wide as its half of
 * the 95 % interval. Without a low end the force may be as good as none; without a high end half of it may lie anywhere above.
 */
function shareBelow({ value, low = 0, high = Infinity }: ForceN): (forceN: number) => number {
  return (x) => {
    if (x === value) return 0.5;
    const sd = (x < value ? value - low : high - value) / END_SD;
    if (sd === Infinity) return 0.5;
    return sd > 0 ? normalCdf((x - value) / sd) : Number(x > value);
  };
}
