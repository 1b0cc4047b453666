/** What reading a WAV file can give: the sound with what was noticed on it, or the fault that it stopped at. */

import type { Recording } from './recording.ts';

export interface WavSound {
  readonly kind: 'wav';
  readonly recording: Recording;
  readonly channelCount: number;
  /** Counted from 1. */
  readonly channelUsed: number;
  /** What a careful person would want to know; usually empty. */
  readonly notes: readonly WavNote[];
}

/** What was noticed, with its figures; the sentence stands in `src/words`. */
export type WavNote =
  | { readonly id: 'channel-used'; readonly channelUsed: number; readonly channelCount: number }
  /** A recorder that streamed left the length open; everything to the end of the file was read. */
  | { readonly id: 'length-not-told'; readonly foundS: number }
  | { readonly id: 'ends-early'; readonly foundS: number; readonly promisedS: number }
  /** Samples that were no numbers, or absurdly large; read as 0. */
  | { readonly id: 'not-numbers'; readonly count: number }
  /** Floats far beyond full scale, brought down to it; frequencies do not change by that. */
  | { readonly id: 'scaled-down'; readonly peak: number };

/** Why there is no sound, and where in the file that shows. */
export type WavFault = { readonly kind: 'wav-fault'; readonly atByte: number } & WavFaultFigures;

export type WavFaultFigures =
  | { readonly why: 'empty-file' }
  | { readonly why: 'not-wav' }
  | { readonly why: 'header-ends' }
  | { readonly why: 'no-format' }
  | { readonly why: 'format-too-short'; readonly formatBytes: number; readonly neededBytes: number }
  | { readonly why: 'compressed'; readonly formatTag: number }
  | { readonly why: 'channel-count'; readonly channelCount: number }
  | { readonly why: 'rate-out-of-range'; readonly sampleRateHz: number }
  | { readonly why: 'sample-size'; readonly bits: number; readonly coding: 'pcm' | 'float' }
  | { readonly why: 'frame-size'; readonly frameBytes: number; readonly neededBytes: number }
  | { readonly why: 'no-data' }
  | { readonly why: 'no-samples' }
  | { readonly why: 'not-numbers'; readonly share: number };
