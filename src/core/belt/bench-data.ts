/** What a belt tells on the bench: spans of it, forces that load them, and the partials that were heard of each span under each force. */

import type { Measured } from '../math/measured.ts';

/** One length for every force that it is plucked under, so one error of the ruler too. */
export interface BenchSpan {
  /** Tangent point to tangent point, > 0. */
  readonly lengthM: Measured;
}

export interface BenchLoad {
  /** Static force in the span, > 0, what it shares with no other load; missing where nobody knows it. */
  readonly forceN?: Measured | undefined;
  /** Where nobody knows it: about what it may be; else the string's law guesses. */
  readonly aboutN?: number | undefined;
}

export interface BenchPartial {
  /** Counted from 1. */
  readonly number: number;
  /** Small amplitude, undamped, > 0. */
  readonly frequencyHz: Measured;
}

/** The plucks of one span under one load. */
export interface BenchTake {
  /** Places in `spans` and `loads`. */
  readonly span: number;
  readonly load: number;
  readonly partials: readonly BenchPartial[];
  /** Relative standard uncertainty that moves all its partials alike: how plucks repeat, glide, a force that is not quite the load's. */
  readonly sharedRelativeU: number;
}

/** What is known of the belt before it is plucked. Deliberately wide: it decides only where the plucks leave something open. */
export interface BenchPrior {
  /** Log-normal: the catalogue's, or a weighing. */
  readonly linearDensityKgPerM: Measured;
  /** EI: about two thirds of the weight between the two, log-normal. */
  readonly bendingStiffnessNm2: { readonly low: number; readonly high: number };
}

export interface BenchData {
  readonly spans: readonly BenchSpan[];
  readonly loads: readonly BenchLoad[];
  readonly takes: readonly BenchTake[];
  /** Relative standard uncertainty that all known forces share: local gravity, the scale that the weights were put on. */
  readonly forceScaleRelativeU: number;
  readonly prior: BenchPrior;
}

/** The beam is no belt: partial n may lie this far from it for each of its number (0.3 % at the fourth), alike in every take. Our judgement. */
export const BENCH_MODEL_ERROR_EACH = 0.00075;

/** Above this number a partial says more of teeth and shear than of the beam. */
export const HIGHEST_PARTIAL = 4;

/**
 * @throws RangeError where a quantity is out of its range or a take points at nothing
 */
export function checkBenchData({ spans, loads, takes }: BenchData): void {
  const positive = (name: string, { value, standardUncertainty: u }: Measured): void => {
    if (!(value > 0 && value < Infinity && u >= 0)) throw new RangeError(`a belt bench needs a ${name} above 0, got ${value} with u ${u}`);
  };
  for (const { lengthM } of spans) positive('length', lengthM);
  for (const { forceN } of loads) if (forceN) positive('force', forceN);
  for (const { span, load, partials } of takes) {
    if (!spans[span] || !loads[load]) throw new RangeError(`a take points at span ${span} and load ${load}, which are not there`);
    for (const { number, frequencyHz } of partials) {
      positive('frequency', frequencyHz);
      if (!Number.isInteger(number) || number < 1) throw new RangeError(`a partial's number is whole and above 0, got ${number}`);
    }
  }
}
