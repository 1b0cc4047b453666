/** What the plucks of a bench can tell apart and what they cannot, read from the correlations of the fit; nothing is decided by how many spans there are. */

import type { BenchData } from './bench-data.ts';
import type { BenchFit } from './bench-fit.ts';
import { linearBench, OPEN_FIXITY_U } from './bench-linear.ts';
import { FIXITY, LN_DENSITY, LN_STIFFNESS } from './bench-model.ts';

export type BenchFinding =
  /** More density or more end effect: the plucks fit either. `shareOfDensity`: of its variance, what would go were the ends known. */
  | { readonly id: 'density-and-ends'; readonly shareOfDensity: number }
  /** Only the product φ sqrt(EI) shows. */
  | { readonly id: 'stiffness-and-fixity' }
  /** Most of the density's doubt is that of this span's length. */
  | { readonly id: 'density-and-length'; readonly span: number; readonly shareOfDensity: number }
  /** Most of it is what all weights share. */
  | { readonly id: 'density-and-weights'; readonly shareOfDensity: number }
  /** So seldom would a beam's partials lie this far from the fit. */
  | { readonly id: 'does-not-fit'; readonly probability: number }
  /** First partials lie above the fit at large forces and below at small ones, or the other way: ends that hold otherwise at other forces. */
  | { readonly id: 'trend-with-force'; readonly relativePerTenfold: number };

/** Two values of which the better part of each one's variance goes with the other are not told apart … */
const TIED_SQUARE = 0.7;
/** … as long as the ends are hardly narrowed beside what was known before: share of that standard deviation. */
const HARDLY_NARROWED = 0.5;
const TIED_STIFFNESS_SQUARE = 0.9;
/** A stiffness known better than this (relative, one standard deviation) serves, tied or not. */
const STIFFNESS_SERVES = 0.15;
const MOST_OF_THE_DOUBT = 0.5;
/** Below this a density is as good as weighed, and where its doubt comes from is idle. */
const DENSITY_SERVES = 0.003;
const SELDOM = 0.01;
/** Standard deviations; some dozen benches in a thousand show it by chance. */
const TREND_BEYOND = 2.5;

export function benchFindings(data: BenchData, fit: BenchFit): BenchFinding[] {
  const linear = linearBench(data, fit.best.parameters);
  if (!linear) return [];
  const { covariance: C, model } = linear;
  const n = model.size;
  const variance = (a: number): number => C[a * n + a]!;
  const fixity = fit.best.parameters[FIXITY]!;
  /** Covariance with the end effect in units of fixity: φ + φ₀ ½ ln EI. */
  const withEnds = (a: number): number => C[a * n + FIXITY]! + (fixity / 2) * C[a * n + LN_STIFFNESS]!;
  const endsVariance = withEnds(FIXITY) + (fixity / 2) * withEnds(LN_STIFFNESS);
  const square = (covariance: number, one: number, other: number): number => covariance ** 2 / (one * other);

  const densityVariance = variance(LN_DENSITY);
  const findings: BenchFinding[] = [];
  const tied = square(withEnds(LN_DENSITY), densityVariance, endsVariance);
  if (tied > TIED_SQUARE && Math.sqrt(endsVariance) > HARDLY_NARROWED * OPEN_FIXITY_U) {
    findings.push({ id: 'density-and-ends', shareOfDensity: tied });
  }
  const product = square(C[LN_STIFFNESS * n + FIXITY]!, variance(LN_STIFFNESS), variance(FIXITY));
  if (product > TIED_STIFFNESS_SQUARE && Math.sqrt(variance(LN_STIFFNESS)) > STIFFNESS_SERVES)
    findings.push({ id: 'stiffness-and-fixity' });
  if (Math.sqrt(densityVariance) > DENSITY_SERVES) {
    const shareOf = (place: number): number => square(C[LN_DENSITY * n + place]!, densityVariance, variance(place));
    data.spans.forEach((_, span) => {
      const share = shareOf(model.ofSpan(span));
      if (share > MOST_OF_THE_DOUBT) findings.push({ id: 'density-and-length', span, shareOfDensity: share });
    });
    const weights = shareOf(model.forceScale);
    if (weights > MOST_OF_THE_DOUBT) findings.push({ id: 'density-and-weights', shareOfDensity: weights });
  }
  if (fit.fitProbability < SELDOM) findings.push({ id: 'does-not-fit', probability: fit.fitProbability });
  findings.push(...trendWithForce(data, fit));
  return findings;
}

function trendWithForce(data: BenchData, fit: BenchFit): BenchFinding[] {
  const points = fit.residuals.flatMap(({ take, number, relative, relativeU }) => {
    const forceN = data.loads[data.takes[take]!.load]!.forceN;
    return number === 1 && forceN ? [{ x: Math.log10(forceN.value), relative, weight: relativeU ** -2, span: data.takes[take]!.span }] : [];
  });
  // Each span by itself: what its length does to all its forces alike is no trend.
  const centred = points.map((point) => {
    const own = points.filter(({ span }) => span === point.span);
    const total = own.reduce((sum, { weight }) => sum + weight, 0);
    return { ...point, x: point.x - own.reduce((sum, { x, weight }) => sum + x * weight, 0) / total };
  });
  const information = centred.reduce((sum, { x, weight }) => sum + weight * x * x, 0);
  if (points.length < 4 || information === 0) return [];
  const slope = centred.reduce((sum, { x, weight, relative }) => sum + weight * x * relative, 0) / information;
  return Math.abs(slope) * Math.sqrt(information) > TREND_BEYOND ? [{ id: 'trend-with-force', relativePerTenfold: slope }] : [];
}
