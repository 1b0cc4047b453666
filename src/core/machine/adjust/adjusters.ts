/** What is known of a group of belts and their adjusters before any was moved: target, limit, and how a turn should act. */

import type { ForceRange } from '../../setup.ts';

/** A group of belts that are adjusted together: a pair, or the three or four of a lift. Entries of lists are in the belts' order. */
export interface AdjustGroup {
  readonly targetForceN: ForceRange;
  /** Largest difference between two belts' forces that still counts as matched, relative; none: they need not match. */
  readonly matchRelative?: number | undefined;
  readonly belts: readonly AdjustedBelt[];
  /** Share of an adjuster's own effect that another belt of the group feels: mean and standard deviation. */
  readonly coupling: { readonly mean: number; readonly sd: number };
  /** What all readings of the group share, relative standard uncertainty: density, ends, the ruler's scale. */
  readonly commonRelativeU: number;
  /** Of the ratio of two belts' forces, what no further reading lowers: their own spans, density and ends; none where it is not told. */
  readonly unlikeRelativeU?: number | undefined;
}

export interface AdjustedBelt {
  /** Force that the belt, and what it hangs on, may never pass. */
  readonly limitN?: number | undefined;
  readonly adjuster: Adjuster;
}

/**
 * `modelResponseN`: change of the force for a whole turn of the screw, or for a millimetre of the slide, as stiffness and path have it; > 0.
 * How far a spring must be moved depends on the spring: only the way is known.
 */
export type Adjuster =
  | { readonly kind: 'screw' | 'slide'; readonly modelResponseN: number }
  | { readonly kind: 'spring'; readonly modelResponseN?: undefined };

/**
 * Moves that a person can make, the largest first: parts of a turn, or millimetres. Eighths where they serve; finer ones where an eighth moves the
 * force by more than a small part of the target (a thirty-second is 11 degrees, a thumb's width at the end of a key).
 */
export const STEPS = { screw: [1 / 8, 1 / 16, 1 / 32], slide: [0.5, 0.2, 0.1, 0.05] } as const;

/** Least and largest true response over the model's: the loop's real stiffness, frame and idlers included, is hardly known (our judgement). */
export const RESPONSE_SPREAD = { low: 0.3, high: 3 } as const;

/** Of that range, even in the logarithm: mean and standard deviation of the response over the model's. */
export const RESPONSE_PRIOR = momentsOfLogEven(RESPONSE_SPREAD);

/** A screw turned back does nothing for up to this much of a turn; a slide that is clamped hardly has any, in millimetres (our judgement). */
export const MOST_BACKLASH: Readonly<Record<Adjuster['kind'], number>> = { screw: 1 / 8, slide: 0.03, spring: 0 };

/** Belts stick on their pulleys: after running the carriage a force may still stand off by up to this share (our judgement). */
export const STICTION_RELATIVE = 0.03;

/** Two belts that are both held to the moving gantry pull at each other through it; belts that share nothing hardly do (our judgement). */
export const COUPLING = { crossed: { mean: 0.3, sd: 0.2 }, apart: { mean: 0, sd: 0.02 } } as const;

/** x even in ln x from `low` to `high`. */
function momentsOfLogEven({ low, high }: { readonly low: number; readonly high: number }): { readonly mean: number; readonly sd: number } {
  const lnWidth = Math.log(high / low);
  const mean = (high - low) / lnWidth;
  return { mean, sd: Math.sqrt((high * high - low * low) / (2 * lnWidth) - mean * mean) };
}
