/** Where a rising function passes zero. */

/**
 * Root of a function that rises from below zero at `low` to above it at `high`: false position that halves the weight of an end which
 * stays (Illinois), never outside the bracket.
 *
 * @param search.tolerance  width at which two estimates are the same, > 0
 */
export function risingRoot(search: {
  readonly value: (x: number) => number;
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
}): number {
  let { low, high } = search;
  let below = search.value(low);
  let above = search.value(high);
  if (below >= 0) return low;
  if (above <= 0) return high;
  let last = low;
  for (let step = 0; step < 200; step++) {
    const x = (low * above - high * below) / (above - below);
    const value = search.value(x);
    if (value === 0 || Math.abs(x - last) <= search.tolerance || high - low <= search.tolerance) return x;
    if (value < 0) {
      if (last < x && step > 0 && last === low) above /= 2;
      low = x;
      below = value;
    } else {
      if (last > x && step > 0 && last === high) below /= 2;
      high = x;
      above = value;
    }
    last = x;
  }
  return last;
}
