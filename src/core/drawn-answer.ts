/** The check by random draws (JCGM 101:2008): the force of a take from draws of every input, beside the interval that the reading gives. */

import { forceBasis, readingOf, type Take } from './answer.ts';
import { widenedForFew } from './force/budget.ts';
import { DRAWS, monteCarloForce } from './force/monte-carlo.ts';
import { withoutSag } from './force/sag.ts';
import type { ForceN } from './outcome.ts';

/** Plain data, so that it can cross from a worker. */
export interface DrawnAnswer {
  /** Widened for few plucks as the reading is; missing where hardly any draw leaves room for a force. */
  readonly forceN: ForceN | undefined;
  readonly draws: number;
  /** How many unweighted draws would say as much. */
  readonly effectiveDraws: number;
  readonly shareWithoutForce: number;
  /** Even bins; shares sum to 1. */
  readonly histogram: { readonly fromN: number; readonly binWidthN: number; readonly shares: readonly number[] };
  readonly agreement: Agreement;
}

/** `too-few`: hardly any draw fits the partials, so that the draws themselves are not sure. */
export type Agreement = 'agree' | 'differ' | 'too-few';

export interface DrawOptions {
  /** The same seed, the same draws. */
  readonly seed: number;
  readonly draws?: number | undefined;
  /** Told the share done, about a hundred times. */
  readonly progress?: ((share: number) => void) | undefined;
}

const BINS = 40;

/** Undefined where the take has no reading with a force. */
export function drawnAnswer(take: Take, { seed, draws = DRAWS, progress }: DrawOptions): DrawnAnswer | undefined {
  const basis = forceBasis(take);
  const reading = readingOf(take);
  if (!basis || !reading?.forceN) return undefined;
  const { fit, rise, sharedRelativeU, span } = basis;
  const used = basis.partials.filter(({ number }) => fit.numbers.includes(number));
  const heard = { partials: rise > 0 ? withoutSag(used, rise) : used, sharedRelativeU };
  const drawn = monteCarloForce({ heard, span, seed, draws, progress });
  const { from, binWidth, shares } = drawn.distribution.histogram(BINS);
  const forceN = drawn.forceN && widenedForFew(drawn.forceN, reading.budget);
  const { effectiveDraws } = drawn.distribution;
  return {
    forceN,
    draws,
    effectiveDraws,
    shareWithoutForce: drawn.shareWithoutForce,
    histogram: { fromN: from, binWidthN: binWidth, shares: [...shares] },
    agreement: agreement(reading.forceN, forceN, effectiveDraws),
  };
}

/** Bounds may lie apart by this share of the interval's width: a fifth of u, about half a unit of the digit that u is printed to (8.1). */
const APART_OF_WIDTH = 0.05;
/** With fewer, a bound of the draws is itself open by more than that. */
const FEWEST_EFFECTIVE = 400;
/** Standard error of a 2.5 % quantile of n normal draws, in widths of the 95 % interval: √(0.025 · 0.975) / (0.0584 · 3.92 √n). */
const QUANTILE_ERROR_OF_WIDTH = 0.68;

export function agreement(told: ForceN, drawn: ForceN | undefined, effectiveDraws: number): Agreement {
  if (effectiveDraws < FEWEST_EFFECTIVE) return 'too-few';
  if (drawn?.high === undefined || told.high === undefined) return drawn?.high === told.high ? 'agree' : 'differ';
  if ((drawn.low === undefined) !== (told.low === undefined)) return 'differ';
  const width = told.high - (told.low ?? 0);
  const apart = (APART_OF_WIDTH + (2 * QUANTILE_ERROR_OF_WIDTH) / Math.sqrt(effectiveDraws)) * width;
  const near = (one: number | undefined, other: number | undefined) => Math.abs((one ?? 0) - (other ?? 0)) <= apart;
  return near(drawn.low, told.low) && near(drawn.high, told.high) ? 'agree' : 'differ';
}
