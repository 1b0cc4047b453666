/** A span whose wide face lies level hangs through: its first partial rises, and the string's law reads too much force. */

import type { ForceN } from '../outcome.ts';
import type { PartialEvidence } from './heard-partials.ts';
import type { KnownSpan } from './known-span.ts';

const STANDARD_GRAVITY = 9.80665;
/** Axial stiffness for the linear density of rubber on glass cord, N per kg/m: 22 kN of a 2 mm belt 6 mm wide (assumed; none is published). */
const AXIAL_STIFFNESS_PER_DENSITY = 2.8e6;
/** It may be so many times that, or a part of it; and the rest of the loop may give with the span. */
const STIFFER_AT_MOST = 1.5;
/** From here on the shallow arc's law is no guide; such a span is beyond reading anyway. */
const MOST_RISE = 8;
const ROUNDS = 12;
const SETTLED = 1e-4;

/**
 * q = 8 λ²/π⁴ with λ² = (μ g L/T)² EA/T: how much of the force the string's law reads too high by, where the span alone can give.
 * Partial n of odd number rises by q/n⁴, of even number not at all.
 *
 * @see Irvine, Cable Structures (1981), ch. 3, for the shallow arc; linear in λ²
 */
export function sagRise(span: KnownSpan, forceN: number): number {
  const { linearDensityKgPerM: μ, spanLengthM: L } = span;
  const weightN = μ * STANDARD_GRAVITY * L;
  return (8 / Math.PI ** 4) * (weightN / forceN) ** 2 * ((span.axialStiffnessN?.value ?? AXIAL_STIFFNESS_PER_DENSITY * μ) / forceN);
}

/**
 * Partials as they would be without sag, under a force that is itself looked for: between no rise (the loop gives) and all of it and more (span
 * trapped, belt stiffer than taken), even in between, so that the middle is taken and the half width is doubt.
 */
export function withoutSag(partials: readonly PartialEvidence[], rise: number): PartialEvidence[] {
  return partials.map((partial) => {
    if (partial.number % 2 === 0) return partial;
    const lnRise = Math.log1p(Math.min(MOST_RISE, (STIFFER_AT_MOST * rise) / partial.number ** 4)) / 2;
    return {
      ...partial,
      frequencyHz: partial.frequencyHz * Math.exp(-lnRise / 2),
      relativeU: Math.hypot(partial.relativeU, lnRise / Math.sqrt(12)),
    };
  });
}

/** ln of how far sag lifts a partial: the middle of what `withoutSag` takes back. */
export const lnSagLift = (rise: number, number: number): number =>
  number % 2 === 0 ? 0 : Math.log1p(Math.min(MOST_RISE, (STIFFER_AT_MOST * rise) / number ** 4)) / 4;

/** Solves for the force whose own sag is taken out of the partials that tell it. @param forceOf  force of given partials */
export function settledSag<Fit extends { readonly forceN: ForceN | undefined }>(
  partials: readonly PartialEvidence[],
  span: KnownSpan,
  forceOf: (partials: readonly PartialEvidence[]) => Fit,
): { readonly fit: Fit; readonly rise: number } {
  let fit = forceOf(partials);
  let rise = 0;
  for (let round = 0; round < ROUNDS && fit.forceN !== undefined; round++) {
    const next = Math.min(MOST_RISE, sagRise(span, fit.forceN.value));
    if (Math.abs(next - rise) < SETTLED) break;
    rise = round === 0 ? next : (rise + next) / 2; // halfway: less force means more sag means less force
    fit = forceOf(withoutSag(partials, rise));
  }
  return { fit, rise };
}
