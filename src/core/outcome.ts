/** Every answer that the program can give. An answer carries its uncertainty and its grade with reasons, or says why there is none. */

import type { Measured } from './math/measured.ts';

/** `trusted`: within the tolerance. `doubtful`: within twice the tolerance. `unusable`: a span was heard, but the reading decides nothing. */
export type Grade = 'trusted' | 'doubtful' | 'unusable';

/** A frequency with its standard and its expanded uncertainty (95 %). The first partial at small amplitude, undamped. */
export interface FrequencyHz extends Measured {
  readonly u95: number;
}

/** A force in newtons with its 95 % interval. A bound that sound cannot give is missing. */
export interface ForceN {
  /** Median of what is known of the force. */
  readonly value: number;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  /** The larger half of the interval; missing where a bound is. */
  readonly u95?: number | undefined;
}

/** One partial of a plucked span as it was heard. */
export interface HeardPartial {
  /** Mode number, counted from 1. */
  readonly number: number;
  /** Undamped frequency, sqrt(f_ringing² + (1/(2πτ))²), of the first partial taken to small amplitude; of the others as heard. */
  readonly frequencyHz: Measured;
  /** Level of the partial at its onset, dB relative to full scale (a sine of amplitude 1 is 0). */
  readonly levelDbfs: number;
  /** Amplitude decay time τ: the time in which the partial falls to 1/e. */
  readonly decayS: number;
}

/** What one pluck says by its sound alone; knows nothing of span and belt. */
export interface PluckSound {
  /** Start of the ring, from the start of the recording. */
  readonly startS: number;
  readonly frequencyHz: Measured;
  /** In ascending order of number; partial 1 may be missing. */
  readonly partials: readonly HeardPartial[];
  /** B in f_n = n f0 sqrt(1 + B n²); absent where fewer than two partials were heard. */
  readonly inharmonicity?: Measured | undefined;
  readonly evidence: SoundEvidence;
  /** The stretch of the ring that the partials were fitted in, s from its start. */
  readonly window?: { readonly fromS: number; readonly toS: number } | undefined;
}

/** What speaks for and against one pluck, as figures; `verdict/reasons.ts` turns them into reasons. */
export interface SoundEvidence {
  /** Periods of the first partial until it has fallen to 1/e: f τ. */
  readonly cyclesToDecay: number;
  /** Level of the strongest partial at its onset over the background in its own resolution band, dB. */
  readonly levelOverBackgroundDb: number;
  /** Share of the pluck's samples that stand at the rails, 0 to 1. */
  readonly clippedShare: number;
  /** Relative amount by which the frequency at the start lies above the one at small amplitude. */
  readonly glideRelative: number;
  /** Fundamental that fits the sound almost as well, if any. */
  readonly rivalHz?: number | undefined;
  /** Lead of the answer over its best rival, natural log units of the likelihood ratio. */
  readonly leadOverRival: number;
  /** Told by a pluck with a finger on the middle of the span: the lead is what that pluck left of it. */
  readonly numberingTested?: boolean | undefined;
  /** Mains hum (50 or 60 Hz or a harmonic) as near to a partial as the two can be resolved. */
  readonly humOn?: { readonly partialNumber: number; readonly humHz: number } | undefined;
  /** Steady tone of before the pluck as near to a partial as the two can be resolved. */
  readonly toneOn?: { readonly partialNumber: number; readonly toneHz: number } | undefined;
  /** Strong decaying partials that belong to no partial of this span, Hz, strongest first. */
  readonly foreignHz: readonly number[];
  /** Share of the decaying sound's evidence that the span's own partials explain, 0 to 1. */
  readonly ownShare: number;
  /** Whether the first partial itself was heard; false: it follows from the others. */
  readonly firstPartialHeard: boolean;
  /** The recording began while the span rang already: neither the touch nor the room before it was heard. */
  readonly touchMissed?: boolean | undefined;
  /** Highest frequency that the recording can hold, Hz. */
  readonly bandwidthHz: number;
}

/** A doubt about a reading. `about` tells what the sound is worth from what the inputs are worth; `holdsAt` is the best grade that it allows. */
export type Reason = { readonly about: 'sound' | 'inputs'; readonly holdsAt: Grade } & ReasonFigures;

/** Each reason's id with the figures that its sentence states. Sentence and remedy stand in `src/words`. */
export type ReasonFigures =
  /** `trustedFromM`: shortest span that this force could be trusted on, up to 1 m; `onceWeighed`: provided that the belt is weighed. */
  | {
      readonly id: 'span-too-short';
      readonly spanLengthM: number;
      readonly trustedFromM?: number | undefined;
      readonly onceWeighed: boolean;
    }
  | { readonly id: 'belt-too-slack'; readonly forceHighN?: number | undefined }
  | { readonly id: 'too-few-cycles'; readonly cycles: number }
  | { readonly id: 'rings-too-long'; readonly cycles: number }
  | { readonly id: 'first-partial-not-heard'; readonly frequencyHz: number }
  | { readonly id: 'touch-not-heard' }
  | { readonly id: 'noisy'; readonly levelOverBackgroundDb: number }
  | { readonly id: 'clipped'; readonly clippedShare: number }
  | { readonly id: 'hum-on-partial'; readonly partialNumber: number; readonly humHz: number }
  | { readonly id: 'tone-on-partial'; readonly partialNumber: number; readonly toneHz: number }
  | { readonly id: 'octave-not-certain'; readonly frequencyHz: number; readonly rivalHz: number }
  | { readonly id: 'not-one-span'; readonly ownShare: number }
  /** Partials that no stiffness and ends bring together with the others; left out of the force. */
  | { readonly id: 'partials-do-not-fit'; readonly partialNumbers: readonly number[] }
  | { readonly id: 'other-span-rings'; readonly otherHz: number }
  | { readonly id: 'plucked-too-hard'; readonly glideRelative: number }
  /** `pluckNumber` counts from 1 in the order of the take; the difference is that of its frequency from the reading's. */
  | {
      readonly id: 'plucks-disagree';
      readonly pluckNumber: number;
      readonly differenceRelative: number;
      readonly leftOut: boolean;
    }
  /** Not used because its own sound is worth nothing while others' is; `because` names the doubt. */
  | { readonly id: 'pluck-left-out'; readonly pluckNumber: number; readonly because: ReasonId }
  /** Expanded uncertainty of the frequency, relative. */
  | { readonly id: 'frequency-not-sharp'; readonly relativeU95: number }
  | { readonly id: 'over-rated-force'; readonly forceN: number; readonly ratedForceN: number }
  | { readonly id: 'density-from-catalogue'; readonly relativeUncertainty: number }
  | { readonly id: 'ends-and-stiffness-unknown'; readonly share: number }
  | { readonly id: 'input-decides'; readonly input: BudgetInput; readonly share: number }
  | { readonly id: 'sound-altered'; readonly certain: boolean }
  | { readonly id: 'sample-rate-too-low'; readonly sampleRateHz: number }
  /** Share of the force by which the first partial of this span would read too high if it alone gave. */
  | { readonly id: 'span-sags'; readonly riseRelative: number }
  /** The frequency was told, not heard. */
  | { readonly id: 'not-heard-here' }
  | { readonly id: 'outside-expected'; readonly forceN: number };

export type ReasonId = ReasonFigures['id'];

/** One line of the uncertainty budget. */
export interface BudgetLine {
  readonly input: BudgetInput;
  /** Standard uncertainty of the force that comes from this input, N. */
  readonly forceUN: number;
  /** Share of the combined variance, 0 to 1; the lines sum to 1. */
  readonly share: number;
  /** ν of the uncertainty; missing where it is taken as known. */
  readonly degreesOfFreedom?: number | undefined;
}

/** What the budget's lines come to together, and whether they may be believed. */
export interface BudgetSum {
  /** Combined standard uncertainty u_c, N. */
  readonly forceUN: number;
  /** Effective, by Welch and Satterthwaite; missing where no line has few. */
  readonly degreesOfFreedom?: number | undefined;
  /** Student's t for 95 %. */
  readonly coverageFactor: number;
  /**
   * Whether value ± factor × u_c is the interval to a digit of u_c. Where not (a slack or short span), only the interval counts, which is
   * not got by first order, and the shares are a rough picture.
   */
  readonly firstOrderHolds: boolean;
}

export type BudgetInput =
  | 'span length'
  | 'linear density'
  | 'end fixity'
  | 'bending stiffness'
  | 'frequency'
  | 'repeatability'
  | 'amplitude';

/** What is told of one pluck, and of several together. */
interface Answer {
  readonly frequencyHz: FrequencyHz;
  /** Missing where span or density was not told. */
  readonly forceN?: ForceN | undefined;
  readonly grade: Grade;
  /** What the sound alone is worth. */
  readonly soundGrade: Grade;
  readonly reasons: readonly Reason[];
}

export interface PluckReading extends Answer {
  readonly sound: PluckSound;
  /** False: heard, but left out of the reading; a reason of the reading says why. */
  readonly used: boolean;
}

/** The combined answer of the plucks that were used. */
export interface Reading extends Answer {
  readonly kind: 'reading';
  readonly pluckCount: number;
  /** Empty where there is no force. */
  readonly budget: readonly BudgetLine[];
  /** Missing where there is no budget. */
  readonly budgetSum?: BudgetSum | undefined;
}

/** No plucked span was heard, and why. */
export interface Nothing {
  readonly kind: 'nothing';
  readonly why: NothingWhy;
}

/**
 * `silence`: no sound at all. `no-onset`: sound, but nothing begins in it (hum, fan, noise, a held tone). `not-a-span`: something
 * begins, but it does not ring like a span (a knock, speech, a chord). `too-quiet`: something rings, too faint to measure.
 * `too-short`: less sound than one pluck needs.
 */
export type NothingWhy = 'silence' | 'no-onset' | 'not-a-span' | 'too-quiet' | 'too-short';

export type Outcome = Reading | Nothing;

/** Levels for drawing; nothing is computed from them. */
export interface PlotSpectrum {
  readonly binWidthHz: number;
  /** Float32Array [binCount], dB relative to a full-scale sine, bin k at k · binWidthHz, up to about 3 kHz. */
  readonly levelsDbfs: Float32Array<ArrayBuffer>;
  /** The same of the room before the pluck; bins as above. */
  readonly backgroundDbfs: Float32Array<ArrayBuffer>;
  /** Steady tones of the room that were left out, Hz. */
  readonly steadyHz: readonly number[];
}

/** Everything that is told of one recording. */
export interface Measurement {
  readonly sampleRateHz: number;
  readonly durationS: number;
  readonly plucks: readonly PluckReading[];
  readonly outcome: Outcome;
}

/** Ends every `switch` over a closed union: the compiler objects where a case is missing. */
export function assertNever(value: never): never {
  throw new RangeError(`no case for ${JSON.stringify(value)}`);
}
