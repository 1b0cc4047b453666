/**
 * An independent way to the partials of a tensioned beam: Ritz's method with integrated Legendre polynomials and springs at the ends.
 * It knows energies only; it shares neither the frequency equation nor its roots with the code it checks.
 *
 * With w = Σ c_j N_j(x) on −1 ≤ x ≤ 1, N_j = (P_{j+1} − P_{j−1})/(2j + 1), both ends stay in place, N_j' = P_j and N_j'' = P_j', so that
 * every integral of the energies is known in closed form.
 */

export interface RitzSpan {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: readonly [number, number];
}

type Matrix = Float64Array[];

/** A clamped end is a spring this near to stiff: it lowers a frequency by less than a ten-millionth. */
const STIFFEST_FIXITY = 1 - 1e-8;

/** The lowest `count` partials, Hz. @param terms  polynomials; 30 to 260 for slendernesses of 1 to 1000 */
export function ritzPartialsHz(span: RitzSpan, count: number, terms: number): number[] {
  const { forceN: T, spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, fixity } = span;
  const h = L / 2;
  const springs = fixity.map((φ) => {
    const held = Math.min(φ, STIFFEST_FIXITY);
    return (held / (1 - held)) * Math.sqrt(EI * T);
  });
  const stiffness = square(terms);
  const mass = square(terms);
  for (let a = 0; a < terms; a++) {
    for (let b = 0; b <= a; b++) {
      const [i, j] = [a + 1, b + 1]; // orders, j <= i
      const alike = (i + j) % 2 === 0;
      const bending = alike ? j * (j + 1) : 0; // ∫ P_i' P_j'
      const tension = i === j ? 2 / (2 * i + 1) : 0; // ∫ P_i P_j
      const ends = springs[1]! + (alike ? 1 : -1) * springs[0]!; // P_j(1) = 1, P_j(−1) = (−1)^j
      stiffness[a]![b] = stiffness[b]![a] = (EI * bending) / h ** 3 + (T * tension) / h + ends / h ** 2;
      mass[a]![b] = mass[b]![a] = μ * h * massOf(j, i);
    }
  }
  return largest(stiffness, mass, count).map((inverseSquare) => Math.sqrt(1 / inverseSquare) / (2 * Math.PI));
}

/** ∫ N_j N_i, j <= i. */
function massOf(j: number, i: number): number {
  if (i === j) return (2 / (2 * j + 3) + 2 / (2 * j - 1)) / (2 * j + 1) ** 2;
  return i === j + 2 ? -2 / ((2 * j + 3) * (2 * j + 1) * (2 * j + 5)) : 0;
}

/** Largest eigenvalues of M c = λ K c, descending: orthogonal iteration on C⁻¹ M C⁻ᵀ with K = C Cᵀ, then Rayleigh's quotients. */
function largest(K: Matrix, M: Matrix, count: number): number[] {
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
      for (const k of [i - 2, i, i + 2]) if (k >= 0 && k < n) sum += row[k]! * up[k]!;
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
const square = (n: number): Matrix => Array.from({ length: n }, () => new Float64Array(n));
