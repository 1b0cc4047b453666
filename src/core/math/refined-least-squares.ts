/** Linear least squares for curves that are read to the last digit: as `least-squares.ts`, refined until the digits of a double are used up, with residuals and leverages. */

import { exactDot } from './exact-products.ts';

export interface RefinedLeastSquares {
  /** [p] */
  readonly coefficients: Float64Array;
  /** (AᵀA)⁻¹, row-major [p · p]; times the residual variance it is the coefficients' covariance. */
  readonly inverse: Float64Array;
  /** y − A x, [n] */
  readonly residuals: Float64Array;
  readonly residualSumOfSquares: number;
  /** Leverage of each row, diagonal of the hat matrix, [n], 0 to 1. */
  readonly leverages: Float64Array;
}

/** A column whose own part is smaller than this share of its length follows from the columns before it. */
const SMALLEST_OWN_SHARE = 1e-11;
const REFINEMENTS = 4;

/**
 * Minimises |y − A x|.
 *
 * Householder QR of columns scaled by powers of two, then Björck's refinement of solution and residuals together, with residuals of the
 * refinement in twice the working precision.
 *
 * @param problem.design  A, row-major [n · p]; not modified
 * @param problem.response  y [n]; not modified
 * @returns undefined where n < p or the columns depend on one another
 * @see Björck, BIT 7 (1967) 257 and 322
 */
export function refinedLeastSquares(problem: {
  readonly design: Float64Array;
  readonly response: ArrayLike<number>;
}): RefinedLeastSquares | undefined {
  const n = problem.response.length;
  const p = n > 0 ? problem.design.length / n : 0;
  if (!Number.isInteger(p) || p < 1)
    throw new RangeError(`refinedLeastSquares needs n · p design values for ${n} rows, got ${problem.design.length}`);
  if (n < p) return undefined;
  const scales = columnScales(problem.design, n, p);
  const a = problem.design.map((value, k) => value * scales[k % p]!);
  const factors = triangular(a, n, p);
  if (!factors) return undefined;

  const x = new Float64Array(p);
  const r = Float64Array.from(problem.response);
  for (let round = 0; round <= REFINEMENTS; round++) {
    const first = round === 0;
    const f = first
      ? Float64Array.from(problem.response)
      : r.map(
          (rest, i) => exactDot(problem.response[i]! - rest, p, (j) => [-a[i * p + j]!, x[j]!]) + twoSumRest(problem.response[i]!, rest),
        );
    const g = new Float64Array(p);
    if (!first) for (let j = 0; j < p; j++) g[j] = exactDot(0, n, (i) => [-a[i * p + j]!, r[i]!]);
    const { dx, dr } = correction(factors, f, g);
    for (let j = 0; j < p; j++) x[j]! += dx[j]!;
    for (let i = 0; i < n; i++) r[i] = first ? dr[i]! : r[i]! + dr[i]!;
  }
  const inverse = inverseOf(factors, scales);
  return {
    coefficients: x.map((value, j) => value * scales[j]!),
    inverse,
    residuals: r,
    residualSumOfSquares: r.reduce((sum, rest) => sum + rest * rest, 0),
    leverages: leveragesOf(problem.design, inverse, n, p),
  };
}

/** What is lost in y − r as doubles subtract. */
function twoSumRest(y: number, r: number): number {
  const difference = y - r;
  const seen = difference - y;
  return y - (difference - seen) + (-r - seen);
}

/** Powers of two that bring each column to a length near 1, so that scaling rounds nothing. */
function columnScales(design: Float64Array, n: number, p: number): Float64Array {
  const scales = new Float64Array(p);
  for (let j = 0; j < p; j++) {
    let largest = 0;
    for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(design[i * p + j]!));
    scales[j] = largest > 0 ? 2 ** -Math.round(Math.log2(largest)) : 1;
  }
  return scales;
}

interface Factors {
  readonly n: number;
  readonly p: number;
  /** Householder vectors below and on the diagonal, R above it. */
  readonly qr: Float64Array;
  readonly diagonal: Float64Array;
  /** 2 / |v|² of each vector. */
  readonly betas: Float64Array;
}

function triangular(a: Float64Array, n: number, p: number): Factors | undefined {
  const qr = a.slice();
  const diagonal = new Float64Array(p);
  const betas = new Float64Array(p);
  for (let j = 0; j < p; j++) {
    let whole = 0;
    let own = 0;
    for (let i = 0; i < n; i++) {
      const value = qr[i * p + j]!;
      whole += value * value;
      if (i >= j) own += value * value;
    }
    const length = Math.sqrt(own);
    if (!(length > SMALLEST_OWN_SHARE * Math.sqrt(whole))) return undefined;
    const pivot = qr[j * p + j]!;
    const alpha = pivot > 0 ? -length : length;
    diagonal[j] = alpha;
    qr[j * p + j] = pivot - alpha;
    betas[j] = 1 / (length * (length + Math.abs(pivot)));
    for (let k = j + 1; k < p; k++) {
      let dot = 0;
      for (let i = j; i < n; i++) dot += qr[i * p + j]! * qr[i * p + k]!;
      const factor = dot * betas[j]!;
      for (let i = j; i < n; i++) qr[i * p + k]! -= factor * qr[i * p + j]!;
    }
  }
  return { n, p, qr, diagonal, betas };
}

/** Applies the reflections to a vector [n] in place, in this order or backwards. */
function reflect({ n, p, qr, betas }: Factors, vector: Float64Array, order: 'forwards' | 'backwards'): void {
  for (let step = 0; step < p; step++) {
    const j = order === 'forwards' ? step : p - 1 - step;
    let dot = 0;
    for (let i = j; i < n; i++) dot += qr[i * p + j]! * vector[i]!;
    const factor = dot * betas[j]!;
    for (let i = j; i < n; i++) vector[i]! -= factor * qr[i * p + j]!;
  }
}

/** Solves dr + A dx = f, Aᵀ dr = g. */
function correction(factors: Factors, f: Float64Array, g: Float64Array): { dx: Float64Array; dr: Float64Array } {
  const { n, p, qr, diagonal } = factors;
  const c = f.slice();
  reflect(factors, c, 'forwards');
  const h = new Float64Array(p); // Rᵀ h = g
  for (let j = 0; j < p; j++) {
    let sum = g[j]!;
    for (let k = 0; k < j; k++) sum -= qr[k * p + j]! * h[k]!;
    h[j] = sum / diagonal[j]!;
  }
  const dx = new Float64Array(p);
  for (let j = p - 1; j >= 0; j--) {
    let sum = c[j]! - h[j]!;
    for (let k = j + 1; k < p; k++) sum -= qr[j * p + k]! * dx[k]!;
    dx[j] = sum / diagonal[j]!;
  }
  const dr = new Float64Array(n);
  for (let i = 0; i < n; i++) dr[i] = i < p ? h[i]! : c[i]!;
  reflect(factors, dr, 'backwards');
  return { dx, dr };
}

function inverseOf({ p, qr, diagonal }: Factors, scales: Float64Array): Float64Array {
  const upper = new Float64Array(p * p); // R⁻¹
  for (let column = 0; column < p; column++) {
    for (let j = column; j >= 0; j--) {
      let sum = j === column ? 1 : 0;
      for (let k = j + 1; k <= column; k++) sum -= qr[j * p + k]! * upper[k * p + column]!;
      upper[j * p + column] = sum / diagonal[j]!;
    }
  }
  const inverse = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      let sum = 0;
      for (let k = Math.max(i, j); k < p; k++) sum += upper[i * p + k]! * upper[j * p + k]!;
      inverse[i * p + j] = sum * scales[i]! * scales[j]!;
    }
  }
  return inverse;
}

function leveragesOf(design: Float64Array, inverse: Float64Array, n: number, p: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => {
    const row = design.subarray(i * p, i * p + p);
    return Math.min(1, quadraticForm(inverse, row));
  });
}

/** vᵀ M v of a square matrix, row-major. */
export function quadraticForm(matrix: Float64Array, vector: ArrayLike<number>): number {
  const p = vector.length;
  let sum = 0;
  for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) sum += vector[i]! * matrix[i * p + j]! * vector[j]!;
  return sum;
}
