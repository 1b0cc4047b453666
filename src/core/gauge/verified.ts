/** The range that a gauge was proved on: between the loads that were hung, below a stop, and where the doubt still serves. */

import type { Components } from './components.ts';
import type { Fit } from './fit.ts';
import { type LoadedReading, loadsOf } from './loaded-reading.ts';
import type { Prediction } from './prediction.ts';
import type { Stop } from './stop.ts';

export type EndOfRange = 'load' | 'tolerance' | 'stop' | 'ceiling';

export type Verified =
  | {
      readonly kind: 'verified';
      /** Readings at both ends; of a gauge that falls, the low force has the high reading. */
      readonly readingLow: number;
      readonly readingHigh: number;
      readonly forceLowN: number;
      readonly forceHighN: number;
      readonly lowEnds: EndOfRange;
      readonly highEnds: EndOfRange;
    }
  | { readonly kind: 'nowhere' };

/** So far below a stop a reading cannot be one that was held there, in standard deviations. */
const CLEAR_OF_STOP_DEVIATIONS = 3;
const STEPS = 240;

export interface Verifying {
  readonly fit: Fit;
  readonly rows: readonly LoadedReading[];
  readonly components: Components;
  readonly prediction: Prediction;
  readonly direction: number;
  readonly toleranceRelative: number;
  readonly stop?: Stop | undefined;
  readonly ceilingReading?: number | undefined;
}

/** The longest stretch of forces on which a single reading is good enough. */
export function verifiedRange(told: Verifying): Verified {
  const { fit, rows, prediction, direction, toleranceRelative } = told;
  const loads = loadsOf(rows);
  const [lowestN, largestN] = [loads[0]!, loads[loads.length - 1]!];
  const top = highestBelowStop(told, largestN);
  if (!(top.forceN > lowestN)) return { kind: 'nowhere' };
  const grid = Array.from({ length: STEPS + 1 }, (_, k) => lowestN + ((top.forceN - lowestN) * k) / STEPS);
  const serves = (forceN: number): boolean => {
    const found = prediction.forceOf(fit.curve.reading(forceN));
    return found !== undefined && found.u95N <= toleranceRelative * found.forceN;
  };
  const good = grid.map(serves);
  let best = { from: 0, to: -1 };
  for (let from = 0; from <= STEPS; from++) {
    if (!good[from]) continue;
    let to = from;
    while (to < STEPS && good[to + 1]) to += 1;
    if (to - from > best.to - best.from) best = { from, to };
    from = to;
  }
  if (best.to <= best.from) return { kind: 'nowhere' };
  const forceLowN = best.from === 0 ? lowestN : refined(serves, grid[best.from]!, grid[best.from - 1]!);
  const forceHighN = best.to === STEPS ? top.forceN : refined(serves, grid[best.to]!, grid[best.to + 1]!);
  const ends = [fit.curve.reading(forceLowN), fit.curve.reading(forceHighN)] as const;
  return {
    kind: 'verified',
    readingLow: direction > 0 ? ends[0] : ends[1],
    readingHigh: direction > 0 ? ends[1] : ends[0],
    forceLowN,
    forceHighN,
    lowEnds: best.from === 0 ? 'load' : 'tolerance',
    highEnds: best.to === STEPS ? top.ends : 'tolerance',
  };
}

/** Between a force that serves and one that does not. */
function refined(serves: (forceN: number) => boolean, good: number, bad: number): number {
  let [inside, outside] = [good, bad];
  for (let step = 0; step < 30; step++) {
    const middle = (inside + outside) / 2;
    if (serves(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** Largest force whose reading is clear of a stop and of the gauge's ceiling. */
function highestBelowStop({ fit, components, direction, stop, ceilingReading, rows }: Verifying, largestN: number) {
  const lowestN = Math.min(...rows.map(({ forceN }) => forceN));
  const { scatter, shape } = components;
  const margin = CLEAR_OF_STOP_DEVIATIONS * Math.sqrt(scatter.variance) * shape(largestN) + Math.abs(components.halfGap(largestN));
  const limits = [
    ...(stop ? [{ ends: 'stop' as const, reading: stop.reading - direction * margin }] : []),
    ...(ceilingReading === undefined ? [] : [{ ends: 'ceiling' as const, reading: ceilingReading - direction * margin }]),
  ];
  let top: { forceN: number; ends: EndOfRange } = { forceN: largestN, ends: stop ? 'stop' : 'load' };
  for (const { reading, ends } of limits) {
    if (direction * (fit.curve.reading(top.forceN) - reading) <= 0) continue;
    let [a, b] = [lowestN, top.forceN];
    for (let step = 0; step < 60; step++) {
      const middle = (a + b) / 2;
      if (direction * (fit.curve.reading(middle) - reading) <= 0) a = middle;
      else b = middle;
    }
    top = { forceN: a, ends };
  }
  return top;
}
