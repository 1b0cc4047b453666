/** What was heard so far: the sounds of the plucks, kept apart from what they mean, so that a changed setup needs no new sound. */

import { answerOf, type Take as CoreTake, isMostlyOtherSounds } from '../../core/answer.ts';
import { type OctaveDoubt, octaveDoubt } from '../../core/octave.ts';
import type { NothingWhy, PlotSpectrum, PluckReading, PluckSound, Reading } from '../../core/outcome.ts';
import type { SoundProcessing } from '../../core/samples/recording.ts';
import type { SpanSetup } from '../../core/setup.ts';
import type { HeardEvent, SoundClip } from '../../ports.ts';

export interface HeardPluck {
  readonly sound: PluckSound;
  readonly spectrum: PlotSpectrum;
  /** Its own sound; of the latest plucks only. */
  readonly clip?: SoundClip | undefined;
}

/** Made with a finger on the middle of the span: it tells which numbering is right, and nothing of the force. */
export interface TouchedPluck extends HeardPluck {
  /** How many plucks there were before it. */
  readonly afterPlucks: number;
}

/** What began to sound and was no pluck of a span. */
export interface RefusedSound {
  readonly why: NothingWhy;
  readonly atS: number;
  readonly clip: SoundClip;
}

export type TakeSource = 'microphone' | 'recording' | 'demo';

export interface Take {
  readonly source: TakeSource;
  readonly sampleRateHz: number;
  readonly processing?: SoundProcessing | undefined;
  readonly plucks: readonly HeardPluck[];
  readonly touched?: readonly TouchedPluck[] | undefined;
  /** The latest of the sounds that were none. */
  readonly refused?: readonly RefusedSound[] | undefined;
  /** What began to sound since the last pluck and was none. */
  readonly missed: readonly NothingWhy[];
  /** Levels of the sounds of the whole take that were no plucked span. */
  readonly othersDbfs?: readonly number[] | undefined;
  /** Of a recording: its name, and what a careful person would want to know of the file. */
  readonly fileName?: string | undefined;
  readonly notes: readonly string[];
}

export interface Answer {
  readonly plucks: readonly PluckReading[];
  readonly reading?: Reading | undefined;
  /** Where two numberings of the partials fit. */
  readonly octave?: OctaveDoubt | undefined;
}

export const NO_ANSWER: Answer = { plucks: [] };

/** What the sounds mean under this setup. */
export function answerTo(take: Take | undefined, setup: SpanSetup): Answer {
  if (!take || take.plucks.length === 0) return NO_ANSWER;
  const { plucks } = take;
  if (take.source === 'recording' && isMostlyOtherSounds({ sounds: plucks.map(({ sound }) => sound), othersDbfs: take.othersDbfs ?? [] }))
    return NO_ANSWER;
  const asked = soundsOf(take, setup);
  const answers = answerOf(asked);
  return { ...answers, octave: answers.reading && octaveDoubt(asked, answers.reading) };
}

/** The take as it is reckoned with. */
export const soundsOf = ({ plucks, touched = [], processing, sampleRateHz }: Take, setup: SpanSetup): CoreTake => ({
  sounds: plucks.map(({ sound }) => sound),
  ...(touched.length > 0 ? { touched: touched.map(({ sound }) => sound) } : {}),
  setup,
  processing,
  sampleRateHz,
});

/** A second and a half of sound each, some 300 kB: what a person may still want to hear again, and no more. */
const CLIPS_KEPT = 24;
const REFUSED_KEPT = 3;

/** The take with one more thing heard. */
export function heard(take: Take, event: HeardEvent): Take {
  switch (event.kind) {
    case 'pluck':
      return { ...take, plucks: withFewClips([...take.plucks, pluckOf(event)]), missed: [] };
    case 'no-pluck': {
      const { why, atS, levelDbfs = 0, clip } = event;
      const refused = clip ? [...(take.refused ?? []), { why, atS, clip }].slice(-REFUSED_KEPT) : take.refused;
      const othersDbfs = [...(take.othersDbfs ?? []), ...(why === 'not-a-span' ? [levelDbfs] : [])];
      return { ...take, refused, missed: [...take.missed, why], othersDbfs };
    }
    default:
      return take;
  }
}

/** The take with a pluck that was made with a finger on the middle. */
export const heardTouched = (take: Take, event: Extract<HeardEvent, { kind: 'pluck' }>): Take => ({
  ...take,
  touched: [...(take.touched ?? []), { ...pluckOf(event), afterPlucks: take.plucks.length }],
  missed: [],
});

/** The take without what was plucked last. */
export function withoutLast(take: Take): Take {
  const touched = take.touched ?? [];
  if (touched.at(-1)?.afterPlucks === take.plucks.length) return { ...take, touched: touched.slice(0, -1), missed: [] };
  return { ...take, plucks: take.plucks.slice(0, -1), missed: [] };
}

const pluckOf = ({ sound, spectrum, clip }: Extract<HeardEvent, { kind: 'pluck' }>): HeardPluck => ({
  sound,
  spectrum,
  ...(clip ? { clip } : {}),
});

const withFewClips = (plucks: readonly HeardPluck[]): readonly HeardPluck[] =>
  plucks.map((pluck, i) => (pluck.clip && i < plucks.length - CLIPS_KEPT ? { sound: pluck.sound, spectrum: pluck.spectrum } : pluck));

const WORSE: readonly (SoundProcessing | undefined)[] = ['untouched', undefined, 'unknown', 'altered'];

/** One take may be listened to more than once; what was altered once stays in doubt. */
export const worseProcessing = (one: SoundProcessing | undefined, other: SoundProcessing | undefined): SoundProcessing | undefined =>
  WORSE.indexOf(one) > WORSE.indexOf(other) ? one : other;
