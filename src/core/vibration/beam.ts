/** The belt as it is: a tensioned beam with bending stiffness between two ends of their own fixity. Any partial from the force, and back. */

import { beamPhase, type EndFixities, guessedWaveNumber } from './beam-phase.ts';
import { requirePositive } from './string.ts';

export interface BeamSpan {
  /** Tangent point to tangent point, > 0. */
  readonly spanLengthM: number;
  /** Moving mass per metre, > 0. */
  readonly linearDensityKgPerM: number;
  /** EI, >= 0; 0 is the ideal string. */
  readonly bendingStiffnessNm2: number;
  /** Of each end, 0 (hinged) to 1 (clamped). */
  readonly fixity: EndFixities;
  /** Mode number, counted from 1. */
  readonly number: number;
}

/** A mode in numbers without dimension: f = sqrt(T/μ)/(2 L) · a b / (ξ π). */
export interface BeamMode {
  readonly a: number;
  readonly b: number;
  /** L sqrt(T/EI). */
  readonly xi: number;
}

/** b of mode n lies from n π to a little beyond (n + ½) π: the clamped first root passes 1.5 π where ξ falls below 0.87. */
const WIDEST_LAG = 0.51 * Math.PI;
/** Below this ξ the force is less than a millionth of what would bend the span: none, for any purpose. */
const LEAST_XI = 1e-6;
/** Newton's last step, relative, below which the root is as good as doubles can tell. */
const CLOSE = 1e-14;
/** Far more than Newton with bisection needs: at most 4 forward and 17 back in a search over slenderness 1e-3 to 100. */
const MOST_STEPS = 100;

/**
 * Frequency of one partial of a span under a known force, small amplitude, undamped.
 *
 * @param span.forceN  static force, > 0
 * @returns hertz
 * @throws RangeError when a quantity is out of its range
 */
export function partialHz(span: BeamSpan & { readonly forceN: number }): number {
  checkSpan('partialHz', span);
  requirePositive('partialHz', { forceN: span.forceN });
  const { forceN: T, spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, number: n } = span;
  const stringHz = Math.sqrt(T / μ) / (2 * L);
  if (EI === 0) return n * stringHz;
  const { a, b, xi } = modeUnderForce(span);
  return (stringHz * a * b) / (xi * Math.PI);
}

/**
 * Force of a span from the frequency of one of its partials, the inverse of `partialHz`.
 *
 * @param span.partialHz  frequency of partial `number`, small amplitude, undamped, > 0
 * @returns newtons; `undefined` where no force gives so low a frequency: the stiffness alone already rings higher
 * @throws RangeError when a quantity is out of its range
 */
export function forceFromPartial(span: BeamSpan & { readonly partialHz: number }): number | undefined {
  checkSpan('forceFromPartial', span);
  requirePositive('forceFromPartial', { partialHz: span.partialHz });
  const { partialHz: f, spanLengthM: L, linearDensityKgPerM: μ, bendingStiffnessNm2: EI, fixity, number } = span;
  if (EI === 0) return μ * ((2 * L * f) / number) ** 2;
  const xi = slendernessFromProduct({ product: 2 * Math.PI * f * L * L * Math.sqrt(μ / EI), fixity, number });
  return xi === undefined ? undefined : (EI * xi * xi) / (L * L);
}

/** The mode of a span whose force is known; EI > 0. */
export function modeUnderForce(span: BeamSpan & { readonly forceN: number }): BeamMode {
  const { forceN: T, spanLengthM: L, bendingStiffnessNm2: EI, fixity, number } = span;
  return modeOfSlenderness({ xi: L * Math.sqrt(T / EI), fixity, number });
}

/** The mode at a known ξ: Newton on the phase from its asymptotic guess, bisecting where a step leaves the bracket. */
export function modeOfSlenderness(at: { xi: number; fixity: EndFixities; number: number }): BeamMode {
  const { xi, fixity, number } = at;
  let low = number * Math.PI;
  let high = low + WIDEST_LAG;
  let b = guessedWaveNumber({ b: low, xi, fixity, number });
  for (let step = 0; step < MOST_STEPS; step++) {
    const a = Math.hypot(xi, b);
    const phase = beamPhase({ b, a, xi, fixity, number });
    if (phase.value > 0) high = b;
    else low = b;
    const newton = b - phase.value / (phase.perB + (phase.perA * b) / a);
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    if (Math.abs(next - b) <= CLOSE * b) return { a: Math.hypot(xi, next), b: next, xi };
    b = next;
  }
  return { a: Math.hypot(xi, b), b, xi };
}

/**
 * ξ of a span whose product a b = 2 π f L² sqrt(μ/EI) is known; one unknown remains, and ln ξ is the scale on which Newton goes straight.
 * The phase falls with ξ, from the hinged span's ξ downwards.
 */
function slendernessFromProduct(at: { product: number; fixity: EndFixities; number: number }): number | undefined {
  const { product: W, fixity, number } = at;
  const hinged2 = (W / (number * Math.PI)) ** 2 - (number * Math.PI) ** 2;
  if (hinged2 <= LEAST_XI * LEAST_XI) return undefined;
  const phaseAt = (xi: number): { value: number; perLnXi: number } => {
    const a = Math.sqrt((xi * xi + Math.sqrt(xi ** 4 + 4 * W * W)) / 2);
    const b = W / a;
    const phase = beamPhase({ b, a, xi, fixity, number });
    const perXi = ((a * phase.perA - b * phase.perB) * xi) / (a * a + b * b) + phase.perXi;
    return { value: phase.value, perLnXi: perXi * xi };
  };
  if (phaseAt(LEAST_XI).value <= 0) return undefined;

  let low = LEAST_XI;
  let high = Math.sqrt(hinged2);
  const guess = guessedWaveNumber({ b: number * Math.PI, xi: high, fixity, number });
  const guess2 = (W / guess) ** 2 - guess * guess;
  let xi = guess2 > low * low ? Math.min(Math.sqrt(guess2), high) : Math.sqrt(low * high);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { value, perLnXi } = phaseAt(xi);
    if (value > 0) low = xi;
    else high = xi;
    const newton = xi * Math.exp(-value / perLnXi);
    const next = newton >= low && newton <= high ? newton : Math.sqrt(low * high);
    if (Math.abs(next - xi) <= CLOSE * xi) return next;
    xi = next;
  }
  return xi;
}

function checkSpan(who: string, span: BeamSpan): void {
  const { spanLengthM, linearDensityKgPerM, bendingStiffnessNm2, fixity, number } = span;
  requirePositive(who, { spanLengthM, linearDensityKgPerM, number });
  if (!Number.isInteger(number)) throw new RangeError(`${who} needs a whole mode number, got ${number}`);
  if (!(bendingStiffnessNm2 >= 0 && bendingStiffnessNm2 < Infinity)) {
    throw new RangeError(`${who} needs a bendingStiffnessNm2 of 0 or more, got ${bendingStiffnessNm2}`);
  }
  for (const φ of fixity) {
    if (!(φ >= 0 && φ <= 1)) throw new RangeError(`${who} needs fixities from 0 to 1, got ${φ}`);
  }
}
