/** When exactly the span was touched: whatever the room's own sound does not predict is new. */

const ORDER = 24;
const LEARN_S = 0.3;
/** Least sound to learn the room from; below it the samples are taken as they are. */
const LEARN_AT_LEAST_S = 0.04;
const STEP_S = 0.001;
/** The coarse onset lies within this time of the touch. */
const SEARCH_S = 0.06;

/**
 * Index of the sample at which the sound changes, to about 2 ms. A causal prediction-error filter learnt before the onset whitens
 * the room (a zero-phase one would smear the ring into what came before it); then the energy in steps of 1 ms is split in two where
 * two variances explain it best.
 *
 * @param samples  decimated, Float64Array [n]; not modified
 * @param onset    coarse index of the onset
 */
export function touchIndex(samples: Float64Array, options: { readonly onset: number; readonly rateHz: number }): number {
  const { onset, rateHz } = options;
  const search = Math.round(SEARCH_S * rateHz);
  const from = Math.max(0, onset - search);
  const to = Math.min(samples.length, onset + search);
  const learnFrom = Math.max(0, from - Math.round(LEARN_S * rateHz));
  const predictor =
    from - learnFrom >= LEARN_AT_LEAST_S * rateHz ? linearPredictor(samples.subarray(learnFrom, from), ORDER) : new Float64Array(0);
  const step = Math.max(1, Math.round(STEP_S * rateHz));
  const energies: number[] = [];
  for (let start = from; start + step <= to; start += step) {
    let energy = 0;
    for (let t = start; t < start + step; t++) energy += predictionError(samples, t, predictor) ** 2;
    energies.push(energy);
  }
  return from + step * splitOfTwoVariances(energies);
}

function predictionError(samples: Float64Array, t: number, predictor: Float64Array): number {
  let error = samples[t]!;
  for (let i = 0; i < predictor.length && i < t; i++) error -= predictor[i]! * samples[t - 1 - i]!;
  return error;
}

/** Coefficients a of x_t ≈ Σ a_i x_{t−1−i} by the Levinson-Durbin recursion on the autocorrelation. */
function linearPredictor(samples: Float64Array, order: number): Float64Array {
  const correlation = Float64Array.from({ length: order + 1 }, (_, lag) => {
    let sum = 0;
    for (let t = lag; t < samples.length; t++) sum += samples[t]! * samples[t - lag]!;
    return sum;
  });
  let error = correlation[0]! * (1 + 1e-9);
  let a = new Float64Array(order);
  for (let m = 0; m < order && error > 0; m++) {
    let reflection = correlation[m + 1]!;
    for (let i = 0; i < m; i++) reflection -= a[i]! * correlation[m - i]!;
    reflection /= error;
    const next = a.slice();
    next[m] = reflection;
    for (let i = 0; i < m; i++) next[i] = a[i]! - reflection * a[m - 1 - i]!;
    a = next;
    error *= 1 - reflection ** 2;
  }
  return a;
}

/** Number of values before the change, for Gaussian samples of one variance before and a larger one after (likelihood ratio). */
function splitOfTwoVariances(energies: readonly number[]): number {
  const total = energies.reduce((sum, e) => sum + e, 0);
  const tiny = total * 1e-12 + Number.MIN_VALUE;
  let before = 0;
  let best = { cost: Number.POSITIVE_INFINITY, split: 0 };
  for (let split = 1; split < energies.length; split++) {
    before += energies[split - 1]!;
    const meanBefore = before / split + tiny;
    const meanAfter = (total - before) / (energies.length - split) + tiny;
    if (meanAfter <= meanBefore) continue;
    const cost = split * Math.log(meanBefore) + (energies.length - split) * Math.log(meanAfter);
    if (cost < best.cost) best = { cost, split };
  }
  return best.split;
}
