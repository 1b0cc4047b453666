/** What a span should sound like under a force: where to look for its partials before anything was heard, and where they belong after. */

import { risingRoot } from '../math/root.ts';
import type { Reading } from '../outcome.ts';
import type { ForceRange, SpanSetup } from '../setup.ts';
import { forceFromPartial, partialHz } from '../vibration/beam.ts';
import type { EndFixities } from '../vibration/beam-phase.ts';
import { forceNodes, shareBelow } from './force.ts';
import { centralSpan, knownSpan } from './known-span.ts';
import { MODEL_ERROR_EACH } from './partial-nodes.ts';

export interface ExpectedPartial {
  /** Counted from 1. */
  readonly number: number;
  readonly lowHz: number;
  readonly highHz: number;
}

/** The first partial that a force should give, Hz, with its 95 % interval. */
export interface ExpectedFrequency {
  readonly valueHz: number;
  readonly lowHz: number;
  readonly highHz: number;
}

/**
 * The frequency to expect under a known force: median and 95 % interval over all that is known of span, belt and ends. Each cell of stiffness and
 * ends gives ln f normally; their sum is searched for its quantiles.
 *
 * @returns `undefined` where span or belt was not told
 */
export function frequencyUnderForce(setup: SpanSetup, forceN: number): ExpectedFrequency | undefined {
  const span = knownSpan(setup);
  if (span === undefined) return undefined;
  const nodes = forceNodes(span);
  const below = (lnHz: number): number => shareBelow(forceN, { frequencyHz: Math.exp(lnHz), relativeU: MODEL_ERROR_EACH }, span, nodes);
  const stringLnHz = Math.log(forceN / span.linearDensityKgPerM) / 2 - Math.log(2 * span.spanLengthM);
  // The share of forces below the true one falls as the frequency heard rises.
  const at = (share: number): number =>
    Math.exp(risingRoot({ value: (lnHz) => share - below(lnHz), low: stringLnHz - 1, high: stringLnHz + 4, tolerance: 1e-7 }));
  return { valueHz: at(0.5), lowHz: at(0.975), highHz: at(0.025) };
}

/** Half of an even range is √3 of its standard deviations. */
const RANGE_IN_SD = Math.sqrt(3);
/** So little that a span sounds by its stiffness alone. */
const SLACK_N = 1e-3;
const PARTIALS = [1, 2, 3, 4, 5, 6] as const;

/** First partial at both ends of a range of force, with middling ends and stiffness; `undefined` where span or belt was not told. */
export function expectedFrequencyHz(setup: SpanSetup, forceRange: ForceRange): { lowHz: number; highHz: number } | undefined {
  const first = expectedPartialsHz(setup, forceRange)[0];
  return first && { lowHz: first.lowHz, highHz: first.highHz };
}

/**
 * Places of partials 1 to 6. Of a range of force: from its low to its high end, with middling ends and stiffness; a low end of 0 N counts as slack. Of a reading: about the
 * multiples that its own first partial allows, over the range of stiffness and all ends that were not ruled out.
 *
 * @returns empty where span or belt was not told
 */
export function expectedPartialsHz(setup: SpanSetup, from: ForceRange | Reading): ExpectedPartial[] {
  const span = knownSpan(setup);
  if (span === undefined) return [];
  const central = centralSpan(span);
  if (!('kind' in from)) {
    // A range may begin at nothing; the beam's own tone stands in for a slack belt, which has no force to solve for.
    const at = (number: number, forceN: number): number => partialHz({ ...central, number, forceN: Math.max(forceN, SLACK_N) });
    return PARTIALS.map((number) => ({ number, lowHz: at(number, from.lowN), highHz: at(number, from.highN) }));
  }

  const f1 = from.frequencyHz.value;
  const spread = from.frequencyHz.u95 / f1;
  const reach = Math.exp(RANGE_IN_SD * central.lnStiffnessU);
  const stiffness = [central.bendingStiffnessNm2 / reach, central.bendingStiffnessNm2 * reach];
  const ends = [Math.min, Math.max].map(
    (extreme): EndFixities => [extreme(...span.ends.map((c) => c.fixity[0])), extreme(...span.ends.map((c) => c.fixity[1]))],
  );
  const corners = stiffness.flatMap((bendingStiffnessNm2) => ends.map((fixity) => ({ ...central, bendingStiffnessNm2, fixity })));
  return PARTIALS.map((number) => {
    const places = corners.flatMap((corner) => {
      const forceN = forceFromPartial({ ...corner, number: 1, partialHz: f1 });
      return forceN === undefined || !(forceN > 0) ? [] : [partialHz({ ...corner, number, forceN })];
    });
    const all = places.length > 0 ? places : [number * f1];
    return { number, lowHz: Math.min(...all) * (1 - spread), highHz: Math.max(...all) * (1 + spread) };
  });
}
