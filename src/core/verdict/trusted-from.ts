/** From which length on a span of this belt under this force could be trusted: the remedy of a span too short, reckoned and not guessed. */

import { forceFromPartials } from '../force/force.ts';
import type { PartialEvidence } from '../force/heard-partials.ts';
import { centralSpan, type KnownSpan } from '../force/known-span.ts';
import { partialHz } from '../vibration/beam.ts';
import { gradeOfInterval } from './grade.ts';

/** No span of a small machine is longer. */
const LONGEST_M = 1;
/** Lengths closer than this are the same to whoever moves a carriage. */
const CLOSE_ENOUGH_M = 0.004;

/**
 * Shortest trusted span, m; `undefined` where even one of 1 m would not do.
 *
 * @param asked.span               the span in hand; its length error stays the same in metres
 * @param asked.partials           those that were heard, at least one; a longer span is taken to be heard as well
 * @param asked.sharedRelativeU    doubt that moves all partials alike
 * @param asked.atLeastM           spans below are never trusted, whatever the interval
 */
export function trustedFromM(asked: {
  readonly span: KnownSpan;
  readonly forceN: number;
  readonly partials: readonly Omit<PartialEvidence, 'frequencyHz'>[];
  readonly sharedRelativeU: number;
  readonly toleranceRelative: number;
  readonly atLeastM: number;
}): number | undefined {
  const { span, forceN, sharedRelativeU, toleranceRelative, atLeastM } = asked;
  const central = centralSpan(span);
  const lengthUM = span.spanLengthM * span.spanLengthRelativeU;
  const isTrusted = (spanLengthM: number): boolean => {
    const longer = { ...span, spanLengthM, spanLengthRelativeU: lengthUM / spanLengthM };
    const partials = asked.partials.map((partial) => ({
      ...partial,
      frequencyHz: partialHz({ ...central, spanLengthM, number: partial.number, forceN }),
    }));
    return gradeOfInterval(forceFromPartials({ partials, sharedRelativeU }, longer).forceN, toleranceRelative) === 'trusted';
  };
  if (atLeastM > LONGEST_M || !isTrusted(LONGEST_M)) return undefined;
  let low = Math.min(span.spanLengthM, LONGEST_M);
  let high = LONGEST_M;
  while (high - low > CLOSE_ENOUGH_M) {
    const middle = (low + high) / 2;
    if (isTrusted(middle)) high = middle;
    else low = middle;
  }
  return Math.max(high, atLeastM);
}
