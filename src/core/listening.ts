/** A take as it comes in, block by block; offline a recording is one block. Gives what it heard, in order. */

import type { NothingWhy, PluckSound } from './outcome.ts';
import type { SpanSetup } from './setup.ts';

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

export type ListeningEvent =
  /** The room has been heard long enough; from now on a pluck can be told from it. */
  | { readonly kind: 'ready'; readonly atS: number }
  /** Something began to sound; what it was follows when it has been heard out. */
  | { readonly kind: 'onset'; readonly atS: number }
  | { readonly kind: 'pluck'; readonly sound: PluckSound; readonly spectrum: PlotSpectrum }
  | { readonly kind: 'no-pluck'; readonly atS: number; readonly why: NothingWhy };

export interface Listening {
  /** Takes the next samples, any number of them: Float32Array [n], full scale = 1, copied. */
  push(samples: Float32Array): readonly ListeningEvent[];
  /** Says that no more will come; gives what was still waiting. */
  finish(): readonly ListeningEvent[];
}

export interface ListeningOptions {
  readonly sampleRateHz: number;
  /** Bounds the search. */
  readonly setup: SpanSetup;
}
