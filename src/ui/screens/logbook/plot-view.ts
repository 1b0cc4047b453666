/** A machine's outlook as the two plots over time want it. */

import type { BeltOutlook, Outlook, PairOutlook } from '../../../core/logbook/outlook.ts';
import type { Logged, LoggedReading } from '../../../core/logbook/time-line.ts';
import { coverageFactorOf } from '../../../core/math/propagation.ts';
import type { ForceRange } from '../../../core/setup.ts';
import { logbookEn as words } from '../../../words/logbook-en.ts';
import type { LeavesMatch, MatchCourse } from '../../parts/match-line.ts';
import type { TimeRange } from '../../parts/time-axis.ts';
import type { Lane, TimedInterval, TimeFlag } from '../../parts/time-line.ts';

/** A plot shows no more readings than this, the latest; the list has them all. */
const MOST_DRAWN = 150;
const DAY_S = 86_400;
const Z95 = 1.959964;
/** Share of what was watched that is shown after today. */
const AHEAD = 0.35;

/** Readings of each belt, the latest ones, in order of time. */
export function drawnReadings(logged: readonly Logged[], beltId: string): readonly LoggedReading[] {
  return logged
    .filter(
      (one): one is LoggedReading =>
        one.kind === 'reading' && one.beltId === beltId && one.forceN !== undefined && one.grade !== 'unusable',
    )
    .sort((a, b) => a.atS - b.atS)
    .slice(-MOST_DRAWN);
}

export function plotRange(readings: readonly LoggedReading[], outlook: Outlook, nowS: number): TimeRange {
  const first = Math.min(nowS - 7 * DAY_S, ...readings.map(({ atS }) => atS));
  const watched = nowS - first;
  const ends = [...outlook.belts, ...outlook.pairs].flatMap(({ forecast }) => (forecast?.kind === 'by-about' ? [forecast.latestS] : []));
  const end = Math.max(nowS + AHEAD * watched, ...ends.map((end) => Math.min(end + 0.02 * watched, nowS + 1.5 * watched)));
  return { fromS: first - 0.03 * watched, toS: end };
}

export const laneOf = ({ belt, trend }: BeltOutlook, readings: readonly LoggedReading[]): Lane => ({
  name: belt.name,
  readings: readings.map(({ atS, forceN }) => ({ atS, value: forceN!.value, low: forceN!.low, high: forceN!.high })),
  course: trend && ((atS: number) => trend.best.at(atS).value),
  courseFromS: trend?.fromS,
});

/** The band of the plot where all belts share one target; else none, and each stands in the table. */
export function sharedTarget(belts: readonly BeltOutlook[]): ForceRange | undefined {
  const targets = belts.flatMap(({ belt, last }) => (belt.targetForceN && last ? [belt.targetForceN] : []));
  const [first] = targets;
  return first && targets.every(({ lowN, highN }) => lowN === first.lowN && highN === first.highN) ? first : undefined;
}

export function flagsOf(logged: readonly Logged[], { fromS, toS }: TimeRange): readonly TimeFlag[] {
  return logged
    .flatMap((one) => (one.kind === 'reading' || one.kind === 'temperature' || one.kind === 'gauge-reading' ? [] : [one]))
    .filter(({ atS }) => atS >= fromS && atS <= toS)
    .sort((a, b) => a.atS - b.atS)
    .map(({ atS, text, kind }) => ({ atS, text: shortened(text || words.rowKinds[kind]) }));
}

const MOST_LETTERS = 22;
const shortened = (text: string): string => {
  const [line = ''] = text.split('\n');
  return line.length > MOST_LETTERS ? `${line.slice(0, MOST_LETTERS - 1).trimEnd()}…` : line;
};

export const matchPoints = ({ all }: PairOutlook, { fromS }: TimeRange): readonly TimedInterval[] =>
  all
    .filter(({ atS }) => atS >= fromS)
    .slice(-MOST_DRAWN)
    .map(({ atS, value, standardUncertainty: u }) => ({ atS, value, low: value - Z95 * u, high: value + Z95 * u }));

export function matchCourse({ trend }: PairOutlook): MatchCourse | undefined {
  if (!trend) return undefined;
  const factor = coverageFactorOf(trend.best.degreesOfFreedom, 0.95);
  return {
    fromS: trend.fromS,
    at: (atS) => {
      const { value, standardUncertainty } = trend.best.at(atS);
      return { value, low: value - factor * standardUncertainty, high: value + factor * standardUncertainty };
    },
  };
}

export function leavesMatch({ forecast }: PairOutlook, text: (earliestS: number, latestS: number) => string): LeavesMatch | undefined {
  if (forecast?.kind !== 'by-about') return undefined;
  const { earliestS, atS, latestS } = forecast;
  return { earliestS, atS, latestS, text: text(earliestS, latestS) };
}
