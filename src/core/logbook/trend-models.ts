/** Courses fitted to readings as models of a trend: how far each is believed, and what it says of any time, with its doubt. */

import { inverseOfPositiveDefinite } from '../math/linear-solve.ts';
import type { Measured } from '../math/measured.ts';
import { HUBER_CORNER, normalMatrix, type RobustFit } from '../math/robust-fit.ts';
import { type Course, type FittedCourse, fittedCourses, robustSum, type TimedReading, transposed } from './trend-courses.ts';

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
/** Temperature is a cause to look for from so much spread on (standard deviation). */
const TEMPERATURE_SPREAD_K = 2;

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
