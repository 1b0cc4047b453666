/** Trend on simulated series whose answer is known: courses are told apart, dates hold the truth, and what is not there is not told. */

import { describe, expect, it } from 'vitest';
import { forecastOf, type Trend, trendOf } from '../../../../src/core/logbook/trend.ts';
import type { TimedReading } from '../../../../src/core/logbook/trend-courses.ts';
import { createRandom, type Random } from '../../../../src/core/math/random.ts';

const DAY_S = 86_400;
const START_S = Date.UTC(2027, 2, 1) / 1000;

interface Series {
  readonly days: readonly number[];
  readonly truth: (day: number) => number;
  readonly scatter: number;
  readonly stated?: number;
  readonly temperature?: (day: number) => number;
}

const series = ({ days, truth, scatter, stated = scatter, temperature }: Series, random: Random): readonly TimedReading[] =>
  days.map((day) => ({
    atS: START_S + day * DAY_S,
    value: truth(day) + scatter * random.gaussian(),
    standardUncertainty: stated,
    temperatureC: temperature?.(day),
  }));

const SOME_DAYS = [0, 1, 3, 6, 10, 15, 21, 28, 36, 45, 55, 66, 78];
const dayOf = (atS: number): number => (atS - START_S) / DAY_S;

describe('trend', () => {
  it('finds the line that is there, wild readings among them', () => {
    const random = createRandom(1);
    const readings = series({ days: SOME_DAYS, truth: (day) => 8 - 0.01 * day, scatter: 0.02 }, random).map((reading, index) =>
      index === 4 ? { ...reading, value: 4 } : reading,
    );
    const { best } = trendOf(readings)!;
    expect(best.course).toBe('line');
    const slope = best.slopeAt(START_S + 78 * DAY_S);
    expect(Math.abs(slope.value * DAY_S - -0.01)).toBeLessThan(2.5 * slope.standardUncertainty * DAY_S);
    expect(slope.standardUncertainty * DAY_S).toBeLessThan(0.001);
    expect(best.inLine[4]).toBeLessThan(0.1);
  });

  it('tells a run-in from a line and gives its time', () => {
    const random = createRandom(2);
    const { best } = trendOf(series({ days: SOME_DAYS, truth: (day) => 7.2 + 0.8 * Math.exp(-day / 9), scatter: 0.02 }, random))!;
    expect(best.course).toBe('run-in');
    expect(best.runInS! / DAY_S).toBeGreaterThan(6);
    expect(best.runInS! / DAY_S).toBeLessThan(13);
    const later = best.at(START_S + 150 * DAY_S);
    expect(Math.abs(later.value - 7.2)).toBeLessThan(3 * later.standardUncertainty);
  });

  it('finds what temperature does, and tells the course at one temperature', () => {
    const random = createRandom(3);
    const temperature = (day: number) => 18 + 6 * Math.sin(day * 1.7);
    const truth = (day: number) => 8 - 0.008 * day + 0.05 * (temperature(day) - 18);
    const { best } = trendOf(series({ days: SOME_DAYS, truth, scatter: 0.02, temperature }, random))!;
    expect(Math.abs(best.perKelvin!.value - 0.05)).toBeLessThan(3 * best.perKelvin!.standardUncertainty);
    expect(best.course).toBe('line');
  });

  it('keeps silent below five readings, and where all share one moment', () => {
    const random = createRandom(4);
    expect(trendOf(series({ days: [0, 1, 2, 3], truth: () => 8, scatter: 0.1 }, random))).toBeUndefined();
    expect(trendOf(series({ days: [1, 1, 1, 1, 1, 1], truth: () => 8, scatter: 0.1 }, random))).toBeUndefined();
    expect(trendOf([])).toBeUndefined();
  });
});

const falling = (day: number) => 8 - 0.0105 * day;
/** The line above meets 7 N on day 95.2. */
const TRUE_DAY = (8 - 7) / 0.0105;

const forecasts = (count: number, seed: number, made: Omit<Series, 'days'>) =>
  Array.from({ length: count }, (_, index) => {
    const trend = trendOf(series({ days: SOME_DAYS, ...made }, createRandom(seed, index)))!;
    return { trend, forecast: forecastOf(trend, { value: 7, beyond: 'below' }, trend.untilS) };
  });

describe('retension by about', () => {
  it('holds the true day in at least 93 of 100 forecasts, also where readings scatter twice as much as they say', () => {
    for (const stated of [0.06, 0.03]) {
      const told = forecasts(200, 5, { truth: falling, scatter: 0.06, stated }).flatMap(({ forecast }) =>
        forecast.kind === 'by-about' ? [forecast] : [],
      );
      expect(told.length).toBeGreaterThan(140);
      const held = told.filter(({ earliestS, latestS }) => dayOf(earliestS) <= TRUE_DAY && TRUE_DAY <= dayOf(latestS));
      expect(held.length / told.length).toBeGreaterThan(0.93);
      const middle = told.map(({ atS }) => dayOf(atS)).sort((a, b) => a - b)[Math.floor(told.length / 2)]!;
      expect(Math.abs(middle - TRUE_DAY)).toBeLessThan(4);
    }
  });

  it('gives no date for a belt that holds', () => {
    const told = forecasts(200, 6, { truth: () => 7.3, scatter: 0.06 }).filter(({ forecast }) => forecast.kind === 'by-about');
    expect(told.length / 200).toBeLessThan(0.025);
  });

  it('gives no date for a run-in that ends above the limit', () => {
    const all = forecasts(100, 7, { truth: (day) => 7.4 + 0.6 * Math.exp(-day / 8), scatter: 0.03 });
    const told = all.filter(({ forecast }) => forecast.kind === 'by-about');
    expect(told.length / 100).toBeLessThan(0.05);
  });

  it('says from when on it may come where it cannot say when', () => {
    const random = createRandom(8);
    const trend = trendOf(series({ days: [0, 4, 9, 15, 22], truth: (day) => 8 - 0.012 * day, scatter: 0.15 }, random))!;
    expect(['not-before', 'not-within']).toContain(forecastOf(trend, { value: 7, beyond: 'below' }, trend.untilS).kind);
  });

  it('says so where the limit is passed already', () => {
    const trend = trendOf(series({ days: SOME_DAYS, truth: (day) => 7.2 - 0.01 * day, scatter: 0.02 }, createRandom(9)))!;
    expect(forecastOf(trend, { value: 7, beyond: 'below' }, trend.untilS)).toEqual({ kind: 'passed', isCertain: true });
  });

  it('widens with what all readings share, and looks above as below', () => {
    const at = (shared: number, trend: Trend, beyond: 'below' | 'above', value: number) =>
      forecastOf(trend, { value, beyond, sharedStandardUncertainty: shared }, trend.untilS);
    const down = trendOf(series({ days: SOME_DAYS, truth: falling, scatter: 0.02 }, createRandom(10)))!;
    const [alone, shared] = [at(0, down, 'below', 7), at(0.05, down, 'below', 7)];
    if (alone.kind !== 'by-about' || shared.kind !== 'by-about') throw new Error('both should be told');
    expect(shared.latestS - shared.earliestS).toBeGreaterThan(1.5 * (alone.latestS - alone.earliestS));
    const up = trendOf(series({ days: SOME_DAYS, truth: (day) => 16 - falling(day), scatter: 0.02 }, createRandom(10)))!;
    expect(at(0, up, 'above', 9).kind).toBe('by-about');
  });
});
