/** What a calibration starts from: one reading of the gauge under one known force. */

export type Direction = 'up' | 'down';

export interface LoadedReading {
  /** Counts rows of data from 1, as their owner sees them. */
  readonly row: number;
  /** In the gauge's own divisions. */
  readonly reading: number;
  /** >= 0. Rows of one force hung the same weight. */
  readonly forceN: number;
  /** Standard uncertainty of this weight alone, >= 0; repeats of one weight share it. */
  readonly forceUN?: number | undefined;
  /** Whether the load had been raised or lowered to this one, with the gauge left on. */
  readonly direction?: Direction | undefined;
  /** One sitting of the gauge: readings of different series were taken with the gauge turned or elsewhere on the span. */
  readonly series?: string | undefined;
}

/** What all forces of a run share: it neither shows in the residuals nor shrinks with repeats. Standard uncertainties. */
export interface SharedForceDoubt {
  /** Of a factor common to all: scale, gravity, angle. */
  readonly relative: number;
  /** Of an amount common to all: tare, hook, belt below the gauge. */
  readonly offsetN: number;
}

export const NO_SHARED_DOUBT: SharedForceDoubt = { relative: 0, offsetN: 0 };

/** Groups of positions by what the rows have in common; order of first appearance. */
export function positionsBy<T, K>(items: readonly T[], keyOf: (item: T) => K): ReadonlyMap<K, readonly number[]> {
  const groups = new Map<K, number[]>();
  for (const [index, item] of items.entries()) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  }
  return groups;
}

/** Distinct forces, rising. */
export const loadsOf = (rows: readonly LoadedReading[]): readonly number[] =>
  [...new Set(rows.map(({ forceN }) => forceN))].sort((a, b) => a - b);

/** +1 going up, −1 coming down, 0 where it was not told. */
export const signOf = ({ direction }: LoadedReading): number => (direction === 'up' ? 1 : direction === 'down' ? -1 : 0);
