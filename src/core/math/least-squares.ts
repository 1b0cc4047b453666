/** Linear least squares by Householder's reflections: no normal equations, so that no digits are lost to the square of the condition. */

/** A matrix by rows, Float64Array [rows · columns]. */
export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

export interface LinearFit {
  /** Float64Array [columns]. */
  readonly solution: Float64Array;
  /** (AᵀA)⁻¹, by rows, Float64Array [columns · columns]. */
  readonly inverseNormal: Float64Array;
}

/** A column that keeps less than this of its length beside the others is a combination of them. */
const SMALLEST_PIVOT = 1e-13;

/**
 * x with the smallest |A x − b|. Columns are brought to length 1 first.
 *
 * @param matrix  A, at least as many rows as columns; not modified
 * @param right   b, Float64Array [rows]; not modified
 * @returns `undefined` where the columns do not stand apart
 */
export function leastSquares(matrix: Matrix, right: Float64Array): LinearFit | undefined {
  const { rows, columns: n } = matrix;
  if (rows < n) throw new RangeError(`leastSquares needs at least as many rows as columns, got ${rows} and ${n}`);
  const lengths = columnLengths(matrix);
  const A = matrix.values.slice();
  for (let i = 0; i < rows; i++) for (let j = 0; j < n; j++) A[i * n + j]! /= lengths[j]! || 1;
  const b = right.slice();
  const diagonal = reflected(A, b, rows, n);
  if (!diagonal) return undefined;
  const x = b.slice(0, n);
  backward(A, diagonal, x, n);
  const inverse = inverseOfUpper(A, diagonal, n);
  const inverseNormal = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    x[j]! /= lengths[j]!;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += inverse[i * n + k]! * inverse[j * n + k]!;
      inverseNormal[i * n + j] = sum / (lengths[i]! * lengths[j]!);
    }
  }
  return { solution: x, inverseNormal };
}

/** Euclidean length of each column. */
export function columnLengths({ rows, columns, values }: Matrix): Float64Array {
  const lengths = new Float64Array(columns);
  for (let j = 0; j < columns; j++) {
    let sum = 0;
    for (let i = 0; i < rows; i++) sum += values[i * columns + j]! ** 2;
    lengths[j] = Math.sqrt(sum);
  }
  return lengths;
}

/** Reflects A to upper triangular form in place and b with it. @returns R's diagonal; above it R stands in A */
function reflected(A: Float64Array, b: Float64Array, rows: number, n: number): Float64Array | undefined {
  const diagonal = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    let square = 0;
    for (let i = k; i < rows; i++) square += A[i * n + k]! ** 2;
    const length = Math.sqrt(square);
    if (!(length > SMALLEST_PIVOT)) return undefined;
    const pivot = A[k * n + k]! > 0 ? -length : length;
    const head = A[k * n + k]! - pivot;
    const scale = -1 / (pivot * head);
    A[k * n + k] = head;
    for (let j = k + 1; j <= n; j++) {
      let dot = 0;
      for (let i = k; i < rows; i++) dot += A[i * n + k]! * (j < n ? A[i * n + j]! : b[i]!);
      const turn = dot * scale;
      for (let i = k; i < rows; i++) {
        if (j < n) A[i * n + j]! -= turn * A[i * n + k]!;
        else b[i]! -= turn * A[i * n + k]!;
      }
    }
    diagonal[k] = pivot;
  }
  return diagonal;
}

function backward(A: Float64Array, diagonal: Float64Array, x: Float64Array, n: number): void {
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= A[i * n + k]! * x[k]!;
    x[i]! /= diagonal[i]!;
  }
}

function inverseOfUpper(A: Float64Array, diagonal: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    backward(A, diagonal, column, n);
    for (let i = 0; i <= j; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}
