/** Fits one kind of curve to readings under known forces. */

import { type RefinedLeastSquares, refinedLeastSquares } from '../math/refined-least-squares.ts';
import type { Curve, CurveKind } from './curve.ts';
import { type LoadedReading, loadsOf } from './loaded-reading.ts';
import { polynomialCurve, powersOf } from './polynomial-curve.ts';
import { saturatingCurve } from './saturating-curve.ts';
import { slopeMap, splineCurve, splineWeights } from './spline-curve.ts';
import { PLAIN, type Whitening } from './whitening.ts';

export interface Fit {
  readonly curve: Curve;
  /** (JᵀJ)⁻¹ of the weighted rows, [p · p]. */
  readonly inverse: Float64Array;
  /** Reading less curve, in the order of the rows, divisions. */
  readonly residuals: Float64Array;
  /** Of the weighted rows. */
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** √(Σ weighted residual² / degrees of freedom); NaN where no degree is left. */
  readonly residualStandardDeviation: number;
  readonly leverages: Float64Array;
  readonly throughOrigin: boolean;
}

export interface FitRequest {
  readonly kind: CurveKind;
  readonly rows: readonly LoadedReading[];
  readonly throughOrigin?: boolean | undefined;
  readonly whitening?: Whitening | undefined;
  /** Of a spline: how many forces hold it, 2 or more. All loads where it is not told. */
  readonly knotCount?: number | undefined;
}

/** @returns undefined where the rows cannot carry this kind of curve */
export function fitCurve({ kind, rows, throughOrigin = false, whitening = PLAIN, knotCount }: FitRequest): Fit | undefined {
  switch (kind) {
    case 'line':
    case 'quadratic': {
      const powers = powersOf(kind, throughOrigin);
      const solved = solve(rows, (F) => powers.map((power) => F ** power), whitening);
      return solved && fitOf(rows, polynomialCurve(kind, powers, [...solved.coefficients]), solved, whitening, throughOrigin);
    }
    case 'saturating':
      return fitSaturating(rows, throughOrigin, whitening);
    case 'spline': {
      const knotsN = knotsAmong(rows, knotCount, throughOrigin);
      if (knotsN.length < 2) return undefined;
      const map = slopeMap(knotsN);
      const first = throughOrigin ? 1 : 0; // the reading at no force is then held at 0
      const solved = solve(rows, (F) => splineWeights(knotsN, map, F).slice(first), whitening);
      if (!solved) return undefined;
      const curve = splineCurve(knotsN, [...(throughOrigin ? [0] : []), ...solved.coefficients]);
      if (!throughOrigin) return fitOf(rows, curve, solved, whitening, false);
      const held = { ...curve, names: curve.names.slice(1), parameters: curve.parameters.slice(1) };
      return fitOf(rows, { ...held, gradient: (F) => curve.gradient(F).slice(1) }, solved, whitening, true);
    }
  }
}

/** Loads spread evenly by rank, the smallest and the largest among them; through the origin, no force is one too. */
function knotsAmong(rows: readonly LoadedReading[], count: number | undefined, throughOrigin: boolean): readonly number[] {
  const loads = loadsOf(rows);
  const all = throughOrigin && loads[0] !== 0 ? [0, ...loads] : loads;
  const wanted = Math.min(count ?? all.length, all.length);
  return [...new Set(Array.from({ length: wanted }, (_, k) => all[Math.round((k * (all.length - 1)) / Math.max(1, wanted - 1))]!))];
}

function solve(
  rows: readonly LoadedReading[],
  basis: (forceN: number) => readonly number[],
  whitening: Whitening,
  response: ArrayLike<number> = rows.map(({ reading }) => reading),
): RefinedLeastSquares | undefined {
  const n = rows.length;
  const lines = rows.map(({ forceN }) => basis(forceN));
  const p = lines[0]?.length ?? 0;
  if (p === 0 || n < p) return undefined;
  const columns = Array.from({ length: p }, (_, j) => whitening(lines.map((line) => line[j]!)));
  const design = Float64Array.from({ length: n * p }, (_, k) => columns[k % p]![Math.floor(k / p)]!);
  return refinedLeastSquares({ design, response: whitening(response) });
}

function fitOf(
  rows: readonly LoadedReading[],
  curve: Curve,
  { inverse, leverages }: RefinedLeastSquares,
  whitening: Whitening,
  throughOrigin: boolean,
): Fit {
  const residuals = Float64Array.from(rows, ({ forceN, reading }) => reading - curve.reading(forceN));
  const residualSumOfSquares = whitening(residuals).reduce((sum, rest) => sum + rest * rest, 0);
  const degreesOfFreedom = rows.length - curve.parameters.length;
  const residualStandardDeviation = degreesOfFreedom > 0 ? Math.sqrt(residualSumOfSquares / degreesOfFreedom) : Number.NaN;
  return { curve, inverse, residuals, residualSumOfSquares, degreesOfFreedom, residualStandardDeviation, leverages, throughOrigin };
}

/** Half-saturation forces that are looked at, in largest loads: beyond the last a line says the same. */
const FH_IN_LARGEST_LOADS = { low: 0.02, high: 300 } as const;
const GRID = 60;
const NEWTON_STEPS = 60;

/** For each Fh the rest is linear; the best Fh of a grid is refined by Gauss-Newton steps with halving. */
function fitSaturating(rows: readonly LoadedReading[], throughOrigin: boolean, whitening: Whitening): Fit | undefined {
  const largest = Math.max(...rows.map(({ forceN }) => forceN));
  if (!(largest > 0) || loadsOf(rows).length < (throughOrigin ? 2 : 3)) return undefined;
  const { low, high } = FH_IN_LARGEST_LOADS;
  let best: { parameters: number[]; rss: number } | undefined;
  for (let step = 0; step <= GRID; step++) {
    const Fh = largest * low * (high / low) ** (step / GRID);
    const solved = solve(rows, (F) => [...(throughOrigin ? [] : [1]), F / (F + Fh)], whitening);
    if (solved && !(best && best.rss <= solved.residualSumOfSquares)) {
      best = { parameters: [...solved.coefficients, Fh], rss: solved.residualSumOfSquares };
    }
  }
  if (!best) return undefined;
  let solved: RefinedLeastSquares | undefined;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const curve = saturatingCurve(best.parameters, throughOrigin);
    const rest = rows.map(({ forceN, reading }) => reading - curve.reading(forceN));
    solved = solve(rows, curve.gradient, whitening, rest);
    if (!solved) return undefined;
    const next = damped(best, solved.coefficients, (parameters) => {
      if (!(parameters[parameters.length - 1]! > 0)) return Infinity;
      const tried = saturatingCurve(parameters, throughOrigin);
      return whitening(rows.map(({ forceN, reading }) => reading - tried.reading(forceN))).reduce((sum, r) => sum + r * r, 0);
    });
    if (!next) break;
    const settled = next.parameters.every((value, j) => Math.abs(value - best!.parameters[j]!) <= 1e-13 * Math.abs(value));
    best = next;
    if (settled) break;
  }
  const Fh = best.parameters[best.parameters.length - 1]!;
  if (!solved || !(Fh > 0 && Fh < high * largest)) return undefined;
  return fitOf(rows, saturatingCurve(best.parameters, throughOrigin), solved, whitening, throughOrigin);
}

/** The step, or its half, quarter …: the first that lowers the sum of squares; undefined where none does. */
function damped(
  from: { readonly parameters: readonly number[]; readonly rss: number },
  step: Float64Array,
  sumOfSquares: (parameters: readonly number[]) => number,
): { parameters: number[]; rss: number } | undefined {
  for (let share = 1; share > 1e-4; share /= 2) {
    const parameters = from.parameters.map((value, j) => value + share * step[j]!);
    const rss = sumOfSquares(parameters);
    if (rss < from.rss) return { parameters, rss };
  }
  return undefined;
}
