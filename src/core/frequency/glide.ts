/** A hard pluck stretches the belt: its frequency starts high and falls with the square of the amplitude. This takes it to small amplitude. */

import type { Measured } from '../math/measured.ts';
import type { FittedPartial } from './refine.ts';

/** The same partials fitted in a stretch that begins later. */
export interface LaterFit {
  /** How much later than the first stretch, s. */
  readonly laterS: number;
  readonly partials: readonly FittedPartial[];
}

/** Before anything is heard the glide is taken to be 0 with this standard uncertainty, relative to the frequency. */
const PRIOR_U = 0.001;
/** Drift of a frequency that is no glide: noise that the two nested stretches do not share. */
const WANDER = 0.0004;

/**
 * Relative amount by which the first stretch reads above small amplitude.
 *
 * The offset of a stretch falls as exp(−2 d/τ) with its delay d, so the drift between stretches is −δ (1 − exp(−2 d/τ)): one unknown.
 *
 * @param decayS  amplitude decay time of the strongest partial, s
 */
export function glideOf(first: readonly FittedPartial[], later: readonly LaterFit[], decayS: number): Measured {
  let weightSum = 1 / PRIOR_U ** 2;
  let sum = 0;
  for (const { laterS, partials } of later) {
    const drift = meanDrift(first, partials);
    if (!drift) continue;
    const gone = 1 - Math.exp((-2 * laterS) / decayS);
    const weight = gone ** 2 / drift.standardUncertainty ** 2;
    sum += weight * (-drift.value / gone);
    weightSum += weight;
  }
  return { value: sum / weightSum, standardUncertainty: 1 / Math.sqrt(weightSum) };
}

/** Weighted mean of ln(later/first) over the partials that both have; nested stretches share noise, so variances subtract. */
function meanDrift(first: readonly FittedPartial[], later: readonly FittedPartial[]): Measured | undefined {
  let weightSum = 0;
  let sum = 0;
  for (const partial of later) {
    const before = first.find(({ number }) => number === partial.number);
    if (!before) continue;
    const relative = (p: FittedPartial) => p.frequencyHz.standardUncertainty / p.frequencyHz.value;
    const variance = Math.max(relative(partial) ** 2 - relative(before) ** 2, 0.25 * relative(partial) ** 2) + WANDER ** 2;
    sum += Math.log(partial.frequencyHz.value / before.frequencyHz.value) / variance;
    weightSum += 1 / variance;
  }
  return weightSum > 0 ? { value: sum / weightSum, standardUncertainty: 1 / Math.sqrt(weightSum) } : undefined;
}
