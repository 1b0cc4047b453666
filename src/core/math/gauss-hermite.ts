/** Gauss-Hermite quadrature for the normal distribution: means over an uncertain input from a few well-chosen values of it. */

/** Nodes in standard deviations from the mean, ascending, and their weights, which sum to 1. */
export interface NormalNodes {
  readonly deviations: readonly number[];
  readonly weights: readonly number[];
}

/** Value of the normalised Hermite polynomial He_n / sqrt(n!) at x, and of the one before it. */
function hermite(n: number, x: number): { value: number; before: number } {
  let before = 0;
  let value = 1;
  for (let k = 0; k < n; k++) [before, value] = [value, (x * value - Math.sqrt(k) * before) / Math.sqrt(k + 1)];
  return { value, before };
}

/**
 * Nodes that give the mean of every polynomial up to degree 2 `count` − 1 exactly.
 *
 * @param count  1 to 20
 * @see Abramowitz & Stegun 25.4.46; here for the weight exp(−x²/2)/sqrt(2π)
 */
export function normalNodes(count: number): NormalNodes {
  if (!Number.isInteger(count) || count < 1 || count > 20) throw new RangeError(`normalNodes needs a count from 1 to 20, got ${count}`);
  const deviations: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < count; i++) {
    const x = rootBetween(count, -Math.sqrt(4 * count + 2), i);
    const { before } = hermite(count, x);
    deviations.push(x);
    weights.push(1 / (count * before * before));
  }
  return { deviations, weights };
}

/** Root number `index` of He_n, counted from the lowest: found by the sign changes on a grid finer than the roots lie, then by bisection. */
function rootBetween(n: number, lowest: number, index: number): number {
  const cells = 40 * n + 1; // odd, so that no cell edge falls on the root 0
  const width = (-2 * lowest) / cells;
  let found = -1;
  for (let cell = 0; cell < cells; cell++) {
    let low = lowest + cell * width;
    let high = low + width;
    const rising = hermite(n, low).value < 0;
    if (rising === hermite(n, high).value < 0 || ++found < index) continue;
    while (true) {
      const middle = (low + high) / 2;
      if (middle <= low || middle >= high) return Math.abs(middle) < 1e-12 ? 0 : middle;
      if (rising === hermite(n, middle).value < 0) low = middle;
      else high = middle;
    }
  }
  throw new RangeError(`He_${n} has no root number ${index}`);
}
