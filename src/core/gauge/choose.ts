/** Which kind of curve the readings call for: the simplest that explains them, and never one that turns back. */

import { shareAboveF } from '../math/f-test.ts';
import { type CurveKind, directionOf } from './curve.ts';
import { type Fit, fitCurve } from './fit.ts';
import { type LoadedReading, loadsOf } from './loaded-reading.ts';
import type { Whitening } from './whitening.ts';

export interface Candidate {
  readonly fit: Fit;
  /** Akaike's criterion for small samples; lower is better; Infinity where rows are too few to tell. */
  readonly criterion: number;
  /** Whether the reading rises, or falls, all the way over the loads. */
  readonly isMonotone: boolean;
  /** Chance that the loads' means lie as far off the curve by scatter alone; undefined where no load was repeated or none is left over. */
  readonly lackOfFit?: number | undefined;
  /** Chance of as few changes of sign along the curve; small where residuals lie in a bow. */
  readonly bow: number;
}

export interface Choice {
  readonly chosen: Candidate;
  /** Everything that was tried, the chosen one among it. */
  readonly candidates: readonly Candidate[];
  readonly why:
    | { readonly kind: 'asked' }
    | { readonly kind: 'only-one' }
    /** A bend is sure: chance of the line's residuals without it. */
    | { readonly kind: 'bend'; readonly chance: number }
    | { readonly kind: 'straight'; readonly chance: number }
    | { readonly kind: 'criterion'; readonly lead: number; readonly over: CurveKind };
}

/** A curve with its own ceiling must beat a quadratic by this much of the criterion, so that a mere bend is not called a ceiling. */
const LEAD_OF_SATURATING = 2;
/** A spline must beat the best of the others by this much, and each of its terms be sure. */
const LEAD_OF_SPLINE = 6;
const SURE = 0.05;
const SURE_FOR_SPLINE = 0.01;
const MOST_KNOTS = 10;

export interface Choosing {
  readonly rows: readonly LoadedReading[];
  readonly throughOrigin: boolean;
  readonly whitening: Whitening;
  /** Smallest variance of a reading that the step of the readings allows, squared divisions. */
  readonly leastVariance: number;
}

/** Every spline that the rows can carry, the best of them by the criterion. */
function bestSpline(told: Choosing): Candidate | undefined {
  const loads = loadsOf(told.rows).length;
  const most = Math.min(loads, MOST_KNOTS, Math.floor(told.rows.length / 2));
  const splines = Array.from({ length: Math.max(0, most - 3) }, (_, k) => candidateOf('spline', told, k + 4)).filter(
    (one) => one !== undefined,
  );
  return splines.sort((a, b) => a.criterion - b.criterion)[0];
}

function candidateOf(kind: CurveKind, told: Choosing, knotCount?: number): Candidate | undefined {
  const { rows, throughOrigin, whitening, leastVariance } = told;
  const fit = fitCurve({ kind, rows, throughOrigin, whitening, knotCount });
  if (!fit) return undefined;
  const n = rows.length;
  const k = fit.curve.parameters.length + 1; // the scatter is a parameter too
  const variance = fit.residualSumOfSquares / n + leastVariance;
  const criterion = n > k + 1 ? n * Math.log(variance) + 2 * k + (2 * k * (k + 1)) / (n - k - 1) : Infinity;
  const loads = loadsOf(rows);
  const isMonotone = directionOf(fit.curve, { lowN: loads[0]!, highN: loads[loads.length - 1]! }) !== 0;
  return { fit, criterion, isMonotone, lackOfFit: lackOfFit(fit, rows), bow: bowOf(fit, rows) };
}

/** F test of the loads' means against the scatter of repeats (Draper & Smith, Applied Regression Analysis, 'pure error'). */
export function lackOfFit({ residuals, curve }: Fit, rows: readonly LoadedReading[]): number | undefined {
  const means = new Map<number, { sum: number; count: number }>();
  for (const [i, { forceN }] of rows.entries()) {
    const group = means.get(forceN) ?? { sum: 0, count: 0 };
    means.set(forceN, { sum: group.sum + residuals[i]!, count: group.count + 1 });
  }
  const [between, within] = [means.size - curve.parameters.length, rows.length - means.size];
  if (between < 1 || within < 1) return undefined;
  const ofMeans = [...means.values()].reduce((total, { sum, count }) => total + sum ** 2 / count, 0);
  const pure = residuals.reduce((total, rest) => total + rest ** 2, 0) - ofMeans;
  return pure > 0 ? shareAboveF({ ratio: ofMeans / between / (pure / within), between, within }) : 0;
}

/** Wald and Wolfowitz's runs of sign along the loads' means, normal approximation without a tail for too many. */
function bowOf({ residuals }: Fit, rows: readonly LoadedReading[]): number {
  const loads = loadsOf(rows);
  const signs = loads
    .map((load) => rows.reduce((sum, { forceN }, i) => (forceN === load ? sum + residuals[i]! : sum), 0))
    .filter((sum) => sum !== 0)
    .map(Math.sign);
  const plus = signs.filter((sign) => sign > 0).length;
  const minus = signs.length - plus;
  if (plus < 3 || minus < 3) return 1;
  const runs = 1 + signs.slice(1).filter((sign, i) => sign !== signs[i]).length;
  const mean = 1 + (2 * plus * minus) / (plus + minus);
  const variance = ((mean - 1) * (mean - 2)) / (plus + minus - 1);
  return Math.exp(
    -0.717 * Math.max(0, (mean - runs) / Math.sqrt(variance)) - 0.416 * Math.max(0, (mean - runs) / Math.sqrt(variance)) ** 2,
  );
}

/** Chance that the larger of two nested fits gains as much by scatter alone. */
function chanceOfGain(small: Fit, large: Fit): number {
  const between = small.degreesOfFreedom - large.degreesOfFreedom;
  if (between < 1 || large.degreesOfFreedom < 1) return 1;
  const ratio = (small.residualSumOfSquares - large.residualSumOfSquares) / between / (large.residualSumOfSquares / large.degreesOfFreedom);
  return Number.isNaN(ratio) ? 1 : shareAboveF({ ratio, between, within: large.degreesOfFreedom });
}

/** @returns undefined where not even the kind that was asked for, or a line, can be fitted */
export function chooseCurve(told: Choosing, asked: CurveKind | 'auto'): Choice | undefined {
  const line = candidateOf('line', told);
  const quadratic = candidateOf('quadratic', told);
  const saturating = candidateOf('saturating', told);
  const spline = bestSpline(told) ?? (asked === 'spline' ? candidateOf('spline', told) : undefined);
  const candidates = [line, quadratic, saturating, spline].filter((one) => one !== undefined);
  if (asked !== 'auto') {
    const chosen = candidates.find(({ fit }) => fit.curve.kind === asked);
    return chosen && { chosen, candidates, why: { kind: 'asked' } };
  }
  const usable = candidates.filter(({ isMonotone, criterion }) => isMonotone && criterion < Infinity);
  if (usable.length === 0) return line && { chosen: line, candidates, why: { kind: 'only-one' } };
  let chosen = usable[0]!;
  let why: Choice['why'] = { kind: 'only-one' };
  if (line && quadratic && usable.includes(line)) {
    const chance = chanceOfGain(line.fit, quadratic.fit);
    const bent = chance < SURE && quadratic.criterion < line.criterion;
    why = bent ? { kind: 'bend', chance } : { kind: 'straight', chance };
    if (bent && usable.includes(quadratic)) chosen = quadratic;
  }
  if (saturating && usable.includes(saturating) && chosen !== saturating) {
    const lead = chosen.criterion - saturating.criterion;
    const needed = chosen.fit.curve.kind === 'quadratic' ? LEAD_OF_SATURATING : LEAD_OF_SATURATING + 1;
    if (lead > needed) {
      why = { kind: 'criterion', lead, over: chosen.fit.curve.kind };
      chosen = saturating;
    }
  }
  if (spline && usable.includes(spline) && chosen !== spline) {
    const lead = chosen.criterion - spline.criterion;
    const nested = chosen.fit.curve.kind === 'saturating' ? 0 : chanceOfGain(chosen.fit, spline.fit);
    if (lead > LEAD_OF_SPLINE && nested < SURE_FOR_SPLINE) {
      why = { kind: 'criterion', lead, over: chosen.fit.curve.kind };
      chosen = spline;
    }
  }
  return { chosen, candidates, why };
}
