/** What was heard so far: the sounds of the plucks, kept apart from what they mean, so that a changed setup needs no new sound. */

import { answerOf, isMostlyOtherSounds } from '../../core/answer.ts';
import type { ListeningEvent } from '../../core/listening.ts';
import type { NothingWhy, PlotSpectrum, PluckReading, PluckSound, Reading } from '../../core/outcome.ts';
import type { SoundProcessing } from '../../core/samples/recording.ts';
import type { SpanSetup } from '../../core/setup.ts';

export interface HeardPluck {
  readonly sound: PluckSound;
  readonly spectrum: PlotSpectrum;
}

export type TakeSource = 'microphone' | 'recording' | 'demo';

export interface Take {
  readonly source: TakeSource;
  readonly sampleRateHz: number;
  readonly processing?: SoundProcessing | undefined;
  readonly plucks: readonly HeardPluck[];
  /** What began to sound since the last pluck and was none. */
  readonly missed: readonly NothingWhy[];
  /** How many sounds of the whole take were no plucked span. */
  readonly others?: number | undefined;
  /** Of a recording: its name, and what a careful person would want to know of the file. */
  readonly fileName?: string | undefined;
  readonly notes: readonly string[];
}

export interface Answer {
  readonly plucks: readonly PluckReading[];
  readonly reading?: Reading | undefined;
}

export const NO_ANSWER: Answer = { plucks: [] };

/** What the sounds mean under this setup. */
export function answerTo(take: Take | undefined, setup: SpanSetup): Answer {
  if (!take || take.plucks.length === 0) return NO_ANSWER;
  const { sampleRateHz, processing, plucks } = take;
  if (take.source === 'recording' && isMostlyOtherSounds({ plucks: plucks.length, others: take.others ?? 0 })) return NO_ANSWER;
  return answerOf({ sounds: plucks.map(({ sound }) => sound), setup, processing, sampleRateHz });
}

/** The take with one more thing heard. */
export function heard(take: Take, event: ListeningEvent): Take {
  switch (event.kind) {
    case 'pluck':
      return { ...take, plucks: [...take.plucks, { sound: event.sound, spectrum: event.spectrum }], missed: [] };
    case 'no-pluck':
      return { ...take, missed: [...take.missed, event.why], others: (take.others ?? 0) + (event.why === 'not-a-span' ? 1 : 0) };
    default:
      return take;
  }
}

const WORSE: readonly (SoundProcessing | undefined)[] = ['untouched', undefined, 'unknown', 'altered'];

/** One take may be listened to more than once; what was altered once stays in doubt. */
export const worseProcessing = (one: SoundProcessing | undefined, other: SoundProcessing | undefined): SoundProcessing | undefined =>
  WORSE.indexOf(one) > WORSE.indexOf(other) ? one : other;
