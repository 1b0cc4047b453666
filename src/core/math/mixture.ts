/** A weighted sum of normal distributions: its share below a value, and its quantiles. */

import { normalCdf } from './normal.ts';

export interface NormalPart {
  readonly weight: number;
  readonly mean: number;
  /** >= 0; 0 stands for a step. */
  readonly sd: number;
}

/** Bisections until two doubles are neighbours, for any start that holds the quantile. */
const MOST_STEPS = 200;
/** Farther from every mean than this nothing is left. */
const FARTHEST_SD = 12;

/** @param parts  weights sum to 1 */
export const shareBelow = (value: number, parts: readonly NormalPart[]): number =>
  parts.reduce((sum, { weight, mean, sd }) => sum + weight * (sd > 0 ? normalCdf((value - mean) / sd) : Number(value >= mean)), 0);

/** @param share  0 < share < 1 */
export function mixtureQuantile(share: number, parts: readonly NormalPart[]): number {
  let low = Math.min(...parts.map(({ mean, sd }) => mean - FARTHEST_SD * sd));
  let high = Math.max(...parts.map(({ mean, sd }) => mean + FARTHEST_SD * sd));
  for (let step = 0; step < MOST_STEPS; step++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (shareBelow(middle, parts) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
