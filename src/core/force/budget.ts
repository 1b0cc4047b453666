/** Where the doubt about a force comes from: first-order propagation (GUM, JCGM 100:2008, 5.1) with the beam's own sensitivities. */

import type { BudgetLine } from '../outcome.ts';
import { forceSlopes } from '../vibration/beam-sensitivity.ts';
import type { FrequencyDoubt } from './force.ts';
import { centralSpan, type KnownSpan } from './known-span.ts';

/**
 * One line for each input; ends and stiffness each as far as their prior knowledge leaves them open.
 *
 * @param given.forceN  where the sensitivities are taken: the median, > 0
 * @returns lines in a fixed order; shares sum to 1; all shares 0 where nothing is uncertain
 */
export function forceBudget(given: { readonly forceN: number; readonly span: KnownSpan; readonly doubt: FrequencyDoubt }): BudgetLine[] {
  const { forceN, span, doubt } = given;
  const central = centralSpan(span);
  const slopes = forceSlopes({ ...central, number: 1, forceN });
  const [end1, end2] = slopes.perFixity;
  const fixityVariance = (end1 * central.fixityU[0]) ** 2 + (end2 * central.fixityU[1]) ** 2 + 2 * end1 * end2 * central.fixityCovariance;
  const relative = [
    ['span length', slopes.perLnSpanLength * span.spanLengthRelativeU],
    ['linear density', slopes.perLnLinearDensity * span.linearDensityRelativeU],
    ['end fixity', Math.sqrt(Math.max(0, fixityVariance))],
    ['bending stiffness', slopes.perLnBendingStiffness * central.lnStiffnessU],
    ['frequency', slopes.perLnFrequency * doubt.withinRelative],
    ['repeatability', slopes.perLnFrequency * doubt.repeatabilityRelative],
    ['amplitude', slopes.perLnFrequency * doubt.amplitudeRelative],
  ] as const;
  const total = relative.reduce((sum, [, u]) => sum + u * u, 0);
  return relative.map(([input, u]) => ({ input, forceUN: forceN * Math.abs(u), share: total > 0 ? (u * u) / total : 0 }));
}

/** Combined standard uncertainty of the lines, N. */
export const combinedForceUN = (lines: readonly BudgetLine[]): number => Math.hypot(...lines.map((line) => line.forceUN));
