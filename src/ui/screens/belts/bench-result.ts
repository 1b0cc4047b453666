/** One bench reckoned through: the fit, what it cannot tell, and what to measure next. */

import type { BenchData } from '../../../core/belt/bench-data.ts';
import { type BenchFinding, benchFindings } from '../../../core/belt/bench-findings.ts';
import { type BenchFit, benchFit } from '../../../core/belt/bench-fit.ts';
import { type BenchOutlook, type NextChoice, nextMeasurements, outlookNow } from '../../../core/belt/bench-next.ts';
import type { UnderstoodBench } from '../../state/bench-texts.ts';

export interface BenchResult {
  readonly data: BenchData;
  readonly places: UnderstoodBench['places'];
  readonly fit: BenchFit;
  readonly findings: readonly BenchFinding[];
  readonly now: BenchOutlook | undefined;
  readonly next: readonly NextChoice[];
}

/** Undefined where no belt fits. */
export function benchResult(data: BenchData, places: UnderstoodBench['places'], ratedForceN: number | undefined): BenchResult | undefined {
  const fit = benchFit(data);
  if (!fit) return undefined;
  return {
    data,
    places,
    fit,
    findings: benchFindings(data, fit),
    now: outlookNow(data, fit),
    next: nextMeasurements(data, fit, ratedForceN),
  };
}
