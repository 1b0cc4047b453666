/** 'My span is 60 mm, what can I do?': the best interval to be had on that span, and what every other way would give, each reckoned, the best first. */

import { knownSpan } from '../force/known-span.ts';
import type { Grade } from '../outcome.ts';
import { knownEndsAndStiffness, measuredSpan, weighedBelt } from '../remedies.ts';
import type { SpanSetup } from '../setup.ts';
import { gradeOfRatio, toleranceOf } from '../verdict/grade.ts';
import { type PlannedReading, type PlanQuestion, plannedSpan, setupAt } from './plan.ts';
import { axialStiffness, expectedPress, insertionRiseN, type Press, pressedForce } from './press.ts';
import { bestSecond } from './second-position.ts';
import type { Reach } from './zones.ts';

export type ImprovementKind =
  | 'weighed'
  | 'span-measured'
  | 'ends-and-stiffness-known'
  /** All three of them. */
  | 'all-known'
  | 'second-position'
  | 'longer-span'
  /** A known weight on the middle and a ruler. */
  | 'pressed'
  | 'gauge';

export interface Improvement {
  readonly kind: ImprovementKind;
  /** Larger half of the 95 % interval over the force. */
  readonly forceU95Relative: number;
  readonly grade: Grade;
  /** Whether it is worth the work. */
  readonly helps: boolean;
  /** Of the second position, and of the longer span. */
  readonly spanLengthM?: number | undefined;
  /** What to press with: the weight, where the ruler would stand, and what the pressing adds to the force. */
  readonly press?: { readonly massKg: number; readonly deflectionM: number; readonly riseRelative: number } | undefined;
}

export interface WhatToDo {
  readonly now: PlannedReading;
  /** The least of those that leave the carriage where it is; missing where nothing helps. */
  readonly bestHere?: Improvement | undefined;
  /** Narrowest first, those that do not help among them: to know so saves the work. */
  readonly ranked: readonly Improvement[];
}

/** What helps less than this is not worth the work. */
const WORTH = 0.95;
/** Weights from a kitchen: which of them tells most depends on span and force. */
const MASSES_KG = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];
/** Pressed further than this share of the span, the slopes are no longer small. */
const DEEPEST_SHARE = 0.06;
/** A gauge that was proved on hung weights, at the reading of one visit: ± 6 % of the force (our judgement; each gauge has its own). */
const GAUGE_U95_RELATIVE = 0.06;
/** How far a small gauge of three contacts bends the span, and over which base; a shorter span has no room for it. */
const GAUGE = { deflectionM: 0.001, baseM: 0.04, roomM: 0.01 } as const;

/**
 * @param at.spanLengthM  the span in hand
 * @param at.reach        lengths that the machine can make
 * @param at.loopLengthM  whole belt; the loop gives under a press where the motors are free
 * @returns `undefined` where the belt was not told
 */
export function whatToDo(
  question: PlanQuestion,
  at: { readonly spanLengthM: number; readonly reach: Reach; readonly loopLengthM?: number | undefined },
): WhatToDo | undefined {
  const now = plannedSpan(question, at.spanLengthM)?.worst;
  if (now === undefined) return undefined;
  const one: PlanQuestion = { ...question, forceN: { lowN: now.forceN, highN: now.forceN } };
  const setup = setupAt(question, at.spanLengthM);
  const ranked = [...ofInputs(one, setup), ...ofPlace(one, at), pressed(setup, now, at), gauge(setup, now, at)]
    .filter((improvement) => improvement !== undefined)
    .map((way): Improvement => ({ ...way, helps: way.forceU95Relative < WORTH * (now.forceU95Relative ?? Number.POSITIVE_INFINITY) }))
    .toSorted((a, b) => a.forceU95Relative - b.forceU95Relative);
  const bestHere = ranked.find(({ kind, helps }) => helps && kind !== 'longer-span' && kind !== 'second-position');
  return { now, bestHere, ranked };
}

type Way = Omit<Improvement, 'helps'>;

/** What is known better on the same span. */
function ofInputs(question: PlanQuestion, setup: SpanSetup): readonly (Way | undefined)[] {
  const belt = weighedBelt(setup.belt);
  const spanLengthM = measuredSpan(setup.spanLengthM);
  const known = knownEndsAndStiffness(setup);
  const read = (kind: ImprovementKind, changed: SpanSetup | undefined): Way | undefined => {
    const planned = changed && plannedSpan({ ...question, setup: changed }, changed.spanLengthM!.value)?.worst;
    return planned?.forceU95Relative === undefined ? undefined : { kind, forceU95Relative: planned.forceU95Relative, grade: planned.grade };
  };
  const all = known && { ...known, belt: weighedBelt(known.belt) ?? known.belt, spanLengthM: spanLengthM ?? setup.spanLengthM };
  return [
    read('weighed', belt && { ...setup, belt }),
    read('span-measured', spanLengthM && { ...setup, spanLengthM }),
    read('ends-and-stiffness-known', known),
    read('all-known', (belt || spanLengthM) && all),
  ];
}

/** What another place of the carriage would give. */
function ofPlace(question: PlanQuestion, { spanLengthM, reach }: { spanLengthM: number; reach: Reach }): readonly (Way | undefined)[] {
  const { lowN: forceN } = question.forceN;
  const second = bestSecond(question, spanLengthM, forceN, reach);
  const longerM = Math.min(reach.toM, 2 * spanLengthM);
  const longer = longerM > spanLengthM ? plannedSpan(question, longerM)?.worst : undefined;
  return [
    second && { kind: 'second-position', forceU95Relative: second.together, grade: second.grade, spanLengthM: second.secondM },
    longer?.forceU95Relative === undefined
      ? undefined
      : { kind: 'longer-span', forceU95Relative: longer.forceU95Relative, grade: longer.grade, spanLengthM: longerM },
  ];
}

export interface Here {
  readonly spanLengthM: number;
  readonly loopLengthM?: number | undefined;
}

/** With the motors free the whole belt gives; of a belt that nobody measured, that it is about a metre long. */
export const givingLength = ({ spanLengthM, loopLengthM }: Here): Press['givingLengthM'] =>
  loopLengthM === undefined
    ? { low: Math.max(spanLengthM, 0.5), high: Math.max(spanLengthM, 1.5) }
    : { low: Math.max(spanLengthM, 0.9 * loopLengthM), high: Math.max(spanLengthM, loopLengthM) };

/** The weight that tells most without bending the span too far or going beyond the belt's rated force. */
function pressed(setup: SpanSetup, { forceN }: PlannedReading, at: Here): Way | undefined {
  const span = knownSpan(setup);
  if (span === undefined) return undefined;
  const givingLengthM = givingLength(at);
  const ways = MASSES_KG.flatMap((massKg): Way[] => {
    const press = expectedPress({ span, forceN, massKg, givingLengthM });
    const found = pressedForce(press, span);
    if (found === undefined || press.deflectionM > DEEPEST_SHARE * at.spanLengthM) return [];
    if (setup.belt?.ratedForceN !== undefined && forceN + found.riseN > setup.belt.ratedForceN) return [];
    const forceU95Relative = (2 * found.force.standardUncertainty) / found.force.value;
    const told = { massKg, deflectionM: press.deflectionM, riseRelative: found.riseN / forceN };
    return [{ kind: 'pressed', forceU95Relative, grade: gradeOfRatio(forceU95Relative / toleranceOf(setup)), press: told }];
  });
  return ways.toSorted((a, b) => a.forceU95Relative - b.forceU95Relative)[0];
}

/** A gauge reads what hung weights taught it; in the machine its own deflection raises the force, by a part that is taken off as far as it is known. */
function gauge(setup: SpanSetup, { forceN }: PlannedReading, at: Here): Way | undefined {
  const span = knownSpan(setup);
  if (span === undefined || at.spanLengthM < GAUGE.baseM + GAUGE.roomM) return undefined;
  const { low, high } = givingLength(at);
  const { valueN: axialStiffnessN, relativeU } = axialStiffness(span);
  const { deflectionM, baseM } = GAUGE;
  const riseOf = (givingLengthM: number): number =>
    insertionRiseN({ axialStiffnessN, deflectionM, spanLengthM: baseM, givingLengthM }) / forceN;
  const rise = riseOf((low + high) / 2);
  const riseU = Math.hypot(relativeU * rise, (riseOf(low) - riseOf(high)) / Math.sqrt(12));
  const forceU95Relative = Math.hypot(GAUGE_U95_RELATIVE, 2 * riseU);
  return { kind: 'gauge', forceU95Relative, grade: gradeOfRatio(forceU95Relative / toleranceOf(setup)) };
}
