/** Order statistics of small samples. */

/**
 * Quantile with linear interpolation between order statistics (type 7 of Hyndman and Fan, The American Statistician 50 (1996)).
 *
 * @param values  [n >= 1], any order, not modified
 * @throws RangeError when values is empty
 */
export function quantile(values: ArrayLike<number>, probability: number): number {
  const count = values.length;
  if (count === 0) throw new RangeError('quantile needs at least one value');
  const scratch = Float64Array.from(values);
  const position = probability * (count - 1);
  const rank = Math.floor(position);
  const below = selectInPlace(scratch, rank);
  if (position === rank) return below;
  let above = Number.POSITIVE_INFINITY; // the next order statistic is the least of what selection left to the right
  for (let i = rank + 1; i < count; i++) above = Math.min(above, scratch[i]!);
  return below + (position - rank) * (above - below);
}

export const median = (values: ArrayLike<number>): number => quantile(values, 0.5);

/** The value of a rank; afterwards all smaller ones stand to its left and all larger ones to its right (Hoare's selection). */
function selectInPlace(values: Float64Array, rank: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let left = low;
    let right = high;
    while (left <= right) {
      while (values[left]! < pivot) left++;
      while (values[right]! > pivot) right--;
      if (left <= right) {
        const swapped = values[left]!;
        values[left++] = values[right]!;
        values[right--] = swapped;
      }
    }
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return values[rank]!;
}
