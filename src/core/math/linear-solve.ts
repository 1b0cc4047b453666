/** Small dense symmetric systems, as least squares makes them. */

/**
 * Inverse of a symmetric positive definite matrix by Cholesky's method.
 *
 * @param matrix  row-major, Float64Array [n · n], lower triangle is read; not modified
 * @returns row-major inverse [n · n], or undefined where the matrix is not positive definite
 */
export function inverseOfPositiveDefinite(matrix: Float64Array, n: number): Float64Array | undefined {
  const lower = choleskyFactor(matrix, n);
  if (!lower) return undefined;
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    substitute(lower, column, n);
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}

/**
 * Solves A x = b for a symmetric positive definite A.
 *
 * @param right  Float64Array [n]; not modified
 * @returns x [n], or undefined where A is not positive definite
 */
export function solvePositiveDefinite(matrix: Float64Array, right: Float64Array): Float64Array | undefined {
  const lower = choleskyFactor(matrix, right.length);
  if (!lower) return undefined;
  const x = right.slice();
  substitute(lower, x, right.length);
  return x;
}

/** ln |A| of a symmetric positive definite A, or undefined where it is not. */
export function lnDeterminant(matrix: Float64Array, n: number): number | undefined {
  const lower = choleskyFactor(matrix, n);
  if (!lower) return undefined;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 2 * Math.log(lower[i * n + i]!);
  return sum;
}

/**
 * Divides a vector by the factor L of a covariance A = L Lᵀ, in place: what comes out has variance 1 and no covariance.
 *
 * @returns false where A is not positive definite
 */
export function whiten(covariance: Float64Array, vectors: readonly Float64Array[]): boolean {
  const n = Math.round(Math.sqrt(covariance.length));
  const lower = choleskyFactor(covariance, n);
  if (!lower) return false;
  for (const vector of vectors) {
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) vector[i]! -= lower[i * n + k]! * vector[k]!;
      vector[i]! /= lower[i * n + i]!;
    }
  }
  return true;
}

/** A pivot that has lost this much of its diagonal is rounding, not information. */
const SMALLEST_PIVOT = 1e-14;

/** Lower triangle L with A = L Lᵀ. */
function choleskyFactor(matrix: Float64Array, n: number): Float64Array | undefined {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(sum > SMALLEST_PIVOT * Math.abs(matrix[i * n + i]!))) return undefined;
        lower[i * n + i] = Math.sqrt(sum);
      } else {
        lower[i * n + j] = sum / lower[j * n + j]!;
      }
    }
  }
  return lower;
}

/** Forward and backward substitution in place. */
function substitute(lower: Float64Array, x: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i * n + k]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= lower[k * n + i]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
}
