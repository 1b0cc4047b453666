/** From which length on a span of this belt under this force could be trusted: the remedy of a span too short, reckoned and not guessed. */

import { forceFromFrequency } from '../force/force.ts';
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
 * @param asked.frequencyRelativeU all doubts about the frequency together
 * @param asked.atLeastM           spans below are never trusted, whatever the interval
 */
export function trustedFromM(asked: {
  readonly span: KnownSpan;
  readonly forceN: number;
  readonly frequencyRelativeU: number;
  readonly toleranceRelative: number;
  readonly atLeastM: number;
}): number | undefined {
  const { span, forceN, frequencyRelativeU, toleranceRelative, atLeastM } = asked;
  const central = centralSpan(span);
  const lengthUM = span.spanLengthM * span.spanLengthRelativeU;
  const isTrusted = (spanLengthM: number): boolean => {
    const longer = { ...span, spanLengthM, spanLengthRelativeU: lengthUM / spanLengthM };
    const frequencyHz = partialHz({ ...central, spanLengthM, number: 1, forceN });
    return gradeOfInterval(forceFromFrequency({ frequencyHz, relativeU: frequencyRelativeU }, longer), toleranceRelative) === 'trusted';
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
