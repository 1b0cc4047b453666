/** The courses that readings may take over time, each fitted robustly: steady, a line, a run-in that dies away, and a run-in on a line. */

import { inverseOfPositiveDefinite } from '../math/linear-solve.ts';
import type { Measured } from '../math/measured.ts';
import { HUBER_CORNER, normalMatrix, type RobustFit, robustFit } from '../math/robust-fit.ts';

export interface TimedReading extends Measured {
  /** Seconds since 1970, UTC. */
  readonly atS: number;
  /** The part of the uncertainty that one reading does not share with the next, > 0. */
  readonly standardUncertainty: number;
  readonly temperatureC?: number | undefined;
}

export type Course = 'steady' | 'line' | 'run-in' | 'run-in and line';

export interface TrendModel {
  readonly course: Course;
  /** Change with temperature, per kelvin; where it is part of the model. */
  readonly perKelvin?: Measured | undefined;
  /** Time constant of the run-in. */
  readonly runInS?: number | undefined;
  readonly degreesOfFreedom: number;
  /** Share of belief among the models that were tried (Akaike weight). */
  readonly weight: number;
  /** Mean of the readings to expect at a time, at the reference temperature. */
  readonly at: (atS: number) => Measured;
  /** Change per second at a time. */
  readonly slopeAt: (atS: number) => Measured;
  /** 1 for a reading in line, less for a wild one; in the order of the readings. */
  readonly inLine: readonly number[];
}

/** What the readings' own doubt says of their scatter counts as much as so many readings beside what the residuals say (our judgement). */
const PRIOR_DEGREES_OF_FREEDOM = 2;
/** Time constants tried, relative to the time watched: a slower run-in is a line, a faster one is over between two readings. */
const RUN_IN_RANGE = [1 / 40, 1] as const;
const RUN_IN_STEPS = 40;
/** Temperature is a cause to look for from so much spread on (standard deviation). */
const TEMPERATURE_SPREAD_K = 2;

interface Basis {
  readonly course: Course;
  /** Values of the columns at a time since the start, in watched spans, and a temperature difference. */
  readonly columns: (x: number, kelvin: number) => readonly number[];
  /** Slope of the model with its time constant, for the covariance; from the coefficients. */
  readonly byRunIn?: ((x: number, coefficients: readonly number[]) => number) | undefined;
  readonly runIn?: number | undefined;
}

/** @returns models with weights that sum to 1, the likeliest first; empty below five readings, or where they share one moment */
export function trendModels(readings: readonly TimedReading[], referenceTemperatureC: number | undefined): readonly TrendModel[] {
  const start = Math.min(...readings.map(({ atS }) => atS));
  const span = Math.max(...readings.map(({ atS }) => atS)) - start;
  if (readings.length < 5 || !(span > 0)) return [];
  const xs = readings.map(({ atS }) => (atS - start) / span);
  const kelvins = kelvinsOf(readings, referenceTemperatureC);
  const tried = [undefined, ...(kelvins ? [kelvins] : [])].flatMap((warm) => fittedCourses(readings, xs, warm));
  const corner = HUBER_CORNER * Math.max(1, ...tried.slice(-1).map(({ fit }) => fit.scale));
  const scored = tried.flatMap((one) => {
    const score = criterion(one, corner);
    return score === undefined ? [] : [{ ...one, score }];
  });
  const least = Math.min(...scored.map(({ score }) => score));
  const total = scored.reduce((sum, { score }) => sum + Math.exp((least - score) / 2), 0);
  return scored
    .sort((a, b) => a.score - b.score)
    .flatMap(({ score, ...one }) => {
      const model = modelOf(one, { xs, start, span, weight: Math.exp((least - score) / 2) / total, kelvins, readings });
      return model ? [model] : [];
    });
}

function kelvinsOf(readings: readonly TimedReading[], referenceTemperatureC: number | undefined): readonly number[] | undefined {
  const temperatures = readings.flatMap(({ temperatureC }) => (temperatureC === undefined ? [] : [temperatureC]));
  if (temperatures.length < readings.length || referenceTemperatureC === undefined) return undefined;
  const mean = temperatures.reduce((sum, one) => sum + one, 0) / temperatures.length;
  const spread = Math.sqrt(temperatures.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (temperatures.length - 1));
  return spread >= TEMPERATURE_SPREAD_K ? temperatures.map((one) => one - referenceTemperatureC) : undefined;
}

interface FittedCourse {
  readonly basis: Basis;
  readonly fit: RobustFit;
  readonly isWarm: boolean;
  /** Linear coefficients, a time constant, and the scatter. */
  readonly parameters: number;
}

function fittedCourses(readings: readonly TimedReading[], xs: readonly number[], kelvins: readonly number[] | undefined): FittedCourse[] {
  const fitOf = (basis: Basis): FittedCourse | undefined => {
    const rows = readings.map(({ standardUncertainty }, i) => basis.columns(xs[i]!, kelvins?.[i] ?? 0).map((x) => x / standardUncertainty));
    const columns = transposed(kelvins ? rows : rows.map((row) => row.slice(0, -1)));
    if (readings.length <= columns.length) return undefined;
    const values = readings.map(({ value, standardUncertainty }) => value / standardUncertainty);
    const fit = robustFit({ columns, values, smallestScale: 1, tolerance: 1e-6 });
    const parameters = columns.length + (basis.runIn === undefined ? 0 : 1) + 1;
    return fit && { basis, fit, isWarm: kelvins !== undefined, parameters };
  };
  const runIns = (make: (runIn: number) => Basis): FittedCourse | undefined => bestRunIn((runIn) => fitOf(make(runIn)));
  return [fitOf(STEADY), fitOf(LINE), runIns(runInOnly), runIns(runInAndLine)].filter((one) => one !== undefined);
}

const STEADY: Basis = { course: 'steady', columns: (_, kelvin) => [1, kelvin] };
const LINE: Basis = { course: 'line', columns: (x, kelvin) => [1, x, kelvin] };
const runInOnly = (runIn: number): Basis => ({
  course: 'run-in',
  runIn,
  columns: (x, kelvin) => [1, Math.exp(-x / runIn), kelvin],
  byRunIn: (x, coefficients) => (coefficients[1]! * x * Math.exp(-x / runIn)) / runIn ** 2,
});
const runInAndLine = (runIn: number): Basis => ({
  course: 'run-in and line',
  runIn,
  columns: (x, kelvin) => [1, Math.exp(-x / runIn), x, kelvin],
  byRunIn: (x, coefficients) => (coefficients[1]! * x * Math.exp(-x / runIn)) / runIn ** 2,
});

const transposed = (rows: readonly (readonly number[])[]): number[][] =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => row[column]!));

function bestRunIn(fitOf: (runIn: number) => FittedCourse | undefined): FittedCourse | undefined {
  const [low, high] = RUN_IN_RANGE;
  let best: { fitted: FittedCourse; sum: number } | undefined;
  for (let step = 0; step <= RUN_IN_STEPS; step++) {
    const fitted = fitOf(low * (high / low) ** (step / RUN_IN_STEPS));
    const sum = fitted && robustSum(fitted.fit.residuals, HUBER_CORNER * Math.max(1, fitted.fit.scale));
    if (fitted && sum !== undefined && (!best || sum < best.sum)) best = { fitted, sum };
  }
  return best?.fitted;
}

/** Huber's loss, twice: squares within the corner, straight beyond. */
const robustSum = (residuals: readonly number[], corner: number): number =>
  residuals.reduce((sum, r) => sum + (Math.abs(r) <= corner ? r * r : 2 * corner * Math.abs(r) - corner * corner), 0);

/**
 * Akaike's criterion for small samples with the loss above, the readings' own doubt counted as `PRIOR_DEGREES_OF_FREEDOM` readings.
 *
 * @see Hurvich & Tsai, Biometrika 76 (1989) 297
 */
function criterion({ fit, parameters }: FittedCourse, corner: number): number | undefined {
  const n = fit.residuals.length;
  const room = n - parameters - 1;
  if (room <= 0) return undefined;
  const counted = n + PRIOR_DEGREES_OF_FREEDOM;
  const mean = (PRIOR_DEGREES_OF_FREEDOM + robustSum(fit.residuals, corner)) / counted;
  return counted * Math.log(mean) + 2 * parameters + (2 * parameters * (parameters + 1)) / room;
}

/** Scatter of the residuals over the readings' own doubt: never less than the residuals show, drawn towards 1 where they show less. */
function scatterOf(fit: RobustFit, degreesOfFreedom: number): { readonly variance: number; readonly degreesOfFreedom: number } {
  const shown = (fit.standardDeviation ** 2 * fit.degreesOfFreedom) / degreesOfFreedom;
  if (shown > 1) return { variance: shown, degreesOfFreedom };
  const all = PRIOR_DEGREES_OF_FREEDOM + degreesOfFreedom;
  return { variance: (PRIOR_DEGREES_OF_FREEDOM + degreesOfFreedom * shown) / all, degreesOfFreedom: all };
}

interface Frame {
  readonly xs: readonly number[];
  readonly start: number;
  readonly span: number;
  readonly weight: number;
  readonly kelvins: readonly number[] | undefined;
  readonly readings: readonly TimedReading[];
}

function modelOf({ basis, fit, isWarm, parameters }: FittedCourse, frame: Frame): TrendModel | undefined {
  const { xs, start, span, weight, kelvins, readings } = frame;
  const { coefficients, weights } = fit;
  const gradient = (x: number, kelvin: number): number[] => {
    const all = basis.columns(x, kelvin);
    const linear = isWarm ? all : all.slice(0, -1);
    return basis.byRunIn ? [...linear, basis.byRunIn(x, coefficients)] : [...linear];
  };
  const columns = transposed(
    readings.map(({ standardUncertainty }, i) => gradient(xs[i]!, isWarm ? kelvins![i]! : 0).map((x) => x / standardUncertainty)),
  );
  const p = columns.length;
  const inverse = inverseOfPositiveDefinite(normalMatrix(columns, undefined), p);
  if (!inverse) return undefined;
  const { variance, degreesOfFreedom } = scatterOf(fit, readings.length - (parameters - 1));
  const doubtOf = (direction: readonly number[]): number => {
    const square = direction.reduce((sum, a, i) => sum + direction.reduce((inner, b, j) => inner + a * b * inverse[i * p + j]!, 0), 0);
    return Math.sqrt(Math.max(0, variance * square));
  };
  const valueAt = (x: number): number => {
    const all = basis.columns(x, 0);
    return coefficients.reduce((sum, coefficient, i) => sum + coefficient * all[i]!, 0);
  };
  const STEP = 1e-4;
  return {
    course: basis.course,
    weight,
    degreesOfFreedom,
    inLine: weights,
    runInS: basis.runIn === undefined ? undefined : basis.runIn * span,
    perKelvin: isWarm
      ? { value: coefficients[coefficients.length - 1]!, standardUncertainty: doubtOf(unit(coefficients.length - 1, p)) }
      : undefined,
    at: (atS) => {
      const x = (atS - start) / span;
      return { value: valueAt(x), standardUncertainty: doubtOf(gradient(x, 0)) };
    },
    slopeAt: (atS) => {
      const x = (atS - start) / span;
      const [after, before] = [gradient(x + STEP, 0), gradient(x - STEP, 0)];
      return {
        value: (valueAt(x + STEP) - valueAt(x - STEP)) / (2 * STEP * span),
        standardUncertainty: doubtOf(after.map((a, i) => a - before[i]!)) / (2 * STEP * span),
      };
    },
  };
}

const unit = (at: number, length: number): number[] => Array.from({ length }, (_, i) => (i === at ? 1 : 0));
