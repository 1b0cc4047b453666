/** Which forces the ruler shows: everything that was asked for and found, with a fifth to spare, and never a jump while a pluck rings. */

import type { ForceRange } from '../../core/setup.ts';

/** What stands on the ruler: an interval whose ends may be missing, and the value inside it. */
export interface ShownForce {
  readonly lowN?: number | undefined;
  readonly highN?: number | undefined;
  readonly valueN?: number | undefined;
}

export interface RulerQuestion {
  readonly target?: ForceRange | undefined;
  readonly shown: readonly ShownForce[];
  /** Range until now; it is kept as long as it serves. */
  readonly before?: ForceRange | undefined;
  /** A pluck rings: the range stays whatever comes. */
  readonly held: boolean;
  /** Range where there is nothing to show. */
  readonly fallback: ForceRange;
}

const SPARE_RELATIVE = 0.2;

/** An interval is shown to at most this many times the largest value and target, then goes on as an arrow: it would flatten all else. */
const MAX_TIMES_LARGEST_VALUE = 4;

/** A range that was this many times wider than needed shows nothing any more and is given up. */
const MAX_TIMES_TOO_WIDE = 3;

/**
 * Largest of 1, 2 and 5 times a power of ten that is not above a width.
 *
 * @param width > 0
 * @example 1.9 gives 1; 0.34 gives 0.2
 */
export const roundStep = (width: number): number => {
  const decade = 10 ** Math.floor(Math.log10(width) + 1e-9);
  const lead = width / decade + 1e-9;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * decade;
};

/** The range widened to whole steps, a tenth to a fifth of its width each; never below zero. */
const roundedOut = ({ lowN, highN }: ForceRange): ForceRange => {
  const stepN = roundStep((highN - lowN) / 5);
  return {
    lowN: Math.max(0, Math.floor(lowN / stepN + 1e-9) * stepN),
    highN: Math.ceil(highN / stepN - 1e-9) * stepN,
  };
};

const isFigure = (figure: number | undefined): figure is number => figure !== undefined && Number.isFinite(figure);

/** No force is below zero: that is where an interval without a lower bound begins. */
const lowestOf = ({ lowN, highN }: ShownForce): number | undefined => lowN ?? (highN === undefined ? undefined : 0);

/** Lowest and highest force of all that is to be shown; undefined where there is none. */
const extentOf = ({ target, shown }: RulerQuestion): ForceRange | undefined => {
  const values = [target?.lowN, target?.highN, ...shown.flatMap(({ valueN }) => [valueN])].filter(isFigure);
  const lows = shown.map(lowestOf).filter(isFigure);
  const ceilingN = MAX_TIMES_LARGEST_VALUE * Math.max(0, ...values, ...(values.length === 0 ? lows : []));
  const highs = shown.map(({ highN }) => highN).filter(isFigure);
  const figures = [...values, ...lows, ...highs.map((highN) => (ceilingN > 0 ? Math.min(highN, ceilingN) : highN))];
  return figures.length === 0 ? undefined : { lowN: Math.min(...figures), highN: Math.max(...figures) };
};

/** Range of a drawing that stands still: as close as whole steps allow. */
export const closeRange = (question: Pick<RulerQuestion, 'target' | 'shown' | 'fallback'>): ForceRange => {
  const extent = extentOf({ ...question, held: false });
  return extent && extent.highN > extent.lowN ? roundedOut(extent) : question.fallback;
};

/**
 * Range of forces between the first and the last figure of the ruler.
 *
 * @returns whole steps, 0 <= lowN < highN; the very range of before wherever that still serves, so that nothing moves
 */
export const rulerRange = (question: RulerQuestion): ForceRange => {
  const { before, held, fallback } = question;
  if (before && held) return before;
  const extent = extentOf(question);
  if (!extent || extent.highN <= 0) return before ?? fallback;
  const fresh = roundedOut({ lowN: extent.lowN * (1 - SPARE_RELATIVE), highN: extent.highN * (1 + SPARE_RELATIVE) });
  if (!before) return fresh;
  const widened =
    before.lowN <= extent.lowN && extent.highN <= before.highN
      ? before
      : roundedOut({ lowN: Math.min(before.lowN, fresh.lowN), highN: Math.max(before.highN, fresh.highN) });
  return widened.highN - widened.lowN > MAX_TIMES_TOO_WIDE * (fresh.highN - fresh.lowN) ? fresh : widened;
};
