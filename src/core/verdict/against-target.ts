/** Whether a force meets its target: another question than how far it may be trusted, answered beside the grade. */

import type { ForceN } from '../outcome.ts';
import type { ForceRange } from '../setup.ts';

export type AgainstTarget =
  /** The whole interval lies outside; `byN` from the value to the nearer end of the target. */
  | { readonly kind: 'low' | 'high'; readonly byN: number }
  /** The whole interval lies inside; `part`: where all of it lies in one half. */
  | { readonly kind: 'inside'; readonly part: 'whole' | 'lower' | 'upper' }
  /** The value lies inside, one end of its interval does not. */
  | { readonly kind: 'probably-inside' }
  | { readonly kind: 'cannot-tell' };

/**
 * The whole 95 % interval decides, as a guard band does (JCGM 106:2012, 8.3): what it leaves open is said to be open.
 *
 * @param target  from its low to its high end, in newtons
 */
export function againstTarget(forceN: ForceN, target: ForceRange): AgainstTarget {
  const { value, low = 0, high = Infinity } = forceN;
  const { lowN, highN } = target;
  if (high < lowN) return { kind: 'low', byN: lowN - value };
  if (low > highN) return { kind: 'high', byN: value - highN };
  if (low >= lowN && high <= highN) {
    const middle = (lowN + highN) / 2;
    return { kind: 'inside', part: high <= middle ? 'lower' : low >= middle ? 'upper' : 'whole' };
  }
  const coversAll = low < lowN && high > highN;
  return !coversAll && value >= lowN && value <= highN ? { kind: 'probably-inside' } : { kind: 'cannot-tell' };
}
