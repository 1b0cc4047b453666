/** A target as it was told: a force, or a frequency on a span of some length, which stays one so that the belt's density cancels. */

import { type ExpectedFrequency, frequencyUnderForce } from '../force/expected.ts';
import { centralSpan, type KnownSpan, knownSpan } from '../force/known-span.ts';
import { REPEATABILITY_PRIOR } from '../frequency/combine.ts';
import type { Reading } from '../outcome.ts';
import type { ForceRange, FrequencyTarget, SpanSetup } from '../setup.ts';
import { type AgainstTarget, againstTarget, verdictAgainst } from '../verdict/against-target.ts';
import { type Conformance, conformance } from '../verdict/conformance.ts';
import { forceFromPartial, partialHz } from '../vibration/beam.ts';
import { pairRatio } from './pair-ratio.ts';
import type { HeardBelt } from './shared-cells.ts';

/** The force that it means for this belt, as far as that is known by now; undefined where density is not told or no force gives so low a frequency. */
export function forceOfTarget({ lowHz, highHz, spanLengthM }: FrequencyTarget, setup: SpanSetup): ForceRange | undefined {
  const span = knownSpan({ ...setup, spanLengthM: { value: spanLengthM, standardUncertainty: 0 } });
  if (span === undefined) return undefined;
  const [lowN, highN] = [lowHz, highHz].map((hz) => forceFromPartial({ ...centralSpan(span), number: 1, partialHz: hz }));
  return lowN !== undefined && highN !== undefined && lowN < highN ? { lowN, highN } : undefined;
}

/** A range of frequencies to expect, and how surely each of its ends is known. */
export interface FrequencyRange {
  readonly lowHz: number;
  readonly highHz: number;
  /** 95 % intervals of the two ends; of a frequency carried to another span only the length and the ends are open. */
  readonly low?: ExpectedFrequency | undefined;
  readonly high?: ExpectedFrequency | undefined;
}

/** What a force target should sound like on a span; undefined where span or belt was not told. */
export function frequencyOfForce(target: ForceRange, setup: SpanSetup): FrequencyRange | undefined {
  const high = frequencyUnderForce(setup, target.highN);
  if (high === undefined) return undefined;
  // A target that begins at no force begins at no frequency.
  const low = target.lowN > 0 ? frequencyUnderForce(setup, target.lowN) : undefined;
  return { lowHz: low?.valueHz ?? 0, highHz: high.valueHz, low, high };
}

/** A frequency target carried to the span in hand: scaled by length and corrected for stiffness and ends, without the density. */
export function frequencyOnSpan(target: FrequencyTarget, setup: SpanSetup): FrequencyRange | undefined {
  const forces = forceOfTarget(target, setup);
  const span = knownSpan(setup);
  if (forces === undefined || span === undefined) return undefined;
  const central = centralSpan(span);
  const at = (forceN: number): number => partialHz({ ...central, number: 1, forceN });
  return { lowHz: at(forces.lowN), highHz: at(forces.highN) };
}

/** Standard uncertainty of a frequency that was told as a target. */
const AS_TOLD = 0;

/** The same belt as it should be, on the span that the target was told for. */
export function targetAsHeard(span: KnownSpan, frequencyHz: number, spanLengthM: number): HeardBelt {
  return { span: { ...span, spanLengthM, spanLengthRelativeU: AS_TOLD }, frequencyHz, partials: [], sharedRelativeU: AS_TOLD };
}

/**
 * Conformance of what was heard with a frequency target: the ratio of the force to that at each end, in which density cancels, and stiffness and ends as far as
 * the spans are alike.
 *
 * @param soundRelativeU  of the frequency heard
 * @returns undefined where no stiffness and ends leave room for the forces
 */
export function againstFrequencyTarget(given: {
  heard: HeardBelt;
  soundRelativeU: number;
  target: FrequencyTarget;
}): Conformance | undefined {
  const { heard, soundRelativeU, target } = given;
  const ratio = (hz: number) =>
    pairRatio({ belts: [heard, targetAsHeard(heard.span, hz, target.spanLengthM)], likeness: 'one-belt', soundRelativeU });
  const [toLow, toHigh] = [ratio(target.lowHz), ratio(target.highHz)];
  if (toLow === undefined || toHigh === undefined) return undefined;
  // One range at a time: below 1 of the low end, above 1 of the high one.
  const below = conformance(toLow.shareBelow, { low: 1 }).below;
  const above = conformance(toHigh.shareBelow, { high: 1 }).above;
  return { below, inside: Math.max(0, 1 - below - above), above };
}

const judged = new WeakMap<Reading, { readonly setup: SpanSetup; readonly against: AgainstTarget | undefined }>();

/** Whether a reading meets the target of its setup: a force by its own interval, a frequency by the ratio in which the density cancels. Reckoned once. */
export function readingAgainstTarget(reading: Reading, setup: SpanSetup): AgainstTarget | undefined {
  const known = judged.get(reading);
  if (known?.setup === setup) return known.against;
  const against = reckonedAgainst(reading, setup);
  judged.set(reading, { setup, against });
  return against;
}

function reckonedAgainst({ forceN, frequencyHz }: Reading, setup: SpanSetup): AgainstTarget | undefined {
  const { targetForceN, targetHz } = setup;
  if (forceN === undefined || targetForceN === undefined) return undefined;
  const span = knownSpan(setup);
  if (targetHz === undefined || span === undefined) return againstTarget(forceN, targetForceN);
  const { value, standardUncertainty } = frequencyHz;
  const soundRelativeU = Math.hypot(standardUncertainty / value, REPEATABILITY_PRIOR.relative);
  const heard: HeardBelt = { span, frequencyHz: value, partials: [], sharedRelativeU: 0 };
  const found = againstFrequencyTarget({ heard, soundRelativeU, target: targetHz });
  return found ? verdictAgainst(found, forceN.value, targetForceN) : againstTarget(forceN, targetForceN);
}
