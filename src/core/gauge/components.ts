/** What makes single readings differ from the curve: scatter, direction, load, series; each with how well it is known. */

import { shareAboveF } from '../math/f-test.ts';
import { normalCdf } from '../math/normal.ts';
import { type RefinedLeastSquares, refinedLeastSquares } from '../math/refined-least-squares.ts';
import type { Fit } from './fit.ts';
import { type LoadedReading, positionsBy, signOf } from './loaded-reading.ts';
import { type NoiseShape, noiseShape } from './noise-shape.ts';

/** A variance in squared divisions with its degrees of freedom. */
export interface Component {
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

export interface Components {
  /** Of one reading at the largest load, rounding included; `shape` takes it elsewhere. */
  readonly scatter: Component;
  /** The part of the scatter that is there before the reading is rounded to its step, squared divisions. */
  readonly unrounded: number;
  /** Rounding is even within plus and minus half a step; 0 where the step is too fine to matter. */
  readonly halfStep: number;
  readonly shape: NoiseShape;
  /** What all readings of one load share beyond the curve: a shape that the curve misses. */
  readonly load: Component;
  /** Variance that repeats share because they fall on one step, squared divisions. */
  readonly sharedRounding: number;
  /** What all readings of one series share. */
  readonly series: Component;
  /** Half of what going up and coming down differ by, divisions: Σ c_k (F/F_largest)^k; positive where going up reads more. */
  readonly halfGap: (forceN: number) => number;
  readonly gapTerms: number;
  /** How far the middle of the directions lies from the curve, divisions; 0 where both were run alike. */
  readonly middle: (forceN: number) => number;
}

const NONE: Component = { variance: 0, degreesOfFreedom: 1 };
/** Below this chance a difference between directions or series is taken to be there. */
const SURE = 0.05;

/** The joint fit of curve and directions, on the unweighted rows. */
interface Joint {
  readonly solved: RefinedLeastSquares;
  readonly residuals: readonly number[];
  readonly degreesOfFreedom: number;
  readonly terms: number;
}

/** @param told.step  of the readings; `told.slope`: of the curve, for weights that are uncertain themselves */
export function componentsOf({ fit, rows, step }: { fit: Fit; rows: readonly LoadedReading[]; step: number }): Components {
  const largestN = Math.max(...rows.map(({ forceN }) => forceN));
  const joint = jointFit(fit, rows, largestN);
  const coefficients = joint ? [...joint.solved.coefficients].slice(fit.curve.parameters.length) : [];
  const halfGap = (forceN: number): number => coefficients.reduce((sum, c, k) => sum + c * (forceN / largestN) ** k, 0);
  const residuals = joint?.residuals ?? [...fit.residuals];
  const dof = Math.max(1, joint?.degreesOfFreedom ?? fit.degreesOfFreedom);
  const p = fit.curve.parameters.length;

  const left = joint ? [...joint.solved.leverages].map((h) => 1 - h) : rows.map(() => dof / rows.length);
  const within = withinLoads(rows, residuals);
  const useWithin = within.degreesOfFreedom - coefficients.length >= 3;
  const shape = noiseShape(
    useWithin
      ? within.rests.map(({ rest, left: share }, i) => ({ forceN: rows[i]!.forceN, residual: rest, left: share }))
      : residuals.map((residual, i) => ({ forceN: rows[i]!.forceN, residual, left: left[i]! })),
  );
  const weighted = useWithin ? within.rests.map(({ rest }) => rest) : residuals;
  const scatterDof = useWithin ? within.degreesOfFreedom - coefficients.length : dof;
  const sumOfSquares = weighted.reduce((sum, rest, i) => sum + (rest / shape(rows[i]!.forceN)) ** 2, 0);
  const plain: Component = { variance: sumOfSquares / scatterDof, degreesOfFreedom: scatterDof };
  const isCoarse = step ** 2 / 12 > COARSE_SHARE * plain.variance;
  const unrounded = isCoarse ? (censoredVariance({ rows, residuals, shape, step }) * rows.length) / dof : plain.variance;
  const scatter: Component = isCoarse ? { ...plain, variance: unrounded + step ** 2 / 12 } : plain;

  // Repeats of one true value fall on one step where the scatter is finer than it (the first term of the Fourier series of rounding).
  const sharedRounding = isCoarse ? (step ** 2 / 12) * Math.exp((-4 * Math.PI ** 2 * unrounded) / step ** 2) : 0;
  const load = useWithin
    ? loadComponent({ rows, residuals, p, scatter, shape, sharedRounding, fit })
    : { own: NONE, shared: sharedRounding };
  return {
    scatter,
    unrounded,
    halfStep: isCoarse ? step / 2 : 0,
    shape,
    load: load.own,
    sharedRounding: load.shared,
    series: seriesComponent({ rows, residuals, scatter, shape }),
    halfGap: coefficients.length > 0 ? halfGap : () => 0,
    gapTerms: coefficients.length,
    middle:
      coefficients.length > 0
        ? (forceN) => fit.curve.gradient(forceN).reduce((sum, g, k) => sum + g * joint!.solved.coefficients[k]!, 0)
        : () => 0,
  };
}

/** From this share of the variance on, the step of the readings is reckoned with. */
const COARSE_SHARE = 0.02;

/**
 * Variance before rounding, by the likelihood of each reading's own step: at loads whose true readings lie on a step, rounding hides the
 * scatter; between two steps it swells it.
 */
function censoredVariance(told: { rows: readonly LoadedReading[]; residuals: readonly number[]; shape: NoiseShape; step: number }): number {
  const { rows, residuals, shape, step } = told;
  const logLikelihood = (sigma: number): number =>
    residuals.reduce((sum, rest, i) => {
      const own = sigma * shape(rows[i]!.forceN);
      return sum + Math.log(Math.max(1e-30, normalCdf((rest + step / 2) / own) - normalCdf((rest - step / 2) / own)));
    }, 0);
  const plain = Math.sqrt(residuals.reduce((sum, rest) => sum + rest ** 2, 0) / residuals.length);
  const most = 2 * Math.max(plain, step);
  let best = { sigma: step / 100, value: logLikelihood(step / 100) };
  for (let k = 1; k <= CENSORED_GRID; k++) {
    const sigma = (step / 100) * ((100 * most) / step) ** (k / CENSORED_GRID);
    const value = logLikelihood(sigma);
    if (value > best.value) best = { sigma, value };
  }
  return best.sigma ** 2;
}

const CENSORED_GRID = 80;

/** Curve and directions fitted together; the most terms of the direction that are sure. */
function jointFit(fit: Fit, rows: readonly LoadedReading[], largestN: number): Joint | undefined {
  const signs = rows.map(signOf);
  const ups = signs.filter((sign) => sign > 0).length;
  const downs = signs.filter((sign) => sign < 0).length;
  const most = ups >= 3 && downs >= 3 ? 3 : 0;
  const joints = Array.from({ length: most + 1 }, (_, terms) => joined(fit, rows, signs, largestN, terms)).filter(
    (one) => one !== undefined,
  );
  let best = joints[0];
  for (const joint of joints.slice(1)) {
    if (joint.degreesOfFreedom < 2 || !best) continue;
    const gained = best.solved.residualSumOfSquares - joint.solved.residualSumOfSquares;
    const terms = joint.terms - best.terms;
    const ratio = gained / terms / (joint.solved.residualSumOfSquares / joint.degreesOfFreedom);
    if (shareAboveF({ ratio, between: terms, within: joint.degreesOfFreedom }) < SURE) best = joint;
  }
  return best;
}

function joined(fit: Fit, rows: readonly LoadedReading[], signs: readonly number[], largestN: number, terms: number): Joint | undefined {
  const lines = rows.map(({ forceN }, i) => [
    ...fit.curve.gradient(forceN),
    ...Array.from({ length: terms }, (_, k) => signs[i]! * (forceN / largestN) ** k),
  ]);
  const width = lines[0]!.length;
  if (rows.length <= width) return undefined;
  // The curve may bend in its parameters, so that what is fitted is what it leaves.
  const solved = refinedLeastSquares({ design: Float64Array.from(lines.flat()), response: fit.residuals });
  return solved && { solved, residuals: [...solved.residuals], degreesOfFreedom: rows.length - width, terms };
}

/** Each row less the mean of its load's rows of the same direction. */
function withinLoads(rows: readonly LoadedReading[], residuals: readonly number[]) {
  const rests = rows.map(() => ({ rest: 0, left: 0 }));
  let degreesOfFreedom = 0;
  for (const at of positionsBy(rows, ({ forceN }) => forceN).values()) {
    const mean = at.reduce((sum, i) => sum + residuals[i]!, 0) / at.length;
    for (const i of at) rests[i] = { rest: residuals[i]! - mean, left: 1 - 1 / at.length };
    degreesOfFreedom += at.length - 1;
  }
  return { rests, degreesOfFreedom };
}

interface Parts {
  readonly rows: readonly LoadedReading[];
  readonly residuals: readonly number[];
  readonly scatter: Component;
  readonly shape: NoiseShape;
}

/** Variance of a load's own part from the means of the loads, by the method of moments; what rounding makes repeats share stands apart. */
function loadComponent({
  rows,
  residuals,
  p,
  scatter,
  shape,
  sharedRounding,
  fit,
}: Parts & { p: number; sharedRounding: number; fit: Fit }) {
  const groups = [...positionsBy(rows, ({ forceN }) => forceN)];
  const free = groups.length - p;
  if (free < 1) return { own: NONE, shared: sharedRounding };
  let found = 0;
  let known = 0;
  for (const [forceN, at] of groups) {
    const mean = at.reduce((sum, i) => sum + residuals[i]!, 0) / at.length;
    found += mean ** 2 - (scatter.variance * shape(forceN) ** 2 * (free / groups.length)) / at.length;
    known += (fit.curve.slope(forceN) * Math.max(...at.map((i) => rows[i]!.forceUN ?? 0))) ** 2 / groups.length;
  }
  const own = found / free - known - sharedRounding;
  return { own: own > 0 ? { variance: own, degreesOfFreedom: free } : NONE, shared: sharedRounding };
}

function seriesComponent({ rows, residuals, scatter, shape }: Parts): Component {
  const groups = [...positionsBy(rows, ({ series }) => series)].filter(([name]) => name !== undefined);
  if (groups.length < 2) return NONE;
  const means = groups.map(([, at]) => at.reduce((sum, i) => sum + residuals[i]!, 0) / at.length);
  const own = groups.map(([, at]) => at.reduce((sum, i) => sum + scatter.variance * shape(rows[i]!.forceN) ** 2, 0) / at.length ** 2);
  const all = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const between = groups.length - 1;
  const spread = means.reduce((sum, mean) => sum + (mean - all) ** 2, 0) / between;
  const chance = own.reduce((sum, variance) => sum + variance, 0) / own.length;
  if (!(chance > 0) || shareAboveF({ ratio: spread / chance, between, within: scatter.degreesOfFreedom }) > SURE) return NONE;
  return { variance: spread - chance, degreesOfFreedom: between };
}
