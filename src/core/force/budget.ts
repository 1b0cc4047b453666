/** Where the doubt about a force comes from: first-order propagation (GUM, JCGM 100:2008, 5.1) with the beam's own sensitivities. */

import { coverageFactorOf, effectiveDegreesOfFreedom, firstOrderHolds } from '../math/propagation.ts';
import type { BudgetLine, BudgetSum, ForceN } from '../outcome.ts';
import { forceSlopes } from '../vibration/beam-sensitivity.ts';
import type { FrequencyDoubt } from './force.ts';
import { type CentralSpan, centralSpan, type KnownSpan } from './known-span.ts';

/**
 * One line for each input; ends and stiffness each as far as prior knowledge and the partials leave them open. What both share, since
 * partials tell their product, is parted evenly between their lines.
 *
 * @param given.forceN   where the sensitivities are taken: the median, > 0
 * @param given.central  stiffness and ends with their spread and covariances
 * @returns lines in a fixed order; shares sum to 1; all shares 0 where nothing is uncertain
 */
export function forceBudget(given: {
  readonly forceN: number;
  readonly span: KnownSpan;
  readonly doubt: FrequencyDoubt;
  readonly central?: CentralSpan | undefined;
}): BudgetLine[] {
  const { forceN, span, doubt, central = centralSpan(span) } = given;
  const slopes = forceSlopes({ ...central, number: 1, forceN });
  const [end1, end2] = slopes.perFixity;
  const fixityVariance = (end1 * central.fixityU[0]) ** 2 + (end2 * central.fixityU[1]) ** 2 + 2 * end1 * end2 * central.fixityCovariance;
  const [shared1, shared2] = central.stiffnessCovariance;
  const [fixity, stiffness] = partedEvenly(
    fixityVariance,
    (slopes.perLnBendingStiffness * central.lnStiffnessU) ** 2,
    2 * slopes.perLnBendingStiffness * (end1 * shared1 + end2 * shared2),
  );
  const relative = [
    ['span length', slopes.perLnSpanLength * span.spanLengthRelativeU],
    ['linear density', slopes.perLnLinearDensity * span.linearDensityRelativeU],
    ['end fixity', Math.sqrt(fixity)],
    ['bending stiffness', Math.sqrt(stiffness)],
    ['frequency', slopes.perLnFrequency * Math.hypot(doubt.withinRelative, doubt.modelRelative ?? 0)],
    ['repeatability', slopes.perLnFrequency * doubt.repeatabilityRelative],
    ['amplitude', slopes.perLnFrequency * doubt.amplitudeRelative],
  ] as const;
  const total = relative.reduce((sum, [, u]) => sum + u * u, 0);
  return relative.map(([input, u]) => ({
    input,
    forceUN: forceN * Math.abs(u),
    share: total > 0 ? (u * u) / total : 0,
    ...(input === 'repeatability' ? { degreesOfFreedom: doubt.repeatabilityDegreesOfFreedom } : {}),
  }));
}

/** Two variances with half of what they share added to each; none below 0, and the sum kept. */
function partedEvenly(one: number, other: number, shared: number): readonly [number, number] {
  const sum = Math.max(0, one + other + shared);
  const first = Math.min(sum, Math.max(0, one + shared / 2));
  return [first, sum - first];
}

/** Combined standard uncertainty of the lines, N. */
export const combinedForceUN = (lines: readonly BudgetLine[]): number => Math.hypot(...lines.map((line) => line.forceUN));

const COVERAGE = 0.95;
/** t of a normal distribution for the same coverage. */
const NORMAL_FACTOR = coverageFactorOf(Infinity, COVERAGE);

/** Sum of the lines; ends and stiffness are one group whose shared part lies in its two lines already. */
export function budgetSum(lines: readonly BudgetLine[], forceN: ForceN): BudgetSum {
  const degreesOfFreedom = effectiveDegreesOfFreedom(
    lines.map(({ forceUN, degreesOfFreedom: ν = Infinity }) => ({ standardUncertainty: forceUN, degreesOfFreedom: ν })),
  );
  const forceUN = combinedForceUN(lines);
  const coverageFactor = coverageFactorOf(degreesOfFreedom, COVERAGE);
  const linear = { value: forceN.value, standardUncertainty: forceUN, expanded: coverageFactor * forceUN };
  const { low = -Infinity, high = Infinity } = forceN;
  return {
    forceUN,
    ...(degreesOfFreedom < Infinity ? { degreesOfFreedom } : {}),
    coverageFactor,
    firstOrderHolds: firstOrderHolds(linear, { low, high }),
  };
}

/**
 * An interval that was got with all its uncertainties taken as known, widened for those that rest on few plucks: both halves grow, on the
 * scale of ln T, as Student's t for the effective degrees of freedom stands over the normal factor.
 */
export function widenedForFew(forceN: ForceN, lines: readonly BudgetLine[]): ForceN {
  const factor = budgetSum(lines, forceN).coverageFactor / NORMAL_FACTOR;
  const { value } = forceN;
  const moved = (bound: number | undefined): number | undefined => bound && value * (bound / value) ** factor;
  const [low, high] = [moved(forceN.low), moved(forceN.high)];
  const u95 = low === undefined || high === undefined ? undefined : Math.max(value - low, high - value);
  return { value, low, high, u95 };
}
