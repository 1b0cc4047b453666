/** Lowest modes of small symmetric systems K c = ω² M c, for the independent ways to a beam's partials. */

export type Matrix = Float64Array[];

/** Largest eigenvalues of M c = λ K c, descending: orthogonal iteration on C⁻¹ M C⁻ᵀ with K = C Cᵀ, then Rayleigh's quotients. */
export function largestEigenvalues(K: Matrix, M: Matrix, count: number): number[] {
  const filled = M.map((row) => [...row.keys()].filter((k) => row[k] !== 0));
  const n = K.length;
  const C = cholesky(K);
  const apply = (v: Float64Array): Float64Array => {
    const up = v.slice();
    for (let i = n - 1; i >= 0; i--) {
      for (let k = i + 1; k < n; k++) up[i]! -= C[k]![i]! * up[k]!;
      up[i]! /= C[i]![i]!;
    }
    const down = Float64Array.from(M, (row, i) => {
      let sum = 0;
      for (const k of filled[i]!) sum += row[k]! * up[k]!;
      return sum;
    });
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) down[i]! -= C[i]![k]! * down[k]!;
      down[i]! /= C[i]![i]!;
    }
    return down;
  };
  let vectors: Float64Array[] = Array.from({ length: count + 4 }, (_, k) =>
    Float64Array.from({ length: n }, (_, i) => Math.cos((k + 1) * (i + 0.3))),
  );
  for (let step = 0; step < 60; step++) vectors = orthonormal(vectors.map(apply));
  return vectors
    .map((v) => dot(v, apply(v)))
    .sort((a, b) => b - a)
    .slice(0, count);
}

function cholesky(A: Matrix): Matrix {
  const C = square(A.length);
  for (let i = 0; i < A.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = A[i]![j]!;
      for (let k = 0; k < j; k++) sum -= C[i]![k]! * C[j]![k]!;
      C[i]![j] = i === j ? Math.sqrt(sum) : sum / C[j]![j]!;
    }
  }
  return C;
}

function orthonormal(vectors: readonly Float64Array[]): Float64Array[] {
  const done: Float64Array[] = [];
  for (const vector of vectors) {
    const v = vector.slice();
    for (const u of done) {
      const share = dot(u, v);
      for (let i = 0; i < v.length; i++) v[i]! -= share * u[i]!;
    }
    const length = Math.sqrt(dot(v, v));
    done.push(v.map((x) => x / length));
  }
  return done;
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
export const square = (n: number): Matrix => Array.from({ length: n }, () => new Float64Array(n));
