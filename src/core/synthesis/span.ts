/** The span that is plucked: its partials, how the finger shapes them, how they die, and how amplitude raises them. */

import { partialHz } from '../vibration/beam.ts';
import type { EndFixities } from '../vibration/beam-phase.ts';

export interface SimulatedSpan {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: EndFixities;
  /** EA of the belt times the share of the loop that this span is: what a deflection of this span stretches. 0: no glide. */
  readonly axialStiffnessN: number;
  /** Amplitude decay time of the first partial. */
  readonly decayS: number;
  /** How much faster high partials die: 1/τ_n = (1 − g + g (f_n/f_1)²)/τ_1. */
  readonly dampingGrowth: number;
}

/** Small-amplitude, undamped frequency of one partial. */
export const spanPartialHz = (span: SimulatedSpan, number: number): number => partialHz({ ...span, number });

/** Amplitude decay time of a partial by its frequency. */
export function partialDecayS(span: SimulatedSpan, frequencyHz: number): number {
  const ratio = frequencyHz / spanPartialHz(span, 1);
  return span.decayS / (1 - span.dampingGrowth + span.dampingGrowth * ratio * ratio);
}

/**
 * Displacement of each partial at the moment of release, relative to the deflection under the finger; index 0 is partial 1.
 *
 * Static deflection of a tensioned beam under a force at x0 in hinged modes, q_n ∝ sin(k x0) / (k² (T + EI k²)) with k = n π / L,
 * times sin(k w/2)/(k w/2) for a finger of width w. Clamped ends change the shapes near the ends only, which is left out: it moves levels, never frequencies.
 */
export function releaseShape(
  span: SimulatedSpan,
  pluck: { readonly placeShare: number; readonly fingerWidthM: number; readonly partialCount: number },
): Float64Array {
  const k1 = Math.PI / span.spanLengthM;
  const shape = Float64Array.from({ length: pluck.partialCount }, (_, index) => {
    const k = (index + 1) * k1;
    const half = (k * pluck.fingerWidthM) / 2;
    const finger = half === 0 ? 1 : Math.sin(half) / half;
    return (finger * Math.sin(k * pluck.placeShare * span.spanLengthM)) / (k * k * (span.forceN + span.bendingStiffnessNm2 * k * k));
  });
  const underFinger = shape.reduce((sum, value, index) => sum + value * Math.sin((index + 1) * Math.PI * pluck.placeShare), 0);
  return shape.map((value) => value / underFinger);
}

/**
 * Factor by which amplitude raises the frequency of a plane vibration, f(a)/f(0), first partial of amplitude a.
 *
 * T(t) = T + EA π² q²/(4 L²) makes the first mode a hardening spring, q'' + ω²(1 + c q²) q = 0 with c a² = EA π² a²/(4 L² T), whose
 * exact frequency is ω π sqrt(1 + c a²) / (2 K(k)), k² = c a²/(2 (1 + c a²)); 2 K/π = 1 / agm(1, sqrt(1 − k²)).
 *
 * @see Rayleigh, The Theory of Sound, vol. I, for K by the arithmetic-geometric mean any table of elliptic integrals
 */
export function glideFactor(span: SimulatedSpan, amplitudeM: number): number {
  const ca2 = (span.axialStiffnessN * (Math.PI * amplitudeM) ** 2) / (4 * span.spanLengthM ** 2 * span.forceN);
  let a = 1;
  let b = Math.sqrt(1 - ca2 / (2 * (1 + ca2)));
  for (let step = 0; step < 5; step++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.sqrt(1 + ca2) * a;
}
