/** Mistakes at the rig, by what they leave behind in the readings. Each is a suspicion with its size; nothing is corrected. */

import { quadraticForm } from '../math/refined-least-squares.ts';
import { coverageFactor } from '../math/student-t.ts';
import type { Calibration } from './calibration.ts';
import { lackOfFit } from './choose.ts';
import { type Fit, fitCurve } from './fit.ts';
import { type LoadedReading, loadsOf, positionsBy } from './loaded-reading.ts';

export type Suspicion =
  /** The loaded rows lie as if this much more (less, where negative) had hung than was entered: hook, string, tare. */
  | { readonly kind: 'unweighed'; readonly forceN: number; readonly uN: number }
  /** One series lies off the others by one force: tare, hook. */
  | { readonly kind: 'series-offset'; readonly series: string; readonly forceN: number; readonly uN: number }
  /** One series lies off the others in proportion to the force: gauge elsewhere on the span, other belt. */
  | { readonly kind: 'series-scale'; readonly series: string; readonly relative: number; readonly u: number }
  /** Coming down reads more than going up in proportion to the force: belt held on the roller, or the gauge's own friction. */
  | { readonly kind: 'friction'; readonly relative: number; readonly forceN: number }
  /** All rows of one load lie off the curve: the weight is not what it was taken for. */
  | { readonly kind: 'wrong-weight'; readonly forceN: number; readonly offN: number; readonly rows: readonly number[] };

/** Chance, shared among all that is tested, that a sound run raises a suspicion of a kind. */
const RISK = 0.01;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** @param all  also rows at a stop and under no force */
export function suspicionsOf(calibration: Calibration, all: readonly LoadedReading[]): readonly Suspicion[] {
  return [unweighed(calibration, all), ...seriesApart(calibration), friction(calibration), wrongWeight(calibration)].filter(
    (one) => one !== undefined,
  );
}

const limitOf = (degreesOfFreedom: number, tests: number): number =>
  coverageFactor({ degreesOfFreedom: Math.max(1, Math.min(degreesOfFreedom, 1e6)), coverage: 1 - RISK / Math.max(1, tests) });

const SIMPLE = ['line', 'quadratic', 'saturating'] as const;

/**
 * The curve of other rows: of the kind that was chosen, or, where a spline was, the simplest law that those rows follow. One wrong load makes
 * a spline of any gauge.
 */
function lawOf(rows: readonly LoadedReading[], { fit }: Calibration): Fit | undefined {
  const { curve, throughOrigin } = fit;
  if (curve.kind !== 'spline') return fitCurve({ kind: curve.kind, rows, throughOrigin });
  return SIMPLE.map((kind) => fitCurve({ kind, rows, throughOrigin })).find((law) => law && (lackOfFit(law, rows) ?? 0) > FOLLOWS);
}

/** Rows follow a law where their lack of fit is no rarer than this by chance. */
const FOLLOWS = 0.1;

/** The curve of the loaded rows alone, taken to no force, against the readings under no force. */
function unweighed(calibration: Calibration, all: readonly LoadedReading[]): Suspicion | undefined {
  const { rows, components } = calibration;
  const zeros = all.filter(({ forceN }) => forceN === 0);
  const loaded = rows.filter(({ forceN }) => forceN > 0);
  if (zeros.length === 0 || loadsOf(loaded).length < 4) return undefined;
  const without = lawOf(loaded, calibration);
  if (!without || without.degreesOfFreedom < 2) return undefined;
  const slope = without.curve.slope(0);
  const scatter = without.residualStandardDeviation;
  const expected = without.curve.reading(0);
  const forceN = (expected - mean(zeros.map(({ reading }) => reading))) / slope;
  const spread = quadraticForm(without.inverse, without.curve.gradient(0));
  const smallest = Math.sqrt(components.scatter.variance) * components.shape(0);
  const uN = Math.hypot(scatter * Math.sqrt(spread), Math.max(scatter, smallest) / Math.sqrt(zeros.length)) / Math.abs(slope);
  if (!(Math.abs(forceN) > limitOf(without.degreesOfFreedom, 1) * uN)) return undefined;
  return { kind: 'unweighed', forceN, uN };
}

/** Each series against the mean of the others, load by load. */
function seriesApart({ rows, fit, components }: Calibration): readonly Suspicion[] {
  const names = [...new Set(rows.map(({ series }) => series))].filter((name) => name !== undefined);
  if (names.length < 3) return []; // of two nobody can tell which is the odd one
  const scatterN = (forceN: number): number =>
    (Math.sqrt(components.scatter.variance) * components.shape(forceN)) / Math.abs(fit.curve.slope(forceN));
  const found = names.map((series) => {
    const points = [...positionsBy(rows, ({ forceN, direction }) => `${forceN} ${direction}`).values()].flatMap((at) => {
      const here = at.map((i) => rows[i]!);
      const [own, others] = [here.filter((row) => row.series === series), here.filter((row) => row.series !== series)];
      if (own.length === 0 || others.length === 0) return [];
      const { forceN } = own[0]!;
      const offN = (mean(own.map(({ reading }) => reading)) - mean(others.map(({ reading }) => reading))) / fit.curve.slope(forceN);
      return [{ forceN, offN, uN: scatterN(forceN) * Math.sqrt(1 / own.length + 1 / others.length) }];
    });
    return { series, ...apart(points) };
  });
  const worst = found
    .filter(({ strength }) => strength > limitOf(components.scatter.degreesOfFreedom, 2 * names.length))
    .sort((a, b) => b.strength - a.strength)[0];
  if (!worst) return [];
  const { series, offset, scale } = worst;
  return [
    offset.rest <= scale.rest
      ? { kind: 'series-offset', series, forceN: offset.value, uN: offset.u }
      : { kind: 'series-scale', series, relative: scale.value, u: scale.u },
  ];
}

interface Apart {
  readonly forceN: number;
  readonly offN: number;
  readonly uN: number;
}

/** Weighted fit of one number: a constant, or a share of the force; `rest` is what it leaves. */
function apart(points: readonly Apart[]) {
  const one = (basis: (forceN: number) => number) => {
    const weight = points.reduce((sum, { forceN, uN }) => sum + (basis(forceN) / uN) ** 2, 0);
    const value = points.reduce((sum, { forceN, offN, uN }) => sum + (basis(forceN) * offN) / uN ** 2, 0) / weight;
    const rest = points.reduce((sum, { forceN, offN, uN }) => sum + ((offN - value * basis(forceN)) / uN) ** 2, 0);
    return { value, u: 1 / Math.sqrt(weight), rest };
  };
  const [offset, scale] = [one(() => 1), one((forceN) => forceN)];
  const better = offset.rest <= scale.rest ? offset : scale;
  const enough = points.length >= 3 && Number.isFinite(better.value);
  return { offset, scale, strength: enough ? Math.abs(better.value) / better.u : 0 };
}

/** A gap between the directions that grows with the force. */
function friction({ components, fit, rows }: Calibration): Suspicion | undefined {
  if (components.gapTerms === 0) return undefined;
  const loads = loadsOf(rows).filter((load) => load > 0);
  const shares = loads.map((load) => (-2 * components.halfGap(load)) / fit.curve.slope(load) / load);
  const middle = mean(shares);
  const spread = Math.max(...shares) - Math.min(...shares);
  if (!(middle > 0) || spread > middle) return undefined;
  return { kind: 'friction', relative: middle, forceN: middle * loads[loads.length - 1]! };
}

/** The load whose rows, all of them, lie farthest off the curve through the others. */
function wrongWeight(calibration: Calibration): Suspicion | undefined {
  const { rows, fit, components } = calibration;
  const { curve } = fit;
  const loads = loadsOf(rows).filter((load) => load > 0);
  if (loads.length < 5) return undefined;
  const groups = positionsBy(rows, ({ forceN }) => forceN);
  const tests = loads.map((load) => {
    const others = rows.filter(({ forceN }) => forceN !== load);
    const here = groups.get(load)!.map((i) => rows[i]!);
    const without = lawOf(others, calibration);
    if (!without || without.degreesOfFreedom < 2 || here.length < 2) return undefined;
    const off = mean(here.map(({ reading }) => reading)) - without.curve.reading(load);
    const scatter = components.scatter.variance * components.shape(load) ** 2;
    const variance = Math.max(without.residualStandardDeviation ** 2, curve.kind === 'spline' ? 0 : scatter);
    const u = Math.sqrt(variance * (quadraticForm(without.inverse, without.curve.gradient(load)) + 1 / here.length));
    const agree = here.every(({ reading }) => Math.sign(reading - without.curve.reading(load)) === Math.sign(off));
    const strength = agree ? Math.abs(off) / u : 0;
    const limit = limitOf(without.degreesOfFreedom, loads.length);
    return { load, offN: off / without.curve.slope(load), strength: strength / limit, rows: here.map(({ row }) => row) };
  });
  const worst = tests.filter((test) => test !== undefined).sort((a, b) => b.strength - a.strength)[0];
  if (!worst || worst.strength < 1) return undefined;
  return { kind: 'wrong-weight', forceN: worst.load, offN: worst.offN, rows: worst.rows };
}
