/** Where the figures of the histogram's axis stand. */

const FIGURES_AT_MOST = 6;

/** Round figures between the ends, in steps of 1, 2 or 5. */
export function axisFigures(from: number, to: number): { readonly values: readonly number[]; readonly decimals: number } {
  const rough = (to - from) / FIGURES_AT_MOST;
  if (!(rough > 0)) return { values: [from], decimals: 1 };
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((factor) => factor * power >= rough) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return {
    values: Array.from({ length: count }, (_, index) => (first + index) * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}
