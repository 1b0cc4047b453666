/** The lengths of span in zones of one grade: where each begins and ends, what holds it at its grade, and the shortest span to trust. */

import type { Grade, Reason } from '../outcome.ts';
import { type PlannedSpan, type PlanQuestion, plannedSpan } from './plan.ts';

/** Neighbouring lengths of one grade. */
export interface Zone {
  readonly fromM: number;
  readonly toM: number;
  readonly grade: Grade;
  /** What holds a reading at this grade in the middle of the zone; empty of a trusted one. */
  readonly because: readonly Reason[];
}

export interface SpanPlan {
  /** From the shortest to the longest, close enough together to be drawn as a curve. */
  readonly spans: readonly PlannedSpan[];
  readonly zones: readonly Zone[];
  /** Missing where no length in between is to be trusted. */
  readonly shortestTrustedM?: number | undefined;
}

export interface Reach {
  readonly fromM: number;
  readonly toM: number;
}

/** Spans of small machines. */
export const USUAL_REACH: Reach = { fromM: 0.04, toM: 0.6 };
/** No zone that is worth parking in is narrower. */
const STEP_RATIO = 1.08;
/** Closer than anyone parks a carriage. */
const CLOSE_ENOUGH_M = 0.0002;
const TO_WHOLE_M = 0.0005;

/** @returns `undefined` where the belt was not told */
export function spanPlan(question: PlanQuestion, reach: Reach = USUAL_REACH): SpanPlan | undefined {
  const lengths = lengthsOver(reach);
  const spans: PlannedSpan[] = [];
  for (const length of lengths) {
    const span = plannedSpan(question, length);
    if (span === undefined) return undefined;
    spans.push(span);
  }
  const zones = zonesOf(question, spans);
  const trusted = zones.find(({ grade }) => grade === 'trusted');
  return { spans, zones, shortestTrustedM: trusted && roundedUp(trusted) };
}

/** In equal ratios, both ends among them. */
export function lengthsOver({ fromM, toM }: Reach): readonly number[] {
  if (!(fromM > 0 && toM > fromM)) throw new RangeError(`lengthsOver needs 0 < fromM < toM, got ${fromM} and ${toM}`);
  const count = Math.max(1, Math.ceil(Math.log(toM / fromM) / Math.log(STEP_RATIO)));
  return Array.from({ length: count + 1 }, (_, i) => (i === count ? toM : fromM * (toM / fromM) ** (i / count)));
}

/** Up to what a ruler shows, unless that leads out of the zone again. */
function roundedUp({ fromM, toM }: Zone): number {
  const rounded = Math.ceil(fromM / TO_WHOLE_M - 1e-6) * TO_WHOLE_M;
  return rounded <= toM ? Number(rounded.toPrecision(12)) : fromM;
}

function zonesOf(question: PlanQuestion, spans: readonly PlannedSpan[]): readonly Zone[] {
  const zones: Zone[] = [];
  let first = 0;
  let fromM = spans[0]!.spanLengthM;
  spans.forEach((span, i) => {
    const next = spans[i + 1];
    if (next !== undefined && next.worst.grade === span.worst.grade) return;
    const toM = next === undefined ? span.spanLengthM : borderM(question, span, next);
    const middle = spans[(first + i) >> 1]!.worst;
    const because = middle.reasons.filter(({ holdsAt }) => middle.grade !== 'trusted' && holdsAt === middle.grade);
    zones.push({ fromM, toM, grade: span.worst.grade, because });
    first = i + 1;
    fromM = toM;
  });
  return zones;
}

/** Where the grade changes between two neighbours; the end that has the second one's grade. */
function borderM(question: PlanQuestion, before: PlannedSpan, after: PlannedSpan): number {
  let low = before.spanLengthM;
  let high = after.spanLengthM;
  while (high - low > CLOSE_ENOUGH_M) {
    const middle = (low + high) / 2;
    if (plannedSpan(question, middle)!.worst.grade === before.worst.grade) low = middle;
    else high = middle;
  }
  return high;
}
