/** Small dense systems of any kind, by elimination with the largest pivot. */

/**
 * X with A X = B.
 *
 * @param left   A, row-major [n · n], not singular; not modified
 * @param right  B, row-major [n · m]; not modified
 * @throws RangeError where A is singular
 */
export function solveSquare(left: Float64Array, right: Float64Array, n: number): Float64Array {
  const a = left.slice();
  const b = right.slice();
  const m = right.length / n;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) if (Math.abs(a[row * n + column]!) > Math.abs(a[pivot * n + column]!)) pivot = row;
    if (a[pivot * n + column] === 0) throw new RangeError('solveSquare needs a matrix that is not singular');
    swapRows(a, n, pivot, column);
    swapRows(b, m, pivot, column);
    for (let row = column + 1; row < n; row++) {
      const factor = a[row * n + column]! / a[column * n + column]!;
      if (factor === 0) continue;
      for (let k = column; k < n; k++) a[row * n + k]! -= factor * a[column * n + k]!;
      for (let k = 0; k < m; k++) b[row * m + k]! -= factor * b[column * m + k]!;
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = 0; k < m; k++) {
      let sum = b[row * m + k]!;
      for (let j = row + 1; j < n; j++) sum -= a[row * n + j]! * b[j * m + k]!;
      b[row * m + k] = sum / a[row * n + row]!;
    }
  }
  return b;
}

function swapRows(matrix: Float64Array, width: number, one: number, other: number): void {
  if (one === other) return;
  for (let k = 0; k < width; k++) {
    const kept = matrix[one * width + k]!;
    matrix[one * width + k] = matrix[other * width + k]!;
    matrix[other * width + k] = kept;
  }
}
