/** All that the planner's page asks at once, and the answer: zones, the span in hand, where to park, what else could be done. */

import { knownEndsAndStiffness } from '../remedies.ts';
import { type WhatToDo, whatToDo } from './improve.ts';
import { type PlannedSpan, type PlanQuestion, plannedSpan, setupAt } from './plan.ts';
import { lengthsOver, type Reach, type SpanPlan, spanPlan, type Zone } from './zones.ts';

export interface AskedPlan {
  readonly question: PlanQuestion;
  readonly reach: Reach;
  /** The span as it is now. */
  readonly nowM?: number | undefined;
  readonly loopLengthM?: number | undefined;
}

export interface PlanAnswer {
  readonly plan: SpanPlan;
  /** Where to park: inside the shortest trusted zone, clear of its ends; missing where no span is trusted. */
  readonly park?: PlannedSpan | undefined;
  readonly now?: PlannedSpan | undefined;
  readonly whatToDo?: WhatToDo | undefined;
  /** From where on spans could be trusted if ends and stiffness had been measured; missing where that would not help. */
  readonly trustedOnceKnownM?: number | undefined;
}

/** So much longer than the shortest trusted span, that a carriage a little off its place does not lose the grade. */
const CLEAR_OF_SHORTEST = 1.15;
const PARK_ON_M = 0.01;

/** @returns `undefined` where the belt was not told */
export function askPlan({ question, reach, nowM, loopLengthM }: AskedPlan): PlanAnswer | undefined {
  const plan = spanPlan(question, reach);
  if (plan === undefined) return undefined;
  const parkM = parkAt(plan);
  const at = nowM ?? plan.shortestTrustedM ?? reach.fromM;
  return {
    plan,
    park: parkM === undefined ? undefined : plannedSpan(question, parkM),
    now: nowM === undefined ? undefined : plannedSpan(question, nowM),
    whatToDo: nowM === undefined ? undefined : whatToDo(question, { spanLengthM: nowM, reach, loopLengthM }),
    trustedOnceKnownM: trustedOnceKnown(question, reach, at, plan.shortestTrustedM),
  };
}

function parkAt({ zones, shortestTrustedM }: SpanPlan): number | undefined {
  const zone: Zone | undefined = zones.find(({ grade }) => grade === 'trusted');
  if (zone === undefined || shortestTrustedM === undefined) return undefined;
  const wanted = Math.min(CLEAR_OF_SHORTEST * shortestTrustedM, (zone.fromM + zone.toM) / 2);
  const rounded = Math.ceil(wanted / PARK_ON_M - 1e-6) * PARK_ON_M;
  return rounded <= zone.toM ? Number(rounded.toPrecision(6)) : wanted;
}

/** The same with both measured: by bisection over the lengths, since only one border is asked for. */
function trustedOnceKnown(question: PlanQuestion, reach: Reach, atM: number, nowFromM: number | undefined): number | undefined {
  const known = knownEndsAndStiffness(setupAt(question, atM));
  if (known === undefined) return undefined;
  const asked = { ...question, setup: known };
  const lengths = lengthsOver(reach);
  const first = lengths.findIndex((length) => plannedSpan(asked, length)?.worst.grade === 'trusted');
  if (first < 0) return undefined;
  const foundM = lengths[first]!;
  return nowFromM === undefined || foundM < nowFromM ? foundM : undefined;
}
