/** Several unknowns at once, as a joint normal distribution: moved by what is done to them, narrowed by what is read (the Kalman filter). */

export interface GaussianState {
  /** Float64Array [n]. */
  readonly mean: Float64Array;
  /** Row-major, symmetric, Float64Array [n · n]. */
  readonly covariance: Float64Array;
}

/** Unknowns that do not depend on each other, each by its mean and standard deviation. */
export function independentState(unknowns: readonly { readonly mean: number; readonly sd: number }[]): GaussianState {
  const n = unknowns.length;
  const covariance = new Float64Array(n * n);
  unknowns.forEach(({ sd }, i) => {
    covariance[i * n + i] = sd * sd;
  });
  return { mean: Float64Array.from(unknowns, ({ mean }) => mean), covariance };
}

export const sdOf = (state: GaussianState, i: number): number => Math.sqrt(Math.max(0, covarianceOf(state, i, i)));

export const covarianceOf = ({ mean, covariance }: GaussianState, i: number, j: number): number => covariance[i * mean.length + j]!;

/** A change of one unknown: its mean moves by `by`, and it now depends on the others through `slopes`; `variance` is added. */
export interface Shift {
  readonly index: number;
  readonly by: number;
  /** Index and slope of each unknown that the change depends on. */
  readonly slopes: readonly (readonly [index: number, slope: number])[];
  readonly variance: number;
}

/** The state after changes that happen at once: P' = J P Jᵀ + Q, with J the identity and the slopes. */
export function shifted(state: GaussianState, shifts: readonly Shift[]): GaussianState {
  const n = state.mean.length;
  const mean = state.mean.slice();
  const rows = state.covariance.slice(); // J P
  for (const { index, by, slopes } of shifts) {
    mean[index]! += by;
    for (const [from, slope] of slopes) {
      for (let k = 0; k < n; k++) rows[index * n + k]! += slope * state.covariance[from * n + k]!;
    }
  }
  const covariance = rows.slice(); // (J P) Jᵀ
  for (const { index, slopes } of shifts) {
    for (const [from, slope] of slopes) {
      for (let k = 0; k < n; k++) covariance[k * n + index]! += slope * rows[k * n + from]!;
    }
  }
  for (const { index, variance } of shifts) covariance[index * n + index]! += variance;
  return { mean, covariance };
}

/** The state after one unknown was read, with the variance of the reading's own error, > 0 where the unknown itself has none. */
export function observed(state: GaussianState, reading: { index: number; value: number; variance: number }): GaussianState {
  const n = state.mean.length;
  const { index, value, variance } = reading;
  const row = Float64Array.from({ length: n }, (_, k) => state.covariance[index * n + k]!);
  const total = row[index]! + variance;
  if (!(total > 0)) return state;
  const surprise = value - state.mean[index]!;
  const mean = state.mean.map((m, k) => m + (row[k]! / total) * surprise);
  const covariance = state.covariance.map((c, at) => c - (row[Math.floor(at / n)]! * row[at % n]!) / total);
  return { mean, covariance };
}

/** The state with one unknown known anew, and nothing learned of the others from it. */
export function restarted(state: GaussianState, known: { index: number; value: number; sd: number }): GaussianState {
  const n = state.mean.length;
  const { index, value, sd } = known;
  const mean = state.mean.slice();
  mean[index] = value;
  const covariance = state.covariance.map((c, at) => (Math.floor(at / n) === index || at % n === index ? 0 : c));
  covariance[index * n + index] = sd * sd;
  return { mean, covariance };
}
