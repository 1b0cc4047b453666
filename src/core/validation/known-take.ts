/** What a take under a known force brings to a comparison of sound with weights. */

import type { Measured } from '../math/measured.ts';
import type { ForceN, Grade } from '../outcome.ts';

/** One take of a span under a known force. */
export interface KnownForceTake {
  readonly name: string;
  /** By the weight, with what is not known of it. */
  readonly knownForceN: Measured;
  readonly spanLengthM: Measured;
  readonly linearDensityKgPerM: Measured;
  /** What the sound said; missing where no force came out. */
  readonly heard?: { readonly forceN: ForceN; readonly frequencyRelativeU: number; readonly grade: Grade } | undefined;
}
