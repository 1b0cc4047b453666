/** What a bench would tell, reckoned before anything is plucked: the covariance that the slopes of its law alone give. */

import { leastSquares } from '../math/least-squares.ts';
import { forceSlopes } from '../vibration/beam-sensitivity.ts';
import type { BenchData } from './bench-data.ts';
import { type BenchModel, benchModel, FIXITY } from './bench-model.ts';

/** What the belt is taken for. */
export interface BeltGuess {
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  /** Of both ends alike. */
  readonly fixity: number;
}

export interface LinearBench {
  readonly model: BenchModel;
  /** Over all parameters of the model, by rows. */
  readonly covariance: Float64Array;
}

/** Standard deviation of a fixity that is even between 0 and 1. */
export const OPEN_FIXITY_U = Math.sqrt(1 / 12);

/** @param parameters  where the slopes are taken; shared errors that are missing count as none */
export function linearBench(data: BenchData, parameters: ArrayLike<number>): LinearBench | undefined {
  const model = benchModel(data);
  const at = Float64Array.from({ length: model.size }, (_, j) => parameters[j] ?? 0);
  const residuals = model.residualsAt(at);
  if (!residuals) return undefined;
  const rows = residuals.values.length + 1;
  const values = new Float64Array(rows * model.size);
  values.set(residuals.slopes);
  values[(rows - 1) * model.size + FIXITY] = 1 / OPEN_FIXITY_U;
  const fit = leastSquares({ rows, columns: model.size, values }, new Float64Array(rows));
  return fit && { model, covariance: fit.inverseNormal };
}

/** Spans and forces that a belt of a small machine meets: short and slack to long and tight (our judgement). */
export const LATER_READINGS = [
  { spanLengthM: 0.06, forceN: 5 },
  { spanLengthM: 0.15, forceN: 8 },
  { spanLengthM: 0.4, forceN: 12 },
] as const;

/**
 * Half of the 95 % interval of a force that is read later from a first partial, as far as it comes from density, stiffness and ends.
 *
 * @param covariance  begins with ln density, ln stiffness and fixity; `size` is its row length
 * @returns relative
 */
export function laterU95Relative(
  belt: BeltGuess,
  covariance: ArrayLike<number>,
  size: number,
  reading: { readonly spanLengthM: number; readonly forceN: number },
): number {
  const { fixity, ...rest } = belt;
  const slopes = forceSlopes({ ...rest, ...reading, fixity: [fixity, fixity], number: 1 });
  const g = [slopes.perLnLinearDensity, slopes.perLnBendingStiffness, slopes.perFixity[0] + slopes.perFixity[1]];
  const variance = g.reduce((sum, gi, i) => sum + g.reduce((row, gk, k) => row + gi * gk * covariance[i * size + k]!, 0), 0);
  return 1.96 * Math.sqrt(Math.max(0, variance));
}

/** Root mean square over `LATER_READINGS`: one figure for how well a belt is known. */
export const laterReadingsU95Relative = (belt: BeltGuess, covariance: ArrayLike<number>, size: number): number =>
  Math.sqrt(
    LATER_READINGS.reduce((sum, reading) => sum + laterU95Relative(belt, covariance, size, reading) ** 2, 0) / LATER_READINGS.length,
  );
