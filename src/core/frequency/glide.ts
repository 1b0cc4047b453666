/** A hard pluck stretches the belt: its frequency starts high and falls with the square of the amplitude. This takes it to small amplitude. */

import type { Measured } from '../math/measured.ts';
import type { FittedPartial } from './refine.ts';

/** The same partials fitted in a stretch that begins later. */
export interface LaterFit {
  /** How much later than the first stretch, s. */
  readonly laterS: number;
  readonly partials: readonly FittedPartial[];
}

/**
 * What the offset is before anything is heard, relative to the frequency: of most plucks next to nothing, of some anything a finger
 * can do. One normal distribution would either add noise to all light plucks or leave the hard ones uncorrected.
 */
const PRIOR = [
  { share: 0.85, u: 0.0001 },
  { share: 0.15, u: 0.003 },
] as const;
/** Drift of a partial that is no glide, relative, for each of its number: what nested stretches do not share. */
const WANDER = 0.0004;
/** Damped sinusoids never rise as they die: less than nothing is noise. */
const LEAST = -0.001;
/** A partial that drifts unlike the others by more than this many of its standard uncertainties counts for less. */
const HUBER = 2;
const ROUNDS = 8;

/**
 * Relative amount by which the first stretch reads above small amplitude.
 *
 * The offset of a stretch falls as exp(−2 d/τ) with its delay d, so the drift between stretches is −δ (1 − exp(−2 d/τ)): one unknown.
 *
 * @param decayS  amplitude decay time of the strongest partial, s
 */
export function glideOf(first: readonly FittedPartial[], later: readonly LaterFit[], decayS: number): Measured {
  let weightSum = 0;
  let sum = 0;
  for (const { laterS, partials } of later) {
    const drift = meanDrift(first, partials);
    if (!drift) continue;
    const gone = 1 - Math.exp((-2 * laterS) / decayS);
    const weight = gone ** 2 / drift.standardUncertainty ** 2;
    sum += weight * (-drift.value / gone);
    weightSum += weight;
  }
  return posterior({ sum, weightSum });
}

/** Mean and standard deviation of the offset after a measurement of `sum / weightSum` with variance `1 / weightSum`; none: weight 0. */
function posterior({ sum, weightSum }: { readonly sum: number; readonly weightSum: number }): Measured {
  const parts = PRIOR.map(({ share, u }) => {
    const variance = 1 / (weightSum + 1 / u ** 2);
    const mean = sum * variance;
    // density of the measurement under this part: normal with the two variances added
    const spread = 1 + weightSum * u ** 2;
    const density = (share / Math.sqrt(spread)) * Math.exp(-0.5 * (weightSum > 0 ? sum ** 2 / weightSum / spread : 0));
    return { mean, variance, density };
  });
  const total = parts.reduce((t, { density }) => t + density, 0) || 1;
  const mean = parts.reduce((t, part) => t + (part.density / total) * part.mean, 0);
  const square = parts.reduce((t, part) => t + (part.density / total) * (part.variance + part.mean ** 2), 0);
  return { value: Math.max(LEAST, mean), standardUncertainty: Math.sqrt(Math.max(0, square - mean ** 2)) };
}

/** Robust weighted mean of ln(later/first) over the partials that both have; nested stretches share noise, so variances subtract. */
function meanDrift(first: readonly FittedPartial[], later: readonly FittedPartial[]): Measured | undefined {
  const relative = (p: FittedPartial) => p.frequencyHz.standardUncertainty / p.frequencyHz.value;
  const drifts = later.flatMap((partial) => {
    const before = first.find(({ number }) => number === partial.number);
    if (!before) return [];
    const shared = Math.max(relative(partial) ** 2 - relative(before) ** 2, 0.25 * relative(partial) ** 2);
    const sigma = Math.hypot(Math.sqrt(shared), WANDER * partial.number);
    return Number.isFinite(sigma) ? [{ drift: Math.log(partial.frequencyHz.value / before.frequencyHz.value), sigma }] : [];
  });
  if (drifts.length === 0) return undefined;
  let mean = drifts.reduce((best, d) => (d.sigma < best.sigma ? d : best)).drift;
  let weightSum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const weights = drifts.map(({ drift, sigma }) => Math.min(1, (HUBER * sigma) / Math.max(1e-12, Math.abs(drift - mean))) / sigma ** 2);
    weightSum = weights.reduce((sum, w) => sum + w, 0);
    mean = drifts.reduce((sum, { drift }, i) => sum + weights[i]! * drift, 0) / weightSum;
  }
  return { value: mean, standardUncertainty: 1 / Math.sqrt(weightSum) };
}
