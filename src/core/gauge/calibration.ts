/** A gauge's readings under known forces in, what can be believed of it out: `calibrate` reads like the whole of this folder. */

import { type Choice, chooseCurve } from './choose.ts';
import { type Components, componentsOf } from './components.ts';
import { type CurveKind, directionOf } from './curve.ts';
import { type Figures, figuresOf } from './figures.ts';
import { type Fit, fitCurve } from './fit.ts';
import { type LoadedReading, loadsOf, NO_SHARED_DOUBT, type SharedForceDoubt } from './loaded-reading.ts';
import { type Prediction, predictionOf } from './prediction.ts';
import { type Slip, scatterOf } from './slips.ts';
import { splineCurve } from './spline-curve.ts';
import { stepOfReadings } from './step-of-readings.ts';
import { type Stop, stopOf } from './stop.ts';
import { type Verified, verifiedRange } from './verified.ts';
import { PLAIN, type Whitening, whiteningOf } from './whitening.ts';

export interface CalibrationRequest {
  /** At least three rows at two forces. */
  readonly rows: readonly LoadedReading[];
  readonly kind?: CurveKind | 'auto' | undefined;
  readonly throughOrigin?: boolean | undefined;
  /** Largest half of the 95 % interval, relative to the force, that still serves; > 0. */
  readonly toleranceRelative: number;
  readonly shared?: SharedForceDoubt | undefined;
  /** Reading from which on the gauge's own build lets it go no further, where its owner knows it. */
  readonly ceilingReading?: number | undefined;
}

export interface Calibration {
  readonly kind: 'calibration';
  /** Rows of the fit, without those held at a stop. */
  readonly rows: readonly LoadedReading[];
  readonly fit: Fit;
  readonly choice: Choice;
  readonly slips: readonly Slip[];
  readonly stop?: Stop | undefined;
  readonly components: Components;
  readonly prediction: Prediction;
  /** +1 where the reading rises with the force, −1 where it falls. */
  readonly direction: number;
  readonly step: number;
  readonly verified: Verified;
  readonly figures: Figures;
  readonly toleranceRelative: number;
  readonly shared: SharedForceDoubt;
}

export interface NoCalibration {
  readonly kind: 'no-calibration';
  readonly why: 'too-few-rows' | 'one-force' | 'all-alike' | 'too-few-for-curve' | 'turns-back' | 'beyond-gauges' | 'forces-too-close';
}

const FEWEST_ROWS = 3;
/** Beyond the largest force standard machines, some tens of meganewtons, whose published loads are fitted too, and far within what fourth powers and their sums can hold. */
const MOST_FORCE_N = 1e9;
const LEAST_LARGEST_FORCE_N = 1e-6;
const MOST_READING = 1e9;
/** Of the largest force: no weight is known so well, and no fit can part them. */
const LEAST_GAP = 1e-9;
const NO_STOP_ROUNDS = 2;

export function calibrate(request: CalibrationRequest): Calibration | NoCalibration {
  const { rows: all, kind = 'auto', throughOrigin = false, toleranceRelative, shared = NO_SHARED_DOUBT, ceilingReading } = request;
  const no = (why: NoCalibration['why']): NoCalibration => ({ kind: 'no-calibration', why });
  if (all.length < FEWEST_ROWS) return no('too-few-rows');
  const allLoads = loadsOf(all);
  if (allLoads.length < 2) return no('one-force');
  const largestN = allLoads[allLoads.length - 1]!;
  const isBeyond =
    largestN > MOST_FORCE_N || largestN < LEAST_LARGEST_FORCE_N || all.some(({ reading }) => Math.abs(reading) > MOST_READING);
  if (isBeyond) return no('beyond-gauges');
  if (allLoads.some((forceN, index) => index > 0 && forceN - allLoads[index - 1]! < LEAST_GAP * largestN)) return no('forces-too-close');
  if (all.every(({ reading }) => reading === all[0]!.reading)) return no('all-alike');
  const step = stepOfReadings(all.map(({ reading }) => reading));

  const stop = findStop(all, step);
  const rows = stop ? all.filter(({ row }) => !stop.rows.includes(row)) : all;
  const { slips } = scatterOf({ rows, step });
  const sound = rows.filter(({ row }) => !slips.some((slip) => slip.row === row));
  const judged = loadsOf(sound).length === loadsOf(rows).length ? sound : rows;

  // What to fit is chosen without the rows that break the pattern; what is fitted holds them, until their owner drops them.
  const choice = weightedChoice({ judged, rows, throughOrigin, step }, kind);
  if (!choice) return no('too-few-for-curve');
  const { fit, whitening } = choice;
  const loads = loadsOf(rows);
  const range = { lowN: loads[0]!, highN: loads[loads.length - 1]! };
  const direction = directionOf(fit.curve, range);
  if (direction === 0) return no('turns-back');

  const components = componentsOf({ fit, rows, step });
  const prediction = predictionOf({ fit, rows, components, shared, between: betweenKnots(fit), whitening }, direction);
  const told = { fit, rows, components, prediction, direction, toleranceRelative, stop, ceilingReading };
  return {
    kind: 'calibration',
    rows,
    fit,
    choice: choice.choice,
    slips,
    stop,
    components,
    prediction,
    direction,
    step,
    verified: verifiedRange(told),
    figures: figuresOf({ fit, rows, toleranceRelative, all }),
    toleranceRelative,
    shared,
  };
}

/** The stop needs the scatter and the scatter needs the stop: twice round is enough. */
function findStop(all: readonly LoadedReading[], step: number): Stop | undefined {
  let stop: Stop | undefined;
  for (let round = 0; round < NO_STOP_ROUNDS; round++) {
    const { deviation } = scatterOf({ rows: stop ? all.filter(({ row }) => !stop!.rows.includes(row)) : all, step });
    if (!(deviation > 0)) return stop;
    const found = stopOf({ rows: all, deviation, step });
    if (found?.heldFromN === stop?.heldFromN) return found;
    stop = found;
  }
  return stop;
}

interface Weighing {
  readonly judged: readonly LoadedReading[];
  readonly rows: readonly LoadedReading[];
  readonly throughOrigin: boolean;
  readonly step: number;
}

/** Uncertain weights are weighed by the slope of a first fit and the scatter that it leaves. */
function weightedChoice({ judged, rows, throughOrigin, step }: Weighing, kind: CurveKind | 'auto') {
  const isWeighted = rows.some(({ forceUN = 0 }) => forceUN > 0);
  const leastVariance = Math.max(step ** 2 / 12, 1e-24 * Math.max(...rows.map(({ reading }) => reading ** 2)));
  const chosenWith = (whitening: Whitening, whiteningOfAll: Whitening) => {
    const choice = chooseCurve({ rows: judged, throughOrigin, whitening, leastVariance }, kind);
    if (!choice) return undefined;
    const { curve } = choice.chosen.fit;
    const knotCount = curve.kind === 'spline' ? curve.knotsN.length : undefined;
    const fit =
      judged.length === rows.length
        ? choice.chosen.fit
        : fitCurve({ kind: curve.kind, rows, throughOrigin, whitening: whiteningOfAll, knotCount });
    return fit && { choice, fit, whitening: whiteningOfAll };
  };
  let found = chosenWith(PLAIN, PLAIN);
  for (let round = 0; isWeighted && found && round < 2; round++) {
    const { curve } = found.fit;
    const scatter = Math.max(componentsOf({ fit: found.fit, rows, step }).scatter.variance, leastVariance);
    const share = (forceN: number, forceUN: number): number => (curve.slope(forceN) * forceUN) ** 2 / scatter;
    found = chosenWith(whiteningOf(judged, share), whiteningOf(rows, share)) ?? found;
  }
  return found;
}

/** What two ways of drawing a curve through the same knots differ by; nothing where the curve has a law. */
function betweenKnots({ curve }: Fit): (forceN: number) => number {
  if (curve.kind !== 'spline' || curve.knotsN.length !== curve.parameters.length) return () => 0;
  const local = splineCurve(curve.knotsN, curve.parameters, 'local');
  return (forceN) => Math.abs(curve.reading(forceN) - local.reading(forceN));
}
