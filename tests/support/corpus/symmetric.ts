/** Vibration of coupled parts: the generalised eigenproblem K x = λ M x of small symmetric matrices, by Cholesky and Jacobi. */

export type Matrix = readonly Float64Array[];

export const zeros = (rows: number, columns = rows): Float64Array[] => Array.from({ length: rows }, () => new Float64Array(columns));

/** Eigenvalues in ascending order; vectors [k][i] with xᵀ M x = 1. */
export function coupledModes(stiffness: Matrix, mass: Matrix): { values: Float64Array; vectors: Matrix } {
  const count = mass.length;
  const root = cholesky(mass);
  // A = L⁻¹ K L⁻ᵀ, columns of K first, then rows.
  const half = stiffness.map((row) => solveLower(root, row));
  const scaled = zeros(count);
  for (let column = 0; column < count; column++) {
    const solved = solveLower(
      root,
      half.map((row) => row[column]!),
    );
    for (let row = 0; row < count; row++) scaled[row]![column] = solved[row]!;
  }
  const { values, vectors } = jacobi(scaled);
  const order = [...values.keys()].sort((one, other) => values[one]! - values[other]!);
  return {
    values: Float64Array.from(order, (index) => values[index]!),
    vectors: order.map((index) =>
      solveUpper(
        root,
        vectors.map((row) => row[index]!),
      ),
    ),
  };
}

function cholesky(matrix: Matrix): Float64Array[] {
  const count = matrix.length;
  const root = zeros(count);
  for (let row = 0; row < count; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row]![column]!;
      for (let k = 0; k < column; k++) sum -= root[row]![k]! * root[column]![k]!;
      if (row === column && !(sum > 0)) throw new RangeError('cholesky needs a positive definite matrix');
      root[row]![column] = row === column ? Math.sqrt(sum) : sum / root[column]![column]!;
    }
  }
  return root;
}

function solveLower(root: Matrix, right: ArrayLike<number>): Float64Array {
  const out = Float64Array.from(right);
  for (let row = 0; row < out.length; row++) {
    for (let k = 0; k < row; k++) out[row]! -= root[row]![k]! * out[k]!;
    out[row]! /= root[row]![row]!;
  }
  return out;
}

function solveUpper(root: Matrix, right: ArrayLike<number>): Float64Array {
  const out = Float64Array.from(right);
  for (let row = out.length - 1; row >= 0; row--) {
    for (let k = row + 1; k < out.length; k++) out[row]! -= root[k]![row]! * out[k]!;
    out[row]! /= root[row]![row]!;
  }
  return out;
}

const MOST_SWEEPS = 30;

/** Turns a symmetric matrix, which it overwrites, until nothing is left beside the diagonal; vectors are columns. */
function jacobi(matrix: Float64Array[]): { values: Float64Array; vectors: Matrix } {
  const count = matrix.length;
  const vectors = zeros(count);
  for (let index = 0; index < count; index++) vectors[index]![index] = 1;
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let beside = 0;
    for (let p = 0; p < count; p++) {
      for (let q = p + 1; q < count; q++) {
        const off = matrix[p]![q]!;
        beside = Math.max(beside, off ** 2 / Math.abs(matrix[p]![p]! * matrix[q]![q]!));
        if (off === 0) continue;
        const ratio = (matrix[q]![q]! - matrix[p]![p]!) / (2 * off);
        const tangent = Math.sign(ratio || 1) / (Math.abs(ratio) + Math.hypot(1, ratio));
        const cosine = 1 / Math.hypot(1, tangent);
        const sine = tangent * cosine;
        for (let k = 0; k < count; k++) {
          const [kp, kq] = [matrix[k]![p]!, matrix[k]![q]!];
          matrix[k]![p] = cosine * kp - sine * kq;
          matrix[k]![q] = sine * kp + cosine * kq;
        }
        const [rowP, rowQ] = [matrix[p]!, matrix[q]!];
        for (let k = 0; k < count; k++) {
          const [pk, qk] = [rowP[k]!, rowQ[k]!];
          rowP[k] = cosine * pk - sine * qk;
          rowQ[k] = sine * pk + cosine * qk;
          const [vp, vq] = [vectors[k]![p]!, vectors[k]![q]!];
          vectors[k]![p] = cosine * vp - sine * vq;
          vectors[k]![q] = sine * vp + cosine * vq;
        }
      }
    }
    if (beside < 1e-26) break;
  }
  return { values: Float64Array.from(matrix, (row, index) => row[index]!), vectors };
}
