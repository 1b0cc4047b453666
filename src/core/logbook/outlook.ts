/** What the time line comes to: whether each belt holds its target and its match, and the first thing that will have to be done. */

import type { ForceRange } from '../setup.ts';
import { type Mismatch, mismatches } from './mismatch.ts';
import { countedReadings, type Logged, type LoggedReading, ownRelativeU, sharedUN } from './time-line.ts';
import { type Forecast, forecastOf, type Trend, trendOf } from './trend.ts';

export interface WatchedBelt {
  readonly id: string;
  readonly name: string;
  readonly targetForceN?: ForceRange | undefined;
}

export interface WatchedPair {
  readonly oneId: string;
  readonly otherId: string;
  /** Largest difference, relative, that still counts as matched. */
  readonly toleranceRelative: number;
}

export interface BeltOutlook {
  readonly belt: WatchedBelt;
  readonly readings: readonly LoggedReading[];
  readonly last?: LoggedReading | undefined;
  readonly trend?: Trend | undefined;
  /** Of the low end of the target; missing without target or trend. */
  readonly forecast?: Forecast | undefined;
}

export interface PairOutlook {
  readonly pair: WatchedPair;
  /** Since the last reset of either belt. */
  readonly mismatches: readonly Mismatch[];
  /** All that there are. */
  readonly all: readonly Mismatch[];
  readonly trend?: Trend | undefined;
  readonly forecast?: Forecast | undefined;
  /** The side on which the match is lost first. */
  readonly side?: 'below' | 'above' | undefined;
}

export interface Outlook {
  readonly belts: readonly BeltOutlook[];
  readonly pairs: readonly PairOutlook[];
  /** What comes first, if anything can be said. */
  readonly first?: FirstThing | undefined;
}

/** Which belt to tighten, and the forecast behind it: of its own force, or of its match with another. */
interface FirstThing {
  readonly beltId: string;
  readonly because: 'target' | 'match';
  readonly forecast: Forecast;
}

export function outlookOf(watched: {
  readonly logged: readonly Logged[];
  readonly belts: readonly WatchedBelt[];
  readonly pairs: readonly WatchedPair[];
  readonly nowS: number;
}): Outlook {
  const { logged, nowS } = watched;
  const belts = watched.belts.map((belt) => beltOutlook(logged, belt, nowS));
  const pairs = watched.pairs.map((pair) => pairOutlook(logged, pair, nowS));
  return { belts, pairs, first: firstThing(belts, pairs) };
}

function beltOutlook(logged: readonly Logged[], belt: WatchedBelt, nowS: number): BeltOutlook {
  const readings = countedReadings(logged, belt.id);
  const trend = trendOf(
    readings.map((reading) => ({
      atS: reading.atS,
      value: reading.forceN!.value,
      standardUncertainty: ownRelativeU(reading) * reading.forceN!.value,
      temperatureC: reading.temperatureC,
    })),
  );
  const limit = belt.targetForceN;
  const forecast =
    trend && limit
      ? forecastOf(trend, { value: limit.lowN, beyond: 'below', sharedStandardUncertainty: sharedUN(readings) }, nowS)
      : undefined;
  return { belt, readings, last: readings.at(-1), trend, forecast };
}

function pairOutlook(logged: readonly Logged[], pair: WatchedPair, nowS: number): PairOutlook {
  const since = mismatches(logged, pair);
  const all = mismatches(logged, pair, { all: true });
  const trend = trendOf(since);
  if (!trend) return { pair, mismatches: since, all };
  const sides = (['below', 'above'] as const).map((side) => ({
    side,
    forecast: forecastOf(trend, { value: side === 'below' ? -pair.toleranceRelative : pair.toleranceRelative, beyond: side }, nowS),
  }));
  const [sooner] = sides.sort((a, b) => urgencyOf(a.forecast) - urgencyOf(b.forecast));
  return { pair, mismatches: since, all, trend, ...sooner };
}

/** Smaller is sooner; what cannot be dated comes after all that can. */
function urgencyOf(forecast: Forecast): number {
  switch (forecast.kind) {
    case 'passed':
      return Number.NEGATIVE_INFINITY;
    case 'by-about':
      return forecast.atS;
    case 'not-before':
      return 1e12 + forecast.earliestS;
    default:
      return Number.POSITIVE_INFINITY;
  }
}

/** Of a pair that drifts apart it is the looser belt that is tightened. */
function firstThing(belts: readonly BeltOutlook[], pairs: readonly PairOutlook[]): FirstThing | undefined {
  const things: FirstThing[] = [
    ...belts.flatMap(({ belt, forecast }) => (forecast ? [{ beltId: belt.id, because: 'target' as const, forecast }] : [])),
    ...pairs.flatMap(({ pair, forecast, side }) =>
      forecast ? [{ beltId: side === 'below' ? pair.otherId : pair.oneId, because: 'match' as const, forecast }] : [],
    ),
  ];
  return things.sort((a, b) => urgencyOf(a.forecast) - urgencyOf(b.forecast))[0];
}
