/** All that the planner's page asks at once, and the answer: zones, the span in hand, where to park, what else could be done. */

import { knownEndsAndStiffness, weighedBelt } from '../remedies.ts';
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
  /** The same if the belt had been weighed; told where no span is trusted now. */
  readonly trustedOnceWeighedM?: number | undefined;
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
    trustedOnceKnownM: trustedOnce(knownEndsAndStiffness(setupAt(question, at)), { question, reach }, plan.shortestTrustedM),
    trustedOnceWeighedM: plan.shortestTrustedM === undefined ? trustedOnce(weighedSetup(question), { question, reach }) : undefined,
  };
}

function parkAt({ zones, shortestTrustedM }: SpanPlan): number | undefined {
  const zone: Zone | undefined = zones.find(({ grade }) => grade === 'trusted');
  if (zone === undefined || shortestTrustedM === undefined) return undefined;
  const wanted = Math.min(CLEAR_OF_SHORTEST * shortestTrustedM, (zone.fromM + zone.toM) / 2);
  const rounded = Math.ceil(wanted / PARK_ON_M - 1e-6) * PARK_ON_M;
  return rounded <= zone.toM ? Number(rounded.toPrecision(6)) : wanted;
}

function weighedSetup({ setup }: PlanQuestion): PlanQuestion['setup'] | undefined {
  const belt = weighedBelt(setup.belt);
  return belt && { ...setup, belt };
}

/** First trusted length among those of a plot, under a setup that is better known; undefined where that is no shorter than now. */
function trustedOnce(
  setup: PlanQuestion['setup'] | undefined,
  { question, reach }: { readonly question: PlanQuestion; readonly reach: Reach },
  nowFromM?: number | undefined,
): number | undefined {
  if (setup === undefined) return undefined;
  const foundM = lengthsOver(reach).find((length) => plannedSpan({ ...question, setup }, length)?.worst.grade === 'trusted');
  return foundM !== undefined && foundM < (nowFromM ?? Number.POSITIVE_INFINITY) ? foundM : undefined;
}
