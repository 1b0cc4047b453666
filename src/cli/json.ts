/** An answer as the JSON object that scripts read: names and order are a contract. Figures are rounded here and nowhere else. */

import type { ExpectedFrequency } from '../core/force/expected.ts';
import type { ForceN, Grade, Measurement, PluckReading, Reading, Reason } from '../core/outcome.ts';
import { nothingText, reasonRemedy, reasonSentence } from '../words/reasons-en.ts';

/** Far below any uncertainty, and enough that the shares of a budget still sum to 1 within 1e-5. */
const SIGNIFICANT_DIGITS = 6;

export interface JsonReason {
  readonly id: string;
  readonly text: string;
  readonly remedy: string;
}

interface JsonAnswer {
  readonly frequencyHz: number;
  readonly frequencyU95Hz: number;
  /** The force fields are null without span or density; a bound is also null where sound cannot give it. */
  readonly forceN: number | null;
  readonly forceU95N: number | null;
  readonly forceLowN: number | null;
  readonly forceHighN: number | null;
  readonly grade: Grade;
  readonly soundGrade: Grade;
  readonly reasons: readonly JsonReason[];
}

export interface JsonPluck extends JsonAnswer {
  readonly startS: number;
  readonly partials: readonly {
    readonly number: number;
    readonly frequencyHz: number;
    readonly levelDb: number;
    readonly decayS: number;
  }[];
}

export interface JsonReading extends JsonAnswer {
  readonly budget: readonly { readonly input: string; readonly share: number; readonly forceUN: number }[];
}

export interface JsonTake {
  readonly file: string;
  readonly sampleRateHz: number;
  readonly durationS: number;
  readonly plucks: readonly JsonPluck[];
  readonly reading: JsonReading | null;
  readonly nothing?: { readonly id: string; readonly text: string };
  readonly notes?: readonly string[];
}

/** A frequency that was typed: the reading, without a file and plucks of its own. */
export interface JsonTold {
  readonly told: string;
  readonly reading: JsonReading;
}

/** A force that was typed: the first partial that it should give, null without span or belt. */
export interface JsonExpected {
  readonly told: string;
  readonly expected: {
    readonly forceN: number;
    readonly frequencyHz: number;
    readonly frequencyLowHz: number;
    readonly frequencyHighHz: number;
  } | null;
}

export interface JsonFault {
  readonly file: string;
  readonly error: string;
}

export function rounded(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`JSON holds finite numbers only, got ${value}`);
  return Number(value.toPrecision(SIGNIFICANT_DIGITS));
}

export const orNull = (value: number | undefined): number | null => (value === undefined ? null : rounded(value));

const reasonOf = (reason: Reason): JsonReason => ({ id: reason.id, text: reasonSentence(reason), remedy: reasonRemedy(reason) });

const forceFields = (forceN: ForceN | undefined) => ({
  forceN: orNull(forceN?.value),
  forceU95N: orNull(forceN?.u95),
  forceLowN: orNull(forceN?.low),
  forceHighN: orNull(forceN?.high),
});

const answerOf = ({ frequencyHz, forceN, grade, soundGrade, reasons }: PluckReading | Reading): JsonAnswer => ({
  frequencyHz: rounded(frequencyHz.value),
  frequencyU95Hz: rounded(frequencyHz.u95),
  ...forceFields(forceN),
  grade,
  soundGrade,
  reasons: reasons.map(reasonOf),
});

const pluckOf = (pluck: PluckReading): JsonPluck => ({
  startS: rounded(pluck.sound.startS),
  ...answerOf(pluck),
  partials: pluck.sound.partials.map(({ number, frequencyHz, levelDbfs, decayS }) => ({
    number,
    frequencyHz: rounded(frequencyHz.value),
    levelDb: rounded(levelDbfs),
    decayS: rounded(decayS),
  })),
});

const readingOf = (reading: Reading): JsonReading => ({
  ...answerOf(reading),
  budget: reading.budget.map(({ input, share, forceUN }) => ({ input, share: rounded(share), forceUN: rounded(forceUN) })),
});

/**
 * @param take.file   as it was named
 * @param take.notes  what was noticed on the file; left out where empty
 */
export function jsonTake({ file, measurement, notes }: { file: string; measurement: Measurement; notes: readonly string[] }): JsonTake {
  const { sampleRateHz, durationS, plucks, outcome } = measurement;
  return {
    file,
    sampleRateHz,
    durationS: rounded(durationS),
    plucks: plucks.map(pluckOf),
    ...(outcome.kind === 'reading'
      ? { reading: readingOf(outcome) }
      : { reading: null, nothing: { id: outcome.why, text: nothingText(outcome.why) } }),
    ...(notes.length > 0 ? { notes } : {}),
  };
}

export const jsonTold = (told: string, reading: Reading): JsonTold => ({ told, reading: readingOf(reading) });

export function jsonExpected(told: string, forceN: number, expected: ExpectedFrequency | undefined): JsonExpected {
  if (!expected) return { told, expected: null };
  const { valueHz, lowHz, highHz } = expected;
  return {
    told,
    expected: { forceN: rounded(forceN), frequencyHz: rounded(valueHz), frequencyLowHz: rounded(lowHz), frequencyHighHz: rounded(highHz) },
  };
}
