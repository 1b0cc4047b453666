/** Several gauges under the same loads: which of them can be believed where it matters. */

import type { Grade } from '../outcome.ts';
import type { Calibration } from './calibration.ts';
import { convert } from './convert.ts';
import type { ChartPoint } from './maker-chart.ts';

export interface GaugeToCompare {
  readonly id: string;
  readonly name: string;
  readonly calibration: Calibration;
  /** What its owner reads forces off with: its own scale or the chart that came with it. Without one the proved curve is used, and has no bias. */
  readonly chart?: readonly ChartPoint[] | undefined;
  /** Free belt that it needs between pulleys. */
  readonly needsSpanM?: number | undefined;
  readonly price?: number | undefined;
}

export interface ComparedGauge {
  readonly id: string;
  readonly name: string;
  readonly grade: Grade;
  /** Half the 95 % interval of one reading, relative, at the worst place of the target; with the bias where the gauge's own chart is used. */
  readonly worstInTarget?: number | undefined;
  /** Mean relative bias over the target. */
  readonly biasRelative: number;
  readonly repeatabilityRelative?: number | undefined;
  readonly hysteresisRelative?: number | undefined;
  /** Largest distance from the straight line through the ends of the verified range, of the force there. */
  readonly linearityRelative?: number | undefined;
  readonly verified: Calibration['verified'];
  /** Reading error by force, relative, low and high end of one reading; over the verified range. */
  readonly lane: readonly { readonly forceN: number; readonly error: number; readonly low: number; readonly high: number }[];
  /** Spans of the machine into which it fits. */
  readonly fits?: { readonly count: number; readonly of: number } | undefined;
  readonly price?: number | undefined;
  /** Why it is unusable, where it is. */
  readonly why?: 'stop-in-target' | 'not-proved-in-target' | 'too-doubtful' | undefined;
}

const STEPS = 40;

interface Wanted {
  readonly target: { readonly lowN: number; readonly highN: number };
  readonly toleranceRelative: number;
  /** Spans of the machine, m. */
  readonly spansM?: readonly number[] | undefined;
}

/** Best first: grade, then the worst doubt in the target. */
export function comparedGauges(gauges: readonly GaugeToCompare[], wanted: Wanted): readonly ComparedGauge[] {
  const order: Readonly<Record<Grade, number>> = { trusted: 0, doubtful: 1, unusable: 2 };
  return gauges
    .map((gauge) => compared(gauge, wanted))
    .sort((a, b) => order[a.grade] - order[b.grade] || (a.worstInTarget ?? Infinity) - (b.worstInTarget ?? Infinity));
}

function compared(gauge: GaugeToCompare, { target, toleranceRelative, spansM }: Wanted): ComparedGauge {
  const { calibration, chart, needsSpanM } = gauge;
  const { verified, figures } = calibration;
  const lane = laneOf(calibration, chart);
  const covers = verified.kind === 'verified' && verified.forceLowN <= target.lowN && verified.forceHighN >= target.highN;
  const inTarget = lane.filter(({ forceN }) => forceN >= target.lowN && forceN <= target.highN);
  const worst = inTarget.length > 0 ? Math.max(...inTarget.map(({ low, high }) => Math.max(Math.abs(low), Math.abs(high)))) : undefined;
  const meets =
    verified.kind === 'verified' && verified.highEnds !== 'load' && verified.highEnds !== 'tolerance' && verified.forceHighN < target.highN;
  const why = meets
    ? ('stop-in-target' as const)
    : !covers
      ? ('not-proved-in-target' as const)
      : worst !== undefined && worst > 2 * toleranceRelative
        ? ('too-doubtful' as const)
        : undefined;
  const grade: Grade = why ? 'unusable' : worst !== undefined && worst <= toleranceRelative ? 'trusted' : 'doubtful';
  return {
    id: gauge.id,
    name: gauge.name,
    grade,
    worstInTarget: covers ? worst : undefined,
    biasRelative: inTarget.length > 0 ? inTarget.reduce((sum, { error }) => sum + error, 0) / inTarget.length : 0,
    repeatabilityRelative: figures.repeatabilityRelative,
    hysteresisRelative: figures.reversibilityRelative,
    linearityRelative: linearity(calibration),
    verified,
    lane,
    fits: spansM && needsSpanM !== undefined ? { count: spansM.filter((span) => span >= needsSpanM).length, of: spansM.length } : undefined,
    price: gauge.price,
    why,
  };
}

/** What the gauge shows against the true force, over its verified range. */
function laneOf(calibration: Calibration, chart: readonly ChartPoint[] | undefined): ComparedGauge['lane'] {
  const { verified, fit } = calibration;
  if (verified.kind === 'nowhere') return [];
  const { forceLowN, forceHighN } = verified;
  return Array.from({ length: STEPS + 1 }, (_, k) => forceLowN + ((forceHighN - forceLowN) * k) / STEPS).flatMap((forceN) => {
    const reading = fit.curve.reading(forceN);
    const found = convert(calibration, reading);
    const shown = chart ? chartForce(chart, reading) : forceN;
    if (found.kind === 'refused' || shown === undefined) return [];
    const error = shown / forceN - 1;
    const { lowN, highN } = found.force;
    return [{ forceN, error, low: error - (forceN - lowN) / forceN, high: error + (highN - forceN) / forceN }];
  });
}

/** A chart read between its points along straight lines; nothing beyond them. */
function chartForce(chart: readonly ChartPoint[], reading: number): number | undefined {
  const points = [...chart].sort((a, b) => a.reading - b.reading);
  const above = points.findIndex((point) => point.reading >= reading);
  if (above < 0 || (above === 0 && points[0]!.reading !== reading)) return undefined;
  if (above === 0) return points[0]!.forceN;
  const [a, b] = [points[above - 1]!, points[above]!];
  return a.forceN + ((b.forceN - a.forceN) * (reading - a.reading)) / (b.reading - a.reading);
}

function linearity({ verified, fit }: Calibration): number | undefined {
  if (verified.kind === 'nowhere') return undefined;
  const { forceLowN: a, forceHighN: b } = verified;
  const [ra, rb] = [fit.curve.reading(a), fit.curve.reading(b)];
  return Math.max(
    ...Array.from({ length: STEPS - 1 }, (_, k) => {
      const forceN = a + ((b - a) * (k + 1)) / STEPS;
      const straight = a + ((b - a) * (fit.curve.reading(forceN) - ra)) / (rb - ra);
      return Math.abs(straight - forceN) / forceN;
    }),
  );
}
