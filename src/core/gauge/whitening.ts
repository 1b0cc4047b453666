/** Readings of one weight share its error: least squares see them through weights that know it. */

import { type LoadedReading, positionsBy } from './loaded-reading.ts';

/**
 * Takes a column of values of the rows to one whose errors are independent and alike, and leaves it as it is where no weight is uncertain.
 * The errors of a group of n rows have the covariance σ²(I + ρ 11ᵀ); its inverse root acts on the group's mean alone.
 */
export type Whitening = (column: ArrayLike<number>) => Float64Array;

export const PLAIN: Whitening = (column) => Float64Array.from(column);

/**
 * @param rows
 * @param shareOf  ρ of the rows at a force: variance of the reading by its weight over the variance of one reading; >= 0
 */
export function whiteningOf(rows: readonly LoadedReading[], shareOf: (forceN: number, forceUN: number) => number): Whitening {
  const groups = [...positionsBy(rows, ({ forceN }) => forceN)].map(([forceN, at]) => {
    const u = Math.sqrt(at.reduce((sum, i) => sum + (rows[i]!.forceUN ?? 0) ** 2, 0) / at.length);
    return { at, factor: 1 / Math.sqrt(1 + at.length * shareOf(forceN, u)) - 1 };
  });
  return (column) => {
    const white = Float64Array.from(column);
    for (const { at, factor } of groups) {
      if (factor === 0) continue;
      const mean = at.reduce((sum, i) => sum + column[i]!, 0) / at.length;
      for (const i of at) white[i]! += factor * mean;
    }
    return white;
  };
}
