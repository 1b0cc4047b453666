/** A chart that came with a gauge, point by point against what the gauge was proved to do and what its build allows. */

import type { Calibration } from './calibration.ts';
import { convert } from './convert.ts';

export interface ChartPoint {
  readonly reading: number;
  readonly forceN: number;
}

export type ChartVerdict =
  /** Inside the proved interval. */
  | { readonly kind: 'holds'; readonly point: ChartPoint; readonly provedN: number }
  /** Off by more than the doubt. */
  | { readonly kind: 'off'; readonly point: ChartPoint; readonly provedN: number; readonly offN: number }
  /** Outside what was proved: nobody knows. */
  | { readonly kind: 'unproved'; readonly point: ChartPoint }
  /** Beyond what the gauge can physically show. `stop`: seen under weights. `ceiling`: by its build. `asymptote`: the readings level off below it. */
  | { readonly kind: 'refused'; readonly point: ChartPoint; readonly why: 'stop' | 'ceiling' | 'asymptote' };

/** @param ceilingReading  by the gauge's build, where its owner knows it */
export function checkedChart(
  calibration: Calibration,
  chart: readonly ChartPoint[],
  ceilingReading?: number | undefined,
): readonly ChartVerdict[] {
  return chart.map((point) => {
    const why = beyond(calibration, point.reading, ceilingReading);
    if (why) return { kind: 'refused', point, why };
    const found = convert(calibration, point.reading);
    if (found.kind === 'refused') return { kind: 'unproved', point };
    const { forceN, lowN, highN } = found.force;
    if (point.forceN >= lowN && point.forceN <= highN) return { kind: 'holds', point, provedN: forceN };
    return { kind: 'off', point, provedN: forceN, offN: point.forceN - forceN };
  });
}

/** Half the 95 % interval of a saturating curve's asymptote, r0 + R; undefined of other curves. */
export function asymptoteOf({ fit }: Calibration): { readonly reading: number; readonly u95: number } | undefined {
  const { curve, inverse, residualStandardDeviation: s } = fit;
  if (curve.kind !== 'saturating' || !(s >= 0)) return undefined;
  const p = curve.parameters.length;
  const at = curve.names.indexOf('R');
  const r0 = curve.names.indexOf('r0');
  const variance = inverse[at * p + at]! + (r0 < 0 ? 0 : inverse[r0 * p + r0]! + 2 * inverse[r0 * p + at]!);
  return { reading: curve.parameters[at]! + (r0 < 0 ? 0 : curve.parameters[r0]!), u95: 1.96 * s * Math.sqrt(Math.max(0, variance)) };
}

function beyond(calibration: Calibration, reading: number, ceilingReading: number | undefined) {
  const { direction, stop } = calibration;
  const reaches = (limit: number): boolean => direction * (reading - limit) >= 0;
  if (ceilingReading !== undefined && reaches(ceilingReading)) return 'ceiling' as const;
  if (stop && reaches(stop.reading)) return 'stop' as const;
  const asymptote = asymptoteOf(calibration);
  if (asymptote && reaches(asymptote.reading + direction * asymptote.u95)) return 'asymptote' as const;
  return undefined;
}
