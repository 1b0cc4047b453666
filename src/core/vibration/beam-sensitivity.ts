/** How a partial, or the force behind it, moves with each property of the span: implicit derivatives of the beam's phase equation, no differences. */

import { type BeamMode, type BeamSpan, modeOfSlenderness, modeUnderForce } from './beam.ts';
import { beamPhase, type EndFixities } from './beam-phase.ts';

/** K = π f / f₀, with f₀ the string's fundamental; everything else follows from these two. */
export interface StretchSlopes {
  /** e = ∂ ln K / ∂ ln ε with ε = sqrt(EI/(T L²)): 0 for a string, towards 1 for a beam without force. */
  readonly perLnSlackness: number;
  /** g = ∂ ln K / ∂ φ of each end. */
  readonly perFixity: readonly [number, number];
}

/** Slopes of ln K for a mode that was solved at its ξ. */
export function stretchSlopes(mode: BeamMode, span: { readonly fixity: EndFixities; readonly number: number }): StretchSlopes {
  const { a, b, xi } = mode;
  const phase = beamPhase({ a, b, xi, fixity: span.fixity, number: span.number });
  const perB = phase.perB + (phase.perA * b) / a;
  const bPerXi = -(phase.perXi + (phase.perA * xi) / a) / perB;
  const lnKPerB = (a * a + b * b) / (a * a * b);
  return {
    perLnSlackness: (b / a) ** 2 - xi * bPerXi * lnKPerB,
    perFixity: [(-phase.perFixity[0] / perB) * lnKPerB, (-phase.perFixity[1] / perB) * lnKPerB],
  };
}

/** ln(K / (n π)): how far a partial lies above the string's, and its slopes, at a known slackness ε > 0. */
export function stretchAt(at: { slackness: number; fixity: EndFixities; number: number }): StretchSlopes & { readonly lnStretch: number } {
  const { slackness, fixity, number } = at;
  const mode = modeOfSlenderness({ xi: 1 / slackness, fixity, number });
  return { lnStretch: Math.log((mode.a * mode.b * slackness) / (number * Math.PI)), ...stretchSlopes(mode, { fixity, number }) };
}

/** Change of ln T at a fixed frequency of the partial, for each property of the span. */
export interface ForceSlopes {
  readonly perLnLinearDensity: number;
  readonly perLnSpanLength: number;
  readonly perLnBendingStiffness: number;
  readonly perFixity: readonly [number, number];
  readonly perLnFrequency: number;
}

/** Sensitivity coefficients of the force that is read from one partial. @param span.forceN  where they are taken, > 0 */
export function forceSlopes(span: BeamSpan & { readonly forceN: number }): ForceSlopes {
  const { perLnSlackness: e, perFixity: g } =
    span.bendingStiffnessNm2 === 0 ? { perLnSlackness: 0, perFixity: [0, 0] as const } : stretchSlopes(modeUnderForce(span), span);
  return {
    perLnLinearDensity: 1 / (1 - e),
    perLnSpanLength: (2 * (1 + e)) / (1 - e),
    perLnBendingStiffness: -e / (1 - e),
    perFixity: [(-2 * g[0]) / (1 - e), (-2 * g[1]) / (1 - e)],
    perLnFrequency: 2 / (1 - e),
  };
}
