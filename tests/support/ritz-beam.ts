/**
 * An independent way to the partials of a tensioned beam: Ritz's method with integrated Legendre polynomials and springs at the ends.
 * It knows energies only; it shares neither the frequency equation nor its roots with the code it checks.
 *
 * With w = Σ c_j N_j(x) on −1 ≤ x ≤ 1, N_j = (P_{j+1} − P_{j−1})/(2j + 1), both ends stay in place, N_j' = P_j and N_j'' = P_j', so that
 * every integral of the energies is known in closed form.
 */

import { largestEigenvalues, type Matrix, square } from './generalised-eigen.ts';

export interface RitzSpan {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: readonly [number, number];
}

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
  const stiffness: Matrix = square(terms);
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
  return largestEigenvalues(stiffness, mass, count).map((inverseSquare) => Math.sqrt(1 / inverseSquare) / (2 * Math.PI));
}

/** ∫ N_j N_i, j <= i. */
function massOf(j: number, i: number): number {
  if (i === j) return (2 / (2 * j + 3) + 2 / (2 * j - 1)) / (2 * j + 1) ** 2;
  return i === j + 2 ? -2 / ((2 * j + 3) * (2 * j + 1) * (2 * j + 5)) : 0;
}
