/** Where to park the carriage: what a reading of each span length would be worth, by the rules that grade a real reading. */

import { plannedReading } from '../answer.ts';
import { centralSpan, knownSpan } from '../force/known-span.ts';
import type { ForceN, Grade, Reason } from '../outcome.ts';
import { ASSUMED_UNCERTAINTY, type ForceRange, type SpanSetup } from '../setup.ts';
import { isWorse } from '../verdict/grade.ts';
import { partialHz } from '../vibration/beam.ts';
import { PLANNED_RATE_HZ, typicalPluck, typicalSounds } from './typical-pluck.ts';

/** What is to be read, with what. */
export interface PlanQuestion {
  /** Belt, ends, tolerance and lie as for a reading. Of the span length its uncertainty alone is used, the assumed one where none is told. */
  readonly setup: SpanSetup;
  /** The forces that are to be told; both ends may be the same. */
  readonly forceN: ForceRange;
  /** Partials below are lost to the microphone, Hz. */
  readonly lowestHz: number;
}

/** Where nobody told it: what a small microphone in a phone or a laptop still passes (our judgement). */
export const LOWEST_HEARD_HZ = 20;

/** What a reading at one force would come to. */
export interface PlannedReading {
  readonly forceN: number;
  /** First partial, with middling ends and stiffness. */
  readonly frequencyHz: number;
  /** Swings until it has fallen to 1/e. */
  readonly cycles: number;
  /** 95 % interval; missing where the sound leaves no room for a force, or nothing is heard. */
  readonly interval?: ForceN | undefined;
  /** Its larger half over the force; missing where a bound is. */
  readonly forceU95Relative?: number | undefined;
  readonly grade: Grade;
  readonly soundGrade: Grade;
  readonly reasons: readonly Reason[];
}

/** One span length: at the low and the high force, and the worse of the two, which is the span's. */
export interface PlannedSpan {
  readonly spanLengthM: number;
  readonly atLow: PlannedReading;
  readonly atHigh: PlannedReading;
  readonly worst: PlannedReading;
}

/** @returns `undefined` where the belt was not told */
export function plannedSpan(question: PlanQuestion, spanLengthM: number): PlannedSpan | undefined {
  const { lowN, highN } = question.forceN;
  const atLow = planned(question, spanLengthM, lowN);
  if (atLow === undefined) return undefined;
  const atHigh = lowN === highN ? atLow : planned(question, spanLengthM, highN)!;
  return { spanLengthM, atLow, atHigh, worst: isPoorer(atHigh, atLow) ? atHigh : atLow };
}

/** The setup of a question with a span of that length in it. */
export function setupAt({ setup }: Pick<PlanQuestion, 'setup'>, spanLengthM: number): SpanSetup {
  const standardUncertainty = setup.spanLengthM?.standardUncertainty ?? ASSUMED_UNCERTAINTY.spanLengthM;
  return { ...setup, spanLengthM: { value: spanLengthM, standardUncertainty } };
}

function planned(question: PlanQuestion, spanLengthM: number, forceN: number): PlannedReading | undefined {
  const setup = setupAt(question, spanLengthM);
  const span = knownSpan(setup);
  const typical = typicalPluck(setup, forceN);
  const sounds = typicalSounds(setup, forceN, question);
  if (span === undefined || typical === undefined || sounds === undefined) return undefined;
  const frequencyHz = partialHz({ ...centralSpan(span), number: 1, forceN });
  const cycles = frequencyHz * typical.span.decayS;
  if (sounds.length === 0) {
    const reasons: Reason[] = [{ about: 'sound', holdsAt: 'unusable', id: 'first-partial-not-heard', frequencyHz }];
    return { forceN, frequencyHz, cycles, grade: 'unusable', soundGrade: 'unusable', reasons };
  }
  const reading = plannedReading({ sounds, setup, sampleRateHz: PLANNED_RATE_HZ });
  const { grade, soundGrade, reasons } = reading;
  const u95 = reading.forceN?.u95;
  return {
    forceN,
    frequencyHz,
    cycles,
    interval: reading.forceN,
    forceU95Relative: u95 === undefined ? undefined : u95 / reading.forceN!.value,
    grade,
    soundGrade,
    reasons,
  };
}

/** By grade, then by width. */
function isPoorer(one: PlannedReading, other: PlannedReading): boolean {
  if (one.grade !== other.grade) return isWorse(one.grade, other.grade);
  return (one.forceU95Relative ?? Number.POSITIVE_INFINITY) > (other.forceU95Relative ?? Number.POSITIVE_INFINITY);
}
