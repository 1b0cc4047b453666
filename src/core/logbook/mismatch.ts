/** Two belts that should match, over time: each reading of one with the nearest reading of the other, as long as nothing was changed between. */

import { isReset, type Logged, type LoggedReading, lastResetS, ownRelativeU } from './time-line.ts';
import type { TimedReading } from './trend-courses.ts';

/** Two readings count as taken together within this time. */
const TOGETHER_S = 12 * 3600;

export interface Mismatch extends TimedReading {
  /** (other − one) / one. */
  readonly value: number;
  readonly oneId: string;
  readonly otherId: string;
}

/**
 * Difference of the second belt from the first, relative to the first, at each time at which both were read. Only what the two readings do not
 * share makes its doubt: density and stiffness of belts of one kind fall out of the ratio.
 *
 * @param options.all           also before the last reset of either belt
 */
export function mismatches(
  logged: readonly Logged[],
  pair: { readonly oneId: string; readonly otherId: string },
  options: { readonly all?: boolean | undefined } = {},
): readonly Mismatch[] {
  const of = (beltId: string): LoggedReading[] =>
    logged
      .filter((entry): entry is LoggedReading => entry.kind === 'reading' && entry.beltId === beltId)
      .filter(({ forceN, grade }) => forceN !== undefined && grade !== 'unusable');
  const since = options.all ? Number.NEGATIVE_INFINITY : Math.max(lastResetS(logged, pair.oneId), lastResetS(logged, pair.otherId));
  const resets = logged.filter((event) => isReset(event, pair.oneId) || isReset(event, pair.otherId));
  const ones = of(pair.oneId).filter(({ atS }) => atS >= since);
  const found: Mismatch[] = [];
  for (const other of of(pair.otherId)) {
    if (other.atS < since) continue;
    const nearest = ones
      .filter((one) => Math.abs(one.atS - other.atS) <= TOGETHER_S && !resets.some(({ atS }) => isBetween(atS, one.atS, other.atS)))
      .sort((a, b) => Math.abs(a.atS - other.atS) - Math.abs(b.atS - other.atS))[0];
    if (nearest) found.push(mismatchOf(nearest, other));
  }
  return found.sort((a, b) => a.atS - b.atS);
}

function mismatchOf(one: LoggedReading, other: LoggedReading): Mismatch {
  const ratio = other.forceN!.value / one.forceN!.value;
  const temperatures = [one.temperatureC, other.temperatureC].filter((value) => value !== undefined);
  return {
    atS: Math.max(one.atS, other.atS),
    value: ratio - 1,
    standardUncertainty: ratio * Math.hypot(ownRelativeU(one), ownRelativeU(other)),
    temperatureC: temperatures.length > 0 ? temperatures.reduce((sum, value) => sum + value, 0) / temperatures.length : undefined,
    oneId: one.id,
    otherId: other.id,
  };
}

const isBetween = (x: number, a: number, b: number): boolean => Math.min(a, b) < x && x <= Math.max(a, b);
