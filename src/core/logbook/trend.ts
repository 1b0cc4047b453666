/** Where readings are going: their course over time with its interval, and when a limit is reached, said only where the evidence carries it. */

import type { Measured } from '../math/measured.ts';
import { median } from '../math/quantile.ts';
import { studentCoverage } from '../math/student-t.ts';
import type { TimedReading } from './trend-courses.ts';
import { type TrendModel, trendModels } from './trend-models.ts';

export interface Trend {
  /** The likeliest model, for drawing and for the sentence. */
  readonly best: TrendModel;
  /** All that were tried, likeliest first. */
  readonly models: readonly TrendModel[];
  readonly fromS: number;
  readonly untilS: number;
  readonly count: number;
  /** Temperature that the course is told for, where it was part of what was tried. */
  readonly referenceTemperatureC?: number | undefined;
}

/** Readings below which no course is told. */
export const FEWEST_READINGS = 5;

/** @returns undefined with too few readings, or all at one moment */
export function trendOf(readings: readonly TimedReading[]): Trend | undefined {
  const temperatures = readings.flatMap(({ temperatureC }) => (temperatureC === undefined ? [] : [temperatureC]));
  const referenceTemperatureC = temperatures.length === readings.length && readings.length > 0 ? median(temperatures) : undefined;
  const models = trendModels(readings, referenceTemperatureC);
  const [best] = models;
  if (!best) return undefined;
  const times = readings.map(({ atS }) => atS);
  return { best, models, fromS: Math.min(...times), untilS: Math.max(...times), count: readings.length, referenceTemperatureC };
}

export interface Limit {
  readonly value: number;
  /** The side on which the limit is passed. */
  readonly beyond: 'below' | 'above';
  /** What the readings share, such as the belt's density: it moves all of them together against the limit. */
  readonly sharedStandardUncertainty?: number | undefined;
}

export type Forecast =
  /** Reached at about `atS`, between the other two with 95 % probability. */
  | { readonly kind: 'by-about'; readonly atS: number; readonly earliestS: number; readonly latestS: number }
  /** Not before this time (97.5 %); when, the readings cannot tell. */
  | { readonly kind: 'not-before'; readonly earliestS: number }
  /** Not within the time for which these readings can speak. */
  | { readonly kind: 'not-within'; readonly untilS: number }
  /** Passed already: more likely than not, or, where `isCertain`, with 97.5 % probability. */
  | { readonly kind: 'passed'; readonly isCertain: boolean };

/** A course is followed so much longer than it was watched, and no further (our judgement). */
const HORIZON_OF_WATCHED = 1.5;
const [EARLY, MIDDLE, LATE] = [0.025, 0.5, 0.975];
const STEPS = 300;

/** @param nowS  the forecast begins here, or with the last reading where that is later */
export function forecastOf(trend: Trend, limit: Limit, nowS: number): Forecast {
  const from = Math.max(nowS, trend.untilS);
  const until = trend.untilS + HORIZON_OF_WATCHED * (trend.untilS - trend.fromS);
  const chance = (atS: number): number => chanceBeyond(trend, limit, atS);
  const now = chance(from);
  if (now > MIDDLE) return { kind: 'passed', isCertain: now > LATE };
  const reached = (share: number): number | undefined => (from < until ? firstAt(chance, share, from, until) : undefined);
  const earliestS = reached(EARLY);
  if (earliestS === undefined) return { kind: 'not-within', untilS: Math.max(from, until) };
  const [atS, latestS] = [reached(MIDDLE), reached(LATE)];
  return atS === undefined || latestS === undefined ? { kind: 'not-before', earliestS } : { kind: 'by-about', atS, earliestS, latestS };
}

/** Probability that the limit is passed at a time: each model's, weighted by belief. */
function chanceBeyond({ models }: Trend, { value, beyond, sharedStandardUncertainty = 0 }: Limit, atS: number): number {
  return models.reduce((sum, model) => {
    const there: Measured = model.at(atS);
    const doubt = Math.hypot(there.standardUncertainty, sharedStandardUncertainty);
    const t = (beyond === 'below' ? value - there.value : there.value - value) / doubt;
    const inside = studentCoverage(Math.abs(t), model.degreesOfFreedom) / 2;
    return sum + model.weight * (t > 0 ? 0.5 + inside : 0.5 - inside);
  }, 0);
}

/** First time at which the chance reaches a share, to a thousandth of the steps. */
function firstAt(chance: (atS: number) => number, share: number, from: number, until: number): number | undefined {
  const step = (until - from) / STEPS;
  for (let index = 0; index <= STEPS; index++) {
    const at = from + index * step;
    if (chance(at) < share) continue;
    if (index === 0) return at;
    let [low, high] = [at - step, at];
    for (let round = 0; round < 10; round++) {
      const middle = (low + high) / 2;
      if (chance(middle) < share) low = middle;
      else high = middle;
    }
    return high;
  }
  return undefined;
}
