/** A piece kept with the gauge and read now and then: a control chart that says when to hang weights again. */

import { coverageFactorOf } from '../math/propagation.ts';

export interface CheckReading {
  /** Any rising number of time. */
  readonly at: number;
  readonly reading: number;
}

export interface ControlChart {
  /** Of the readings at calibration. */
  readonly centre: number;
  readonly deviation: number;
  readonly count: number;
  /** A single later reading lies between these with 95 and 99.73 %; few readings at calibration make them wide. */
  readonly warning: { readonly low: number; readonly high: number };
  readonly action: { readonly low: number; readonly high: number };
  readonly points: readonly (CheckReading & { readonly lies: 'inside' | 'warning' | 'action' })[];
  readonly verdict: ControlVerdict;
}

/**
 * `drift`: eight in a row on one side. `two-warnings`: two of the last three beyond the same warning limit. The rules are those of a Shewhart
 * chart as Western Electric's handbook (1956) has them, from memory.
 */
export type ControlVerdict =
  | { readonly kind: 'steady' }
  | { readonly kind: 'no-later-readings' }
  | { readonly kind: 'recalibrate'; readonly why: 'action' | 'two-warnings' | 'drift' | 'tolerance' };

const WARNING = 0.95;
const ACTION = 0.9973;
const ONE_SIDE = 8;

/**
 * @param told.atCalibration  at least three
 * @param told.step           of the readings: no scatter is finer than it makes it
 * @param told.toleranceReading  how far the reading may wander before the tolerance in force is used up, divisions
 */
export function controlChart(told: {
  readonly atCalibration: readonly number[];
  readonly later: readonly CheckReading[];
  readonly step: number;
  readonly toleranceReading?: number | undefined;
}): ControlChart | undefined {
  const { atCalibration, later, step, toleranceReading } = told;
  const n = atCalibration.length;
  if (n < 3) return undefined;
  const centre = atCalibration.reduce((sum, reading) => sum + reading, 0) / n;
  const plain = Math.sqrt(atCalibration.reduce((sum, reading) => sum + (reading - centre) ** 2, 0) / (n - 1));
  const deviation = Math.max(plain, step / Math.sqrt(12));
  const limits = (coverage: number) => {
    const half = coverageFactorOf(n - 1, coverage) * deviation * Math.sqrt(1 + 1 / n);
    return { low: centre - half, high: centre + half };
  };
  const [warning, action] = [limits(WARNING), limits(ACTION)];
  const outside = ({ low, high }: { low: number; high: number }, reading: number): boolean => reading < low || reading > high;
  const points = [...later]
    .sort((a, b) => a.at - b.at)
    .map((point) => ({
      ...point,
      lies: outside(action, point.reading)
        ? ('action' as const)
        : outside(warning, point.reading)
          ? ('warning' as const)
          : ('inside' as const),
    }));
  return { centre, deviation, count: n, warning, action, points, verdict: verdictOf(points, { centre, warning, toleranceReading }) };
}

function verdictOf(
  points: ControlChart['points'],
  { centre, warning, toleranceReading }: { centre: number; warning: ControlChart['warning']; toleranceReading: number | undefined },
): ControlVerdict {
  const last = points.at(-1);
  if (!last) return { kind: 'no-later-readings' };
  if (last.lies === 'action') return { kind: 'recalibrate', why: 'action' };
  const three = points.slice(-3);
  for (const side of [-1, 1]) {
    const beyond = three.filter(({ reading }) => (side < 0 ? reading < warning.low : reading > warning.high)).length;
    if (beyond >= 2) return { kind: 'recalibrate', why: 'two-warnings' };
  }
  const run = points.slice(-ONE_SIDE);
  if (run.length === ONE_SIDE && new Set(run.map(({ reading }) => Math.sign(reading - centre))).size === 1) {
    return { kind: 'recalibrate', why: 'drift' };
  }
  if (toleranceReading !== undefined && three.length === 3) {
    const mean = three.reduce((sum, { reading }) => sum + reading, 0) / 3;
    if (Math.abs(mean - centre) > toleranceReading / 2) return { kind: 'recalibrate', why: 'tolerance' };
  }
  return { kind: 'steady' };
}
