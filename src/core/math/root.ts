/** Where a rising function passes zero. */

/**
 * Root of a function that rises from below zero at `low` to above it at `high`, by false position kept within reach of bisection: at most
 * one step more than bisection takes, a handful where the function is smooth.
 *
 * @param search.tolerance  width at which the bracket is narrow enough, > 0
 * @throws RangeError where an end is not finite
 * @returns an end where it is the root, or has the sign that the other one should have
 * @see Oliveira & Takahashi, ACM Trans. Math. Softw. 47 (2021) 5, with κ1 = 0.1/(b − a), κ2 = 2, n0 = 1
 */
export function risingRoot(search: {
  readonly value: (x: number) => number;
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
}): number {
  let { low, high } = search;
  if (!Number.isFinite(high - low)) throw new RangeError(`risingRoot needs finite ends, got ${low} and ${high}`);
  let below = search.value(low);
  let above = search.value(high);
  if (below >= 0) return low;
  if (above <= 0) return high;
  const epsilon = search.tolerance / 2;
  const width = high - low;
  const mostSteps = Math.max(0, Math.ceil(Math.log2(width / search.tolerance))) + 1;
  for (let step = 0; high - low > search.tolerance; step++) {
    const middle = (low + high) / 2;
    const straight = (low * above - high * below) / (above - below);
    const towards = Math.sign(middle - straight);
    const shift = (0.1 / width) * (high - low) ** 2;
    const truncated = shift <= Math.abs(middle - straight) ? straight + towards * shift : middle;
    const reach = epsilon * 2 ** (mostSteps - step) - (high - low) / 2;
    const x = Math.abs(truncated - middle) <= reach ? truncated : middle - towards * reach;
    if (x <= low || x >= high) break; // as narrow as doubles can tell
    const value = search.value(x);
    if (value === 0) return x;
    if (value < 0) [low, below] = [x, value];
    else [high, above] = [x, value];
  }
  return (low + high) / 2;
}
