/** Order statistics of small samples. */

/**
 * Quantile with linear interpolation between order statistics (type 7 of Hyndman and Fan, The American Statistician 50 (1996)).
 *
 * @param values  [n >= 1], any order, not modified
 * @throws RangeError when values is empty
 */
export function quantile(values: ArrayLike<number>, probability: number): number {
  if (values.length === 0) throw new RangeError('quantile needs at least one value');
  const sorted = Float64Array.from(values).sort();
  const position = probability * (sorted.length - 1);
  const below = Math.floor(position);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below]! + (position - below) * (sorted[above]! - sorted[below]!);
}

export const median = (values: ArrayLike<number>): number => quantile(values, 0.5);
