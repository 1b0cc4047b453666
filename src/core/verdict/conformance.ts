/** How probable it is that a value meets a range, and the verdict that follows: low, met, high or undecided. */

import { normalCdf } from '../math/normal.ts';

/** A range; a missing end leaves that side open. */
export interface ToleranceInterval {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** Shares of what is known of the value, 0 to 1; they sum to 1. */
export interface Conformance {
  readonly below: number;
  readonly inside: number;
  readonly above: number;
}

export type ConformanceVerdict = 'low' | 'met' | 'high' | 'undecided';

/** From this probability on, a verdict is given. */
export const DECIDED_FROM = 0.9;

/**
 * Conformance of a normally known value.
 *
 * @param known.standardUncertainty  > 0
 * @see JCGM 106:2012, 7.2 to 7.4
 */
export function conformanceOf(
  known: { readonly value: number; readonly standardUncertainty: number },
  { low, high }: ToleranceInterval,
): Conformance {
  const shareBelow = (x: number): number => normalCdf((x - known.value) / known.standardUncertainty);
  return conformance(shareBelow, { low, high });
}

/** Conformance of a value of which the share below any x is known. */
export function conformance(shareBelow: (x: number) => number, { low, high }: ToleranceInterval): Conformance {
  const below = low === undefined ? 0 : shareBelow(low);
  const above = high === undefined ? 0 : 1 - shareBelow(high);
  return { below, inside: 1 - below - above, above };
}

export function verdictOf({ below, inside, above }: Conformance): ConformanceVerdict {
  if (inside >= DECIDED_FROM) return 'met';
  if (below >= DECIDED_FROM) return 'low';
  return above >= DECIDED_FROM ? 'high' : 'undecided';
}
