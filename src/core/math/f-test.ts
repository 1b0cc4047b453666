/** Fisher's F distribution: whether a ratio of two variances is more than chance. */

import { incompleteBeta } from './student-t.ts';

/**
 * Share of the F distribution above `ratio`.
 *
 * @param test.between  degrees of freedom of the numerator, > 0
 * @param test.within   of the denominator, > 0
 */
export function shareAboveF({ ratio, between, within }: { ratio: number; between: number; within: number }): number {
  if (!(between > 0 && within > 0)) throw new RangeError(`shareAboveF needs degrees of freedom above 0, got ${between} and ${within}`);
  if (!(ratio > 0)) return 1;
  return ratio === Infinity ? 0 : incompleteBeta(within / (within + between * ratio), within / 2, between / 2);
}
