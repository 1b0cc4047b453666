/** Straight-line-like fits that one wild value does not carry away: Huber's M-estimator by reweighted least squares, with its covariance. */

import { inverseOfPositiveDefinite, solvePositiveDefinite } from './linear-solve.ts';
import { median } from './quantile.ts';

/** Huber's corner: 95 % as efficient as least squares where nothing is wild (Huber, Ann. Math. Statist. 35 (1964) 73). */
export const HUBER_CORNER = 1.345;
/** Median of |x| of a standard normal x. */
const MEDIAN_OF_NORMAL = 0.6745;
const MOST_STEPS = 100;

export interface RobustFit {
  /** One for each column. */
  readonly coefficients: readonly number[];
  /** Row-major [p · p], as if every residual had the standard deviation `scale`; multiply by another scale's square where one is known better. */
  readonly unscaledCovariance: Float64Array;
  /** Standard deviation of the residuals by their median. */
  readonly scale: number;
  /** Standard deviation that goes with the coefficients: corrected for what the corner cut off. */
  readonly standardDeviation: number;
  /** Observed minus fitted, in the order of the values. */
  readonly residuals: readonly number[];
  /** 1 for a value in line, less for a wild one. */
  readonly weights: readonly number[];
  readonly degreesOfFreedom: number;
}

/**
 * @param data.columns        p columns of n values each, linearly independent
 * @param data.values         n values, n > p, of equal standard deviation
 * @param data.smallestScale  residuals are not called wild within the corner times this; > 0 where the scatter is known
 * @param data.tolerance      change of the residuals, relative, at which it stops
 * @param data.mostSteps      reweightings after which it stops all the same
 * @returns undefined where the columns do not part
 * @see Huber & Ronchetti, Robust Statistics, 2nd ed. (2009), 7.6 (covariance) and 7.8 (scale by the median)
 */
export function robustFit(data: {
  readonly columns: readonly (readonly number[])[];
  readonly values: readonly number[];
  readonly smallestScale?: number | undefined;
  readonly tolerance?: number | undefined;
  readonly mostSteps?: number | undefined;
}): RobustFit | undefined {
  const { columns, values, smallestScale = 0, tolerance = 1e-9, mostSteps = MOST_STEPS } = data;
  const [n, p] = [values.length, columns.length];
  if (n <= p) throw new RangeError(`robustFit needs more than ${p} values, got ${n}`);
  const inverse = inverseOfPositiveDefinite(normalMatrix(columns, undefined), p);
  if (!inverse) return undefined;
  let weights: number[] = values.map(() => 1);
  let coefficients = weighted(columns, values, weights);
  if (!coefficients) return undefined;
  let residuals = residualsOf(columns, values, coefficients);
  let scale = 0;
  for (let step = 0; step < mostSteps; step++) {
    scale = Math.max(median(residuals.map(Math.abs)) / MEDIAN_OF_NORMAL, smallestScale);
    if (scale === 0) break;
    weights = weightsOf(residuals, scale);
    const next = weighted(columns, values, weights);
    if (!next) return undefined;
    const before = residuals;
    coefficients = next;
    residuals = residualsOf(columns, values, coefficients);
    const change = Math.sqrt(sumOf(residuals.map((r, i) => (r - before[i]!) ** 2)) / Math.max(sumOf(before.map((r) => r * r)), 1e-300));
    if (change < tolerance) break;
  }
  weights = weightsOf(residuals, scale);
  const degreesOfFreedom = n - p;
  const inLine = residuals.map((residual) => (scale === 0 || Math.abs(residual) <= HUBER_CORNER * scale ? 1 : 0));
  const share = sumOf(inLine) / n;
  // The spread of psi' between the values, and the share of them on its slope (Huber & Ronchetti, 7.6).
  const spread = n > 1 ? sumOf(inLine.map((one) => (one - share) ** 2)) / (n - 1) : 0;
  const kappa = 1 + (p * spread) / (n * share ** 2);
  const cut = sumOf(residuals.map((residual, i) => (residual * weights[i]!) ** 2)) / degreesOfFreedom;
  return {
    coefficients: [...coefficients],
    unscaledCovariance: inverse,
    scale,
    standardDeviation: (Math.sqrt(cut) * kappa) / share,
    residuals,
    weights,
    degreesOfFreedom,
  };
}

const weightsOf = (residuals: readonly number[], scale: number): number[] =>
  residuals.map((residual) => (scale === 0 ? 1 : Math.min(1, (HUBER_CORNER * scale) / Math.abs(residual || Number.MIN_VALUE))));

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Sums of products of the columns, weighted where weights are given; row-major, symmetric. */
export function normalMatrix(columns: readonly (readonly number[])[], weights: readonly number[] | undefined): Float64Array {
  const p = columns.length;
  const matrix = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = i; j < p; j++) {
      matrix[i * p + j] = product(columns[i]!, columns[j]!, weights);
      matrix[j * p + i] = matrix[i * p + j]!;
    }
  }
  return matrix;
}

/** A plain loop: a trend comes here some ten thousand times for a year of readings. */
function product(a: readonly number[], b: readonly number[], weights: readonly number[] | undefined): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]! * (weights ? weights[k]! : 1);
  return sum;
}

const weighted = (
  columns: readonly (readonly number[])[],
  values: readonly number[],
  weights: readonly number[],
): Float64Array | undefined =>
  solvePositiveDefinite(
    normalMatrix(columns, weights),
    Float64Array.from(columns, (column) => product(column, values, weights)),
  );

function residualsOf(columns: readonly (readonly number[])[], values: readonly number[], coefficients: ArrayLike<number>): number[] {
  const residuals = [...values];
  columns.forEach((column, j) => {
    const coefficient = coefficients[j]!;
    for (let k = 0; k < residuals.length; k++) residuals[k] = residuals[k]! - coefficient * column[k]!;
  });
  return residuals;
}
