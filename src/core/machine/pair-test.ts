/** Whether two belts match, asked again after each pluck: it stops as soon as yes or no is certain, or as no further pluck could make it so. */

import type { Conformance } from '../verdict/conformance.ts';
import type { Likeness } from './alike-belts.ts';
import { type FrequencyRatio, frequencyRatio, nextToPluck, type PairPluck } from './alternating-plucks.ts';
import { type PairRatio, pairRatio } from './pair-ratio.ts';
import type { HeardBelt } from './shared-cells.ts';

export interface PairTest {
  readonly ratio?: PairRatio | undefined;
  /** `more`: pluck `next`. `cannot-tell`: what the belts do not share leaves it open, however often they are plucked. */
  readonly verdict: 'matched' | 'not-matched' | 'more' | 'cannot-tell';
  readonly next: 0 | 1;
}

/** Certain: a test that is asked again after each pluck needs more than one that is asked once. */
const CERTAIN = 0.95;
/** No more plucks than this are asked of a person. */
export const MOST_PLUCKS = 10;

/** @param pair.belts  as all plucks so far leave them; their own frequencies are replaced by those of the row */
export function pairTest(pair: {
  readonly plucks: readonly PairPluck[];
  readonly belts?: readonly [HeardBelt, HeardBelt] | undefined;
  readonly likeness: Likeness;
  readonly toleranceRelative: number;
}): PairTest {
  const { plucks, belts, likeness, toleranceRelative } = pair;
  const next = nextToPluck(plucks);
  const sound = frequencyRatio(plucks);
  if (sound === undefined || belts === undefined) return { verdict: 'more', next };
  const ratio = pairRatio({ belts: withRatio(belts, sound), likeness, soundRelativeU: sound.relativeU });
  if (ratio === undefined) return { verdict: 'cannot-tell', next };
  const verdict = certain(ratio.conformance(toleranceRelative));
  if (verdict !== undefined) return { ratio, verdict, next };
  const further = plucks.length < MOST_PLUCKS && couldDecide(ratio, toleranceRelative);
  return { ratio, verdict: further ? 'more' : 'cannot-tell', next };
}

function certain({ inside }: Conformance): 'matched' | 'not-matched' | undefined {
  if (inside >= CERTAIN) return 'matched';
  return inside <= 1 - CERTAIN ? 'not-matched' : undefined;
}

/** Whether the sound's part is what leaves it open: without it the interval would be narrower by a fifth or more, or the doubt is small beside the tolerance. */
function couldDecide({ relativeU, unlikeRelativeU }: PairRatio, toleranceRelative: number): boolean {
  return unlikeRelativeU < 0.8 * relativeU || unlikeRelativeU < toleranceRelative / 4;
}

/** Both frequencies moved by as much, so that they stand in the ratio that the row of plucks tells. */
function withRatio([one, other]: readonly [HeardBelt, HeardBelt], { lnRatio }: FrequencyRatio): readonly [HeardBelt, HeardBelt] {
  const by = Math.exp((lnRatio - Math.log(one.frequencyHz / other.frequencyHz)) / 2);
  return [
    { ...one, frequencyHz: one.frequencyHz * by },
    { ...other, frequencyHz: other.frequencyHz / by },
  ];
}

/**
 * Which belt of a pair to move so that they match: the one whose target is left the less when it takes the other's force.
 *
 * @returns index of the belt; undefined where both would leave the target
 */
export function beltToMove(
  forcesN: readonly [number, number],
  target?: { readonly lowN: number; readonly highN: number },
): 0 | 1 | undefined {
  const [a, b] = forcesN;
  if (target === undefined) return a < b ? 0 : 1; // the slacker one: tightening shows at once
  const aimN = (target.lowN + target.highN) / 2;
  const fits = (forceN: number): boolean => forceN >= target.lowN && forceN <= target.highN;
  if (!fits(a) && !fits(b)) return undefined;
  return Math.abs(a - aimN) > Math.abs(b - aimN) ? 0 : 1;
}
