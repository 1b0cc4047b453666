/** One pluck as two files: its sound, and what was made of it, so that anyone can do the sum again. */

import type { PluckReading } from '../core/outcome.ts';
import { writeWav } from '../core/samples/wav.ts';
import type { PluckFiles, PluckToExport } from '../ports.ts';
import { reasonRemedy, reasonSentence } from '../words/reasons-en.ts';

const SIGNIFICANT_DIGITS = 6;

export const pluckFiles: PluckFiles = {
  wav: ({ samples, sampleRateHz }) =>
    new Blob([writeWav({ recording: { samples, sampleRateHz }, format: 'pcm16' })], { type: 'audio/wav' }),
  json: (pluck) => new Blob([`${JSON.stringify(pluckAsJson(pluck), rounded, 1)}\n`], { type: 'application/json' }),
};

/** Names as in the command line's answers; times count from the first sample of the sound's own file. */
export function pluckAsJson({ clip, pluck, setup, steadyHz, wavName }: PluckToExport) {
  const { sound } = pluck;
  const touchS = sound.startS - clip.startS;
  const { window } = sound;
  return {
    file: wavName,
    sampleRateHz: clip.sampleRateHz,
    durationS: clip.samples.length / clip.sampleRateHz,
    startS: touchS,
    startInTakeS: sound.startS,
    ...answerOf(pluck),
    partials: sound.partials.map(({ number, frequencyHz, levelDbfs, decayS }) => ({
      number,
      frequencyHz: frequencyHz.value,
      frequencyU95Hz: COVERAGE_FACTOR * frequencyHz.standardUncertainty,
      levelDb: levelDbfs,
      decayS,
    })),
    window: window ? { fromS: touchS + window.fromS, toS: touchS + window.toS } : null,
    leftOutHz: steadyHz,
    evidence: sound.evidence,
    told: setup,
  };
}

/** 95 % of a normal distribution, as the page gives every ±. */
const COVERAGE_FACTOR = 2;

const answerOf = ({ frequencyHz, forceN, grade, soundGrade, reasons, used }: PluckReading) => ({
  frequencyHz: frequencyHz.value,
  frequencyU95Hz: frequencyHz.u95,
  forceN: forceN?.value ?? null,
  forceU95N: forceN?.u95 ?? null,
  forceLowN: forceN?.low ?? null,
  forceHighN: forceN?.high ?? null,
  grade,
  soundGrade,
  usedInReading: used,
  reasons: reasons.map((reason) => ({ id: reason.id, text: reasonSentence(reason), remedy: reasonRemedy(reason) })),
});

const rounded = (_name: string, value: unknown): unknown =>
  typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(SIGNIFICANT_DIGITS)) : value;
