/** A single reading to a force, or the reason why there is none. */

import type { Calibration } from './calibration.ts';
import type { ConvertedForce } from './prediction.ts';

export type Conversion =
  | { readonly kind: 'converted'; readonly reading: number; readonly force: ConvertedForce }
  | { readonly kind: 'refused'; readonly reading: number; readonly why: Refusal };

/**
 * `below-loads`, `above-loads`: less or more than any weight that was hung. `at-stop`: the gauge may be held. `at-ceiling`: by its build it
 * cannot show this. `too-doubtful`: the doubt exceeds the tolerance there. `nowhere`: it does everywhere.
 */
export type Refusal = 'below-loads' | 'above-loads' | 'at-stop' | 'at-ceiling' | 'too-doubtful' | 'nowhere';

/** A reading that its step or its display rounds to the end of the range still belongs to it. */
const SLACK = 1e-9;

export function convert({ verified, prediction, direction, step }: Calibration, reading: number): Conversion {
  const refused = (why: Refusal): Conversion => ({ kind: 'refused', reading, why });
  if (verified.kind === 'nowhere') return refused('nowhere');
  const { readingLow, readingHigh, lowEnds, highEnds } = verified;
  const slack = SLACK * (readingHigh - readingLow) + step * SLACK;
  const isBelow = direction > 0 ? reading < readingLow - slack : reading > readingHigh + slack;
  const isAbove = direction > 0 ? reading > readingHigh + slack : reading < readingLow - slack;
  if (isBelow) return refused(lowEnds === 'load' ? 'below-loads' : 'too-doubtful');
  if (isAbove) {
    return refused(
      highEnds === 'load' ? 'above-loads' : highEnds === 'stop' ? 'at-stop' : highEnds === 'ceiling' ? 'at-ceiling' : 'too-doubtful',
    );
  }
  const force = prediction.forceOf(Math.min(Math.max(reading, readingLow), readingHigh));
  return force ? { kind: 'converted', reading, force } : refused('nowhere');
}
