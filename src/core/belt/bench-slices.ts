/** A fit cut into slices of the fixity: in each the rest is normal, and each counts by how likely the plucks are in it. */

import { lnDeterminant } from '../math/linear-solve.ts';
import { mixtureQuantile, type NormalPart } from '../math/mixture.ts';
import { type LeastSquaresFit, nonlinearLeastSquares } from '../math/nonlinear-least-squares.ts';
import { type BenchModel, FIXITY, LN_DENSITY, LN_STIFFNESS } from './bench-model.ts';

/** Median and 95 % interval; `standardUncertainty` is half of the interval over 1.96: what later reckoning takes it for. */
export interface BenchValue {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly standardUncertainty: number;
}

/** Slices of fixity over which the rest is taken as normal. */
const SLICES = 31;
/** They reach this far on each side of the best fit. */
const REACH_SD = 5;
const LOW = 0.025;
const HIGH = 0.975;
/** Normal quantile of the interval's upper end. */
const Z95 = 1.959963984540054;

export interface Slice {
  readonly fixity: number;
  readonly width: number;
  readonly weight: number;
  readonly fit: LeastSquaresFit;
}

export function fitBetween(model: BenchModel, start: readonly number[], low: number, high: number): LeastSquaresFit | undefined {
  const bound = (fixity: number, free: number): number[] => Array.from({ length: model.size }, (_, j) => (j === FIXITY ? fixity : free));
  return nonlinearLeastSquares({
    residualsAt: model.residualsAt,
    start,
    lowest: bound(low, -Infinity),
    highest: bound(high, Infinity),
  });
}

/** The fixity cut into slices, each with the best fit of all else and the weight that Laplace's method gives it. */
export function slicesOf(model: BenchModel, best: LeastSquaresFit): Slice[] {
  const at = best.parameters[FIXITY]!;
  const reach = REACH_SD * (best.isAtBound[FIXITY] ? 1 : sdOf(best, FIXITY));
  let raw = cutBetween(model, best, Math.max(0, at - reach), Math.min(1, at + reach));
  const heaviest = (): number => Math.max(...raw.map(({ ln }) => ln));
  // Where a bound holds the fixity its spread is not known beforehand: cut once more where the weight is.
  const counting = raw.filter(({ ln }) => ln > heaviest() - REACH_SD ** 2 / 2);
  if (counting.length > 0 && counting.length < raw.length / 3) {
    raw = cutBetween(model, counting[0]!.fit, counting[0]!.fixity - counting[0]!.width, counting.at(-1)!.fixity + counting[0]!.width);
  }
  const most = heaviest();
  const total = raw.reduce((sum, { ln }) => sum + Math.exp(ln - most), 0);
  return raw.map(({ ln, ...slice }) => ({ ...slice, weight: Math.exp(ln - most) / total }));
}

function cutBetween(model: BenchModel, near: LeastSquaresFit, from: number, to: number) {
  const low = Math.max(0, from);
  const width = (Math.min(1, to) - low) / SLICES;
  let start = Array.from(near.parameters);
  return Array.from({ length: SLICES }, (_, k) => low + (k + 0.5) * width).flatMap((fixity) => {
    start[FIXITY] = fixity;
    const fit = fitBetween(model, start, fixity, fixity);
    const lnVolume = fit?.covariance && lnDeterminant(withoutFixity(fit.covariance, model.size), model.size - 1);
    if (!fit || lnVolume === undefined) return [];
    start = Array.from(fit.parameters);
    return [{ fixity, width, fit, ln: (lnVolume - fit.sumOfSquares) / 2 }];
  });
}

function withoutFixity(covariance: Float64Array, n: number): Float64Array {
  const kept = Array.from({ length: n }, (_, j) => j).filter((j) => j !== FIXITY);
  return Float64Array.from(kept.flatMap((i) => kept.map((j) => covariance[i * n + j]!)));
}

/** Quantiles over the slices; inside a slice the value runs on to its neighbours', so its width counts too. */
export function overSlices(
  slices: readonly Slice[],
  mean: (slice: Slice) => number,
  sd: (slice: Slice) => number,
  widening: number,
): BenchValue {
  const parts: NormalPart[] = slices.map((slice, k) => {
    const before = mean(slices[Math.max(0, k - 1)]!);
    const after = mean(slices[Math.min(slices.length - 1, k + 1)]!);
    const run = (after - before) / (Math.min(slices.length - 1, k + 1) - Math.max(0, k - 1) || 1);
    return { weight: slice.weight, mean: mean(slice), sd: Math.hypot(sd(slice), run / Math.sqrt(12)) };
  });
  const value = mixtureQuantile(0.5, parts);
  const low = value + widening * (mixtureQuantile(LOW, parts) - value);
  const high = value + widening * (mixtureQuantile(HIGH, parts) - value);
  return { value, low, high, standardUncertainty: (high - low) / (2 * Z95) };
}

export const sdOf = ({ covariance, parameters }: LeastSquaresFit, place: number): number =>
  covariance ? Math.sqrt(covariance[place * parameters.length + place]!) : 1;

export function exponential({ value, low, high }: BenchValue): BenchValue {
  const ends = { value: Math.exp(value), low: Math.exp(low), high: Math.exp(high) };
  return { ...ends, standardUncertainty: (ends.value * Math.log(ends.high / ends.low)) / (2 * Z95) };
}

/** Inside the slices and between them. */
export function covarianceOver(slices: readonly Slice[], widening: number): Float64Array {
  const wanted = [LN_DENSITY, LN_STIFFNESS, FIXITY];
  const at = ({ fit, fixity }: Slice, place: number): number => (place === FIXITY ? fixity : fit.parameters[place]!);
  const mean = wanted.map((place) => slices.reduce((sum, slice) => sum + slice.weight * at(slice, place), 0));
  return Float64Array.from(
    wanted.flatMap((a, i) =>
      wanted.map((b, k) => {
        const sum = slices.reduce((total, slice) => {
          const size = slice.fit.parameters.length;
          const inside = slice.fit.covariance?.[a * size + b] ?? 0;
          const across = a === FIXITY && b === FIXITY ? slice.width ** 2 / 12 : 0;
          return total + slice.weight * (inside + across + (at(slice, a) - mean[i]!) * (at(slice, b) - mean[k]!));
        }, 0);
        return sum * widening ** 2;
      }),
    ),
  );
}
