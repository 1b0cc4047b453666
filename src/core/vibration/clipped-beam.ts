/** A span with a small mass clipped to its middle: how far its first partial falls. */

import { type BeamSpan, partialHz } from './beam.ts';
import { requirePositive } from './string.ts';

export interface ClippedSpan extends Omit<BeamSpan, 'number' | 'fixity'> {
  /** Of both ends alike, 0 hinged to 1 clamped. */
  readonly fixity: number;
  readonly forceN: number;
  /** At mid-span, >= 0. */
  readonly clipMassKg: number;
  /** Belt on either side of the middle that the clip holds stiff, m; 0 for a point. */
  readonly clipHalfWidthM?: number | undefined;
}

/** Bisections: 2⁻⁵⁰ of the first partial without the clip. */
const STEPS = 50;

/**
 * First partial with the clip, Hz, small amplitude, undamped.
 *
 * Half of the span from the clip's edge on, w = c₁ cos βx + c₂ sin βx + c₃ e^(−αx) + c₄ e^(−α(h−x)), is level at the clip, where its shear
 * 2 EI w''' carries the clip's inertia m ω² w, and is held at the end; the frequency is where these four conditions have a solution. The clip's
 * root lies below the first partial without it, and only one does, since a mass at one point lets the modes interlace.
 *
 * @throws RangeError when a quantity is out of its range
 */
export function clippedHz(span: ClippedSpan): number {
  const { clipMassKg, clipHalfWidthM: a = 0, fixity, ...rest } = span;
  const { spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, forceN } = span;
  requirePositive('clippedHz', { bendingStiffnessNm2: EI, forceN, spanLengthM: L, freeLengthM: L / 2 - a });
  if (!(clipMassKg >= 0)) throw new RangeError(`clippedHz needs a clipMassKg of 0 or more, got ${clipMassKg}`);
  const bareHz = partialHz({ ...rest, spanLengthM: L - 2 * a, fixity: [fixity, fixity], number: 1 });
  const mass = clipMassKg + 2 * a * μ;
  if (mass === 0) return bareHz;
  const at = (hz: number): number => conditions({ ...span, halfM: L / 2 - a, mass, omega: 2 * Math.PI * hz });
  let low = 0;
  let high = bareHz;
  const sign = Math.sign(at(bareHz * 2 ** -STEPS));
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    if (Math.sign(at(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Determinant of the four conditions, scaled to stay near 1. */
function conditions(at: ClippedSpan & { halfM: number; mass: number; omega: number }): number {
  const { forceN: T, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, fixity: φ, halfM: h, mass, omega } = at;
  const inertia = μ * omega * omega;
  const β2 = (2 * inertia) / (T + Math.sqrt(T * T + 4 * EI * inertia));
  const β = Math.sqrt(β2);
  const α2 = β2 + T / EI;
  const α = Math.sqrt(α2);
  const E = Math.exp(-α * h);
  const [s, c] = [Math.sin(β * h), Math.cos(β * h)];
  const r = β / α;
  const load = (mass * omega * omega) / (2 * EI * α * α2);
  const hinge = (1 - φ) * EI * α;
  const spring = φ * Math.sqrt(EI * T);
  return determinant([
    [0, r, -1, E],
    [-load, -(r ** 3), -1 - load, E - load * E],
    [c, s, E, 1],
    [-hinge * r * r * c - spring * r * s, -hinge * r * r * s + spring * r * c, hinge * E - spring * E, hinge + spring].map(
      (value) => value / (hinge + spring),
    ),
  ]);
}

/** Of four rows, by elimination with pivots. */
function determinant(rows: number[][]): number {
  let product = 1;
  for (let k = 0; k < rows.length; k++) {
    const pivot = rows.reduce((best, row, i) => (i >= k && Math.abs(row[k]!) > Math.abs(rows[best]![k]!) ? i : best), k);
    if (pivot !== k) {
      [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
      product = -product;
    }
    const head = rows[k]![k]!;
    product *= head;
    if (head === 0) return 0;
    for (let i = k + 1; i < rows.length; i++) {
      const share = rows[i]![k]! / head;
      for (let j = k; j < rows.length; j++) rows[i]![j]! -= share * rows[k]![j]!;
    }
  }
  return product;
}
