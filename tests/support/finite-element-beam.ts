/**
 * Another independent way to the partials of a tensioned beam: finite elements, cubic between their nodes, closer together towards the ends, where
 * stiffness bends the belt; springs turn the ends. The matrices are those of the textbooks for bending, for a string's tension and for mass.
 */

import { largestEigenvalues, type Matrix, square } from './generalised-eigen.ts';
import type { RitzSpan } from './ritz-beam.ts';

/** A clamped end is a spring this near to stiff. */
const STIFFEST_FIXITY = 1 - 1e-7;

/** The lowest `count` partials, Hz. @param elements  40 to 100 */
export function finiteElementPartialsHz(span: RitzSpan, count: number, elements: number): number[] {
  const { forceN: T, spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, fixity } = span;
  const nodes = Array.from({ length: elements + 1 }, (_, i) => (L / 2) * (1 - Math.cos((Math.PI * i) / elements)));
  // Unknowns: the slope at each node, and the deflection at each but the two ends.
  const slope = (node: number): number => Math.max(0, 2 * node - 1) + (node === 0 || node === elements ? 0 : 1);
  const deflection = (node: number): number | undefined => (node === 0 || node === elements ? undefined : 2 * node - 1);
  const stiffness: Matrix = square(2 * elements);
  const mass: Matrix = square(2 * elements);
  for (let e = 0; e < elements; e++) {
    const h = nodes[e + 1]! - nodes[e]!;
    const places = [deflection(e), slope(e), deflection(e + 1), slope(e + 1)];
    for (const [a, i] of places.entries()) {
      for (const [b, j] of places.entries()) {
        if (i === undefined || j === undefined) continue;
        const scale = h ** (ROTATION[a]! + ROTATION[b]!);
        stiffness[i]![j]! += scale * ((EI * BENDING[a]![b]!) / h ** 3 + (T * TENSION[a]![b]!) / (30 * h));
        mass[i]![j]! += (scale * μ * h * MASS[a]![b]!) / 420;
      }
    }
  }
  for (const [end, node] of [0, elements].entries()) {
    const held = Math.min(fixity[end]!, STIFFEST_FIXITY);
    stiffness[slope(node)]![slope(node)]! += (held / (1 - held)) * Math.sqrt(EI * T);
  }
  return largestEigenvalues(stiffness, mass, count).map((inverseSquare) => Math.sqrt(1 / inverseSquare) / (2 * Math.PI));
}

/** Slopes carry the element's length. */
const ROTATION = [0, 1, 0, 1];
const BENDING = [
  [12, 6, -12, 6],
  [6, 4, -6, 2],
  [-12, -6, 12, -6],
  [6, 2, -6, 4],
];
const TENSION = [
  [36, 3, -36, 3],
  [3, 4, -3, -1],
  [-36, -3, 36, -3],
  [3, -1, -3, 4],
];
const MASS = [
  [156, 22, 54, -13],
  [22, 4, 13, -3],
  [54, 13, 156, -22],
  [-13, -3, -22, 4],
];
