/** Sound as numbers: one channel at one rate. The first thing in the chain; whatever brings sound in ends here. */

export interface Recording {
  /** Float32Array [sampleCount], full scale = 1; not modified by anyone downstream. */
  readonly samples: Float32Array;
  /** Samples per second, > 0. */
  readonly sampleRateHz: number;
  /** What stands between the air and the samples, as far as the edge that made the recording can tell; not told means not known to be altered. */
  readonly processing?: SoundProcessing | undefined;
}

/** `altered`: echo cancellation, noise suppression or gain control was left on. `unknown`: the browser does not say. */
export type SoundProcessing = 'untouched' | 'altered' | 'unknown';

export const durationS = (recording: Recording): number => recording.samples.length / recording.sampleRateHz;
