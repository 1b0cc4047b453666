/** Synthetic gauges with a truth of their own: laws, scatter and faults that share no code with the fits. */

import type { Random } from '../../../src/core/synthesis/random.ts';
import { happens, logBetween, oneOf, takeRandom } from '../corpus/chance.ts';

export const GAUGE_KINDS = ['straight', 'bent', 's-shaped', 'stopped', 'hysteretic', 'growing noise', 'coarse steps', 'slipping'] as const;
export type GaugeKind = (typeof GAUGE_KINDS)[number];

export interface SyntheticGauge {
  readonly kind: GaugeKind;
  /** Largest force that was hung, N. */
  readonly largestN: number;
  /** Reading without scatter, held at the stop where there is one. */
  readonly law: (forceN: number, way: number) => number;
  /** Force from which on the stop holds. */
  readonly stopN?: number | undefined;
  /** Standard deviation of a reading before it is rounded to a step. */
  readonly scatter: (forceN: number) => number;
  /** 0: read as fine as it comes. */
  readonly step: number;
  readonly random: Random;
}

export interface PlantedRow {
  readonly row: number;
  readonly reading: number;
  readonly forceN: number;
  readonly direction?: 'up' | 'down' | undefined;
  readonly series?: string | undefined;
  readonly slipped: boolean;
}

const smooth = (x: number): number => x * x * (3 - 2 * x);

/** Shapes of the response over the share of the largest force, 0 at 0 and 1 at 1. */
function shapeOf(kind: GaugeKind, random: Random): (x: number) => number {
  const bend = oneOf(random, [-1, 1]) * random.between(0.1, 0.4);
  const half = random.between(0.4, 2.5);
  const bow = oneOf(random, ['power', 'saturating'] as const);
  const lean = random.between(0.3, 0.8);
  const bent = (x: number): number => (bow === 'power' ? x + bend * x * (1 - x) : (x * (1 + half)) / (x + half));
  if (kind === 'bent') return bent;
  if (kind === 's-shaped') return (x) => (1 - lean) * x + lean * (x <= 0 ? 0 : x >= 1 ? x : smooth(x));
  if (kind === 'straight') return (x) => x;
  return oneOf(random, [bent, (x: number) => x]);
}

/** One gauge of a kind, all of its figures drawn from the seed, the kind and the number. */
export function syntheticGauge(seed: number, kind: GaugeKind, index: number): SyntheticGauge {
  const random = takeRandom(seed, `gauge ${kind}`, index);
  const largestN = random.between(12, 45);
  const fullScale = oneOf(random, [1, 10, 100]);
  const zero = random.between(-0.05, 0.2) * fullScale;
  const sign = happens(random, 0.15) ? -1 : 1;
  const shape = shapeOf(kind, random);
  const relative = logBetween(random, 0.002, 0.012);
  const gap = kind === 'hysteretic' ? random.between(0.01, 0.05) : 0;
  const loop = oneOf(random, [(x: number) => x, (x: number) => 4 * x * (1 - x), () => 1]);
  const stopN = kind === 'stopped' ? largestN * random.between(0.55, 0.9) : undefined;
  const grows = kind === 'growing noise' || happens(random, 0.25);
  const scatterAt = (x: number): number => relative * fullScale * (grows ? 0.15 + 1.2 * Math.max(0, x) : 1);
  const free = (x: number, way: number): number => shape(x) + (way * gap * loop(Math.min(1, Math.max(0, x)))) / 2;
  return {
    kind,
    largestN,
    law: (forceN, way) => zero + sign * fullScale * free(Math.min(forceN, stopN ?? Infinity) / largestN, stopN && forceN > stopN ? 0 : way),
    stopN,
    scatter: (forceN) => scatterAt(forceN / largestN),
    step: kind === 'coarse steps' ? fullScale * oneOf(random, [0.01, 0.02, 0.04]) : fullScale * 1e-4,
    random,
  };
}

const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(8));

/** A single reading as a person takes it. */
export function readingOf({ law, scatter, step, random }: SyntheticGauge, forceN: number, way: number): number {
  return rounded(law(forceN, way) + scatter(forceN) * random.gaussian(), step);
}

/** Six to ten loads, three runs; up and down, or in no order. Slips fall short by ten standard deviations of that reading. */
export function plantedRun(gauge: SyntheticGauge): readonly PlantedRow[] {
  const { random, largestN, kind, scatter, step } = gauge;
  const loadCount = Math.round(random.between(6, 10));
  const lowest = random.between(0.06, 0.16);
  const loads = Array.from({ length: loadCount }, (_, k) =>
    Number((largestN * (lowest + ((1 - lowest) * k) / (loadCount - 1))).toFixed(3)),
  );
  const isDirected = kind === 'hysteretic' || happens(random, 0.6);
  const hasSeries = happens(random, 0.5);
  const rows: PlantedRow[] = [];
  for (let run = 1; run <= 3; run++) {
    const passes = isDirected
      ? [loads.map((load) => [load, 1] as const), loads.map((load) => [load, -1] as const).reverse()]
      : [loads.map((load) => [load, 0] as const)];
    for (const [forceN, way] of passes.flat()) {
      rows.push({
        row: rows.length + 1,
        reading: readingOf(gauge, forceN, way),
        forceN,
        direction: way === 0 ? undefined : way > 0 ? 'up' : 'down',
        series: hasSeries ? String(run) : undefined,
        slipped: false,
      });
    }
  }
  const slips = kind === 'slipping' ? Math.round(random.between(1, 2)) : 0;
  const planted = new Set<number>();
  while (planted.size < slips) planted.add(Math.floor(random.uniform() * rows.length));
  return rows.map((row, i) => {
    if (!planted.has(i)) return row;
    const away = -Math.sign(gauge.law(largestN, 0) - gauge.law(0, 0)) * 10 * scatter(row.forceN);
    return { ...row, reading: rounded(row.reading + away, step), slipped: true };
  });
}
