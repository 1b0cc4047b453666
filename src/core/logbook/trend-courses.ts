/** The courses that readings may take over time, each fitted so that one wild reading does not carry it away. */

import type { Measured } from '../math/measured.ts';
import { HUBER_CORNER, type RobustFit, robustFit } from '../math/robust-fit.ts';

export interface TimedReading extends Measured {
  /** Seconds since 1970, UTC. */
  readonly atS: number;
  /** The part of the uncertainty that one reading does not share with the next, > 0. */
  readonly standardUncertainty: number;
  readonly temperatureC?: number | undefined;
}

export type Course = 'steady' | 'line' | 'run-in' | 'run-in and line';

interface Basis {
  readonly course: Course;
  /** Values of the columns at a time since the start, in watched spans, and a temperature difference. */
  readonly columns: (x: number, kelvin: number) => readonly number[];
  /** Slope of the model with its time constant, for the covariance; from the coefficients. */
  readonly byRunIn?: ((x: number, coefficients: readonly number[]) => number) | undefined;
  readonly runIn?: number | undefined;
}

/** Time constants tried, relative to the time watched: a slower run-in is a line, a faster one is over between two readings. */
const RUN_IN_RANGE = [1 / 40, 1] as const;
const RUN_IN_STEPS = 40;
/** Rungs from one first try to the next; what is left changes slowly with the time constant. */
const RUN_IN_STRIDE = 5;
/** Reweightings while the time constants are tried; the one that is left is fitted to the end. */
const ROUGH_STEPS = 6;

export interface FittedCourse {
  readonly basis: Basis;
  readonly fit: RobustFit;
  readonly isWarm: boolean;
  /** Linear coefficients, a time constant, and the scatter. */
  readonly parameters: number;
}

/** Each course with its best time constant; those that need more readings than there are left out. */
export function fittedCourses(
  readings: readonly TimedReading[],
  xs: readonly number[],
  kelvins: readonly number[] | undefined,
): FittedCourse[] {
  const fitOf = (basis: Basis, mostSteps?: number): FittedCourse | undefined => {
    const rows = readings.map(({ standardUncertainty }, i) => basis.columns(xs[i]!, kelvins?.[i] ?? 0).map((x) => x / standardUncertainty));
    const columns = transposed(kelvins ? rows : rows.map((row) => row.slice(0, -1)));
    if (readings.length <= columns.length) return undefined;
    const values = readings.map(({ value, standardUncertainty }) => value / standardUncertainty);
    const fit = robustFit({ columns, values, smallestScale: 1, tolerance: 1e-6, mostSteps });
    const parameters = columns.length + (basis.runIn === undefined ? 0 : 1) + 1;
    return fit && { basis, fit, isWarm: kelvins !== undefined, parameters };
  };
  const runIns = (make: (runIn: number) => Basis): FittedCourse | undefined => {
    const runIn = bestRunIn((tried) => fitOf(make(tried), ROUGH_STEPS)?.fit);
    return runIn === undefined ? undefined : fitOf(make(runIn));
  };
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

export const transposed = (rows: readonly (readonly number[])[]): number[][] =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => row[column]!));

/**
 * The time constant whose fit leaves least, of a fine ladder of them: every few rungs first, then each beside the best of those.
 * Undefined where none can be fitted.
 */
function bestRunIn(fitOf: (runIn: number) => RobustFit | undefined): number | undefined {
  const [low, high] = RUN_IN_RANGE;
  const left = new Map<number, number>();
  const best = (rungs: readonly number[]): number | undefined => {
    for (const rung of rungs) {
      if (rung < 0 || rung > RUN_IN_STEPS || left.has(rung)) continue;
      const fit = fitOf(low * (high / low) ** (rung / RUN_IN_STEPS));
      if (fit) left.set(rung, robustSum(fit.residuals, HUBER_CORNER * Math.max(1, fit.scale)));
    }
    return [...left].sort(([, one], [, other]) => one - other)[0]?.[0];
  };
  const about = best(Array.from({ length: RUN_IN_STEPS / RUN_IN_STRIDE + 1 }, (_, k) => k * RUN_IN_STRIDE));
  if (about === undefined) return undefined;
  const rung = best(Array.from({ length: 2 * RUN_IN_STRIDE - 1 }, (_, k) => about + k + 1 - RUN_IN_STRIDE))!;
  return low * (high / low) ** (rung / RUN_IN_STEPS);
}

/** Huber's loss, twice: squares within the corner, straight beyond. */
export const robustSum = (residuals: readonly number[], corner: number): number =>
  residuals.reduce((sum, r) => sum + (Math.abs(r) <= corner ? r * r : 2 * corner * Math.abs(r) - corner * corner), 0);
