/** From which length on a span of this belt under this force could be trusted: the remedy of a span too short, reckoned and not guessed. */

import { forceFromPartials, forceNodes } from '../force/force.ts';
import type { PartialEvidence } from '../force/heard-partials.ts';
import { centralSpan, type KnownSpan } from '../force/known-span.ts';
import { risingRoot } from '../math/root.ts';
import { partialHz } from '../vibration/beam.ts';

/** No span of a small machine is longer. */
const LONGEST_M = 1;
/** Lengths closer than this share of themselves are the same to whoever moves a carriage. */
const CLOSE_ENOUGH_RELATIVE = 0.02;
/** Stands for an interval without an end. */
const NO_INTERVAL = -3;

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
  const prior = forceNodes(span);
  /** ln of the tolerance over the larger half of the interval: rises with the length, nearly in proportion to its logarithm; trusted from 0 on. */
  const margin = (lnSpanM: number): number => {
    const spanLengthM = Math.exp(lnSpanM);
    const longer = { ...span, spanLengthM, spanLengthRelativeU: lengthUM / spanLengthM };
    const partials = asked.partials.map((partial) => ({
      ...partial,
      frequencyHz: partialHz({ ...central, spanLengthM, number: partial.number, forceN }),
    }));
    const { forceN: force } = forceFromPartials({ partials, sharedRelativeU }, longer, prior);
    return force?.u95 === undefined ? NO_INTERVAL : Math.log((toleranceRelative * force.value) / force.u95);
  };
  if (atLeastM > LONGEST_M || margin(Math.log(LONGEST_M)) < 0) return undefined;
  const low = Math.log(Math.min(span.spanLengthM, LONGEST_M));
  // The middle of the last bracket, and half of it to the safe side.
  const from = Math.exp(
    risingRoot({ value: margin, low, high: Math.log(LONGEST_M), tolerance: CLOSE_ENOUGH_RELATIVE }) + CLOSE_ENOUGH_RELATIVE / 2,
  );
  return Math.max(Math.min(LONGEST_M, from), atLeastM);
}
