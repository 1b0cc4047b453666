/** The logbook's trend on simulated belts: how often a day is told, how often its interval holds the true one, and how often one is told of a belt that holds. */

import { forecastOf, trendOf } from '../../src/core/logbook/trend.ts';
import { createRandom, type Random } from '../../src/core/math/random.ts';
import type { Run } from './run.ts';
import { share } from './statistics.ts';
import { percentWithin, table } from './table.ts';

const DAY_S = 86_400;
const BELTS = 300;
const LIMIT_N = 7;

interface Kind {
  readonly name: string;
  /** Force over time of one belt, and the day on which it meets the limit; none: never within the time that is told of. */
  readonly belt: (random: Random) => { readonly forceN: (day: number) => number; readonly meetsOnDay?: number };
}

const KINDS: readonly Kind[] = [
  {
    name: 'falls evenly',
    belt: (random) => {
      const perDay = random.between(0.008, 0.012);
      return { forceN: (day) => 8 - perDay * day, meetsOnDay: (8 - LIMIT_N) / perDay };
    },
  },
  {
    name: 'runs in, then falls',
    belt: (random) => {
      const [perDay, runIn, days] = [random.between(0.006, 0.009), random.between(0.1, 0.3), random.between(4, 12)];
      const forceN = (day: number) => 7.8 - perDay * day + runIn * Math.exp(-day / days);
      return { forceN, meetsOnDay: 0.8 / perDay };
    },
  },
  {
    name: 'holds',
    belt: (random) => ({
      forceN: (
        (force) => () =>
          force
      )(random.between(7.2, 8)),
    }),
  },
  {
    name: 'runs in and holds',
    belt: (random) => {
      const [runIn, days] = [random.between(0.2, 0.6), random.between(4, 12)];
      return { forceN: (day) => 7.4 + runIn * Math.exp(-day / days) };
    },
  },
];

/** Some ten to sixteen readings over two to three months, closer together at first; each scatters by 0.5 to 1 %, and one in twenty is wild. */
function readingsOf(forceN: (day: number) => number, random: Random) {
  const count = Math.round(random.between(10, 16));
  const [watched, relativeU] = [random.between(60, 90), random.between(0.005, 0.01)];
  return Array.from({ length: count }, (_, index) => {
    const day = watched * (index / (count - 1)) ** 1.6;
    const value = forceN(day);
    const wild = random.uniform() < 0.05 ? 5 : 1;
    return { atS: day * DAY_S, value: value * (1 + wild * relativeU * random.gaussian()), standardUncertainty: relativeU * value };
  });
}

export function trendSection({ options }: Run): string {
  let [told, held, falsely, holding] = [0, 0, 0, 0];
  const rows = KINDS.map(({ name, belt }, kindIndex) => {
    let [dated, right, all] = [0, 0, 0];
    for (let index = 0; index < BELTS; index++) {
      const random = createRandom(options.seed + index, 31 + kindIndex);
      const { forceN, meetsOnDay } = belt(random);
      const trend = trendOf(readingsOf(forceN, random));
      if (!trend) continue;
      all++;
      const forecast = forecastOf(trend, { value: LIMIT_N, beyond: 'below' }, trend.untilS);
      if (forecast.kind !== 'by-about') continue;
      dated++;
      if (meetsOnDay !== undefined && forecast.earliestS <= meetsOnDay * DAY_S && meetsOnDay * DAY_S <= forecast.latestS) right++;
    }
    const meets = name.includes('falls');
    if (meets) [told, held] = [told + dated, held + right];
    else [falsely, holding] = [falsely + dated, holding + all];
    return [name, String(all), percentWithin(share(dated, all)), meets ? percentWithin(share(right, dated)) : undefined];
  });
  return [
    table(['belt', 'belts', 'a day is told, %', 'its interval holds the true day, %'], rows),
    '',
    `trend: day told of ${told}, interval holds ${((100 * held) / told).toFixed(1)} %, day told of a belt that holds ${((100 * falsely) / holding).toFixed(1)} %`,
  ].join('\n');
}
