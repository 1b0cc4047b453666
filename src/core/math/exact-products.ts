/** Sums of products in twice the working precision, where a small rest of large numbers is wanted. */

const SPLITTER = 2 ** 27 + 1;

/** Adds a·b to a sum that is kept in two doubles, high part first (Dekker 1971, Knuth's two-sum). */
export function addProduct(sum: Float64Array, a: number, b: number): void {
  const product = a * b;
  const aBig = SPLITTER * a;
  const aHigh = aBig - (aBig - a);
  const aLow = a - aHigh;
  const bBig = SPLITTER * b;
  const bHigh = bBig - (bBig - b);
  const bLow = b - bHigh;
  const rest = aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
  const high = sum[0]! + product;
  const seen = high - sum[0]!;
  const lost = sum[0]! - (high - seen) + (product - seen);
  sum[0] = high;
  sum[1]! += lost + rest;
}

/**
 * start + Σ a_k b_k, rounded once.
 *
 * @param pair  gives a_k and b_k for k from 0 to count − 1
 */
export function exactDot(start: number, count: number, pair: (k: number) => readonly [number, number]): number {
  const sum = Float64Array.of(start, 0);
  for (let k = 0; k < count; k++) addProduct(sum, ...pair(k));
  return sum[0]! + sum[1]!;
}
