/** What many draws say of a quantity: mean, standard deviation, quantiles, histogram; each draw may carry a weight. */

export interface DrawnDistribution {
  readonly mean: number;
  readonly standardDeviation: number;
  /** Value below which a share of the weight lies. */
  quantile(share: number): number;
  /** (Σ w)² / Σ w²: how many unweighted draws would say as much. */
  readonly effectiveDraws: number;
  /** Even bins from the 0.1 to the 99.9 % quantile; what lies outside counts in the outermost. Shares sum to 1. */
  histogram(bins: number): { readonly from: number; readonly binWidth: number; readonly shares: Float64Array };
}

/**
 * @param values   Float64Array [n >= 1]; not modified
 * @param weights  Float64Array [n], >= 0, at least one above; equal where missing
 */
export function drawnDistribution(values: Float64Array, weights?: Float64Array): DrawnDistribution {
  const count = values.length;
  if (count === 0) throw new RangeError('drawnDistribution needs at least one draw, got 0');
  const weightOf = (i: number): number => (weights ? weights[i]! : 1);
  const order = Uint32Array.from(values, (_, i) => i).sort((a, b) => values[a]! - values[b]!);
  let total = 0;
  let squares = 0;
  let first = 0;
  for (let i = 0; i < count; i++) {
    total += weightOf(i);
    squares += weightOf(i) ** 2;
    first += weightOf(i) * values[i]!;
  }
  if (!(total > 0)) throw new RangeError('drawnDistribution needs a weight above 0');
  const mean = first / total;
  let second = 0;
  for (let i = 0; i < count; i++) second += weightOf(i) * (values[i]! - mean) ** 2;
  const quantile = (share: number): number => {
    let below = 0;
    for (const i of order) {
      below += weightOf(i);
      if (below >= share * total) return values[i]!;
    }
    return values[order[count - 1]!]!;
  };
  return {
    mean,
    standardDeviation: Math.sqrt(second / total),
    quantile,
    effectiveDraws: total ** 2 / squares,
    histogram(bins) {
      const from = quantile(0.001);
      const binWidth = (quantile(0.999) - from) / bins || 1;
      const shares = new Float64Array(bins);
      for (let i = 0; i < count; i++) {
        const bin = Math.min(bins - 1, Math.max(0, Math.floor((values[i]! - from) / binWidth)));
        shares[bin]! += weightOf(i) / total;
      }
      return { from, binWidth, shares };
    },
  };
}
