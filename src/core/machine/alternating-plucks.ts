/** Plucks that alternate between two belts: their frequencies' ratio with any steady drift taken out, and whether another pluck would help. */

import { REPEATABILITY_PRIOR } from '../frequency/combine.ts';
import { inverseOfPositiveDefinite, solvePositiveDefinite } from '../math/linear-solve.ts';
import type { Measured } from '../math/measured.ts';

/** One pluck, in the order in which they were heard. */
export interface PairPluck {
  readonly belt: 0 | 1;
  readonly frequencyHz: Measured;
}

export interface FrequencyRatio {
  /** ln of the first belt's frequency over the second's. */
  readonly lnRatio: number;
  /** Relative standard uncertainty: of the sounds, and of how plucks repeat. */
  readonly relativeU: number;
  /** Relative change of both from one pluck to the next. */
  readonly driftRelative: number;
}

/** Both belts warm or settle together: from one pluck to the next by about this share (standard deviation, our judgement). */
const DRIFT_PRIOR_RELATIVE = 0.001;

/**
 * Least squares of ln f = level of its belt + drift × place in the row. The drift has a prior, so that two plucks already tell a ratio; plucks that
 * alternate hold it off by themselves.
 *
 * @returns undefined while one of the belts was not plucked
 */
export function frequencyRatio(plucks: readonly PairPluck[]): FrequencyRatio | undefined {
  if (!([0, 1] as const).every((belt) => plucks.some((pluck) => pluck.belt === belt))) return undefined;
  const rows = plucks.map(({ belt, frequencyHz: { value, standardUncertainty } }, place) => ({
    design: [belt === 0 ? 1 : 0, belt === 1 ? 1 : 0, place - (plucks.length - 1) / 2],
    ln: Math.log(value),
    own: (standardUncertainty / value) ** 2,
  }));
  const { relative, degreesOfFreedom: ν0 } = REPEATABILITY_PRIOR;
  const first = fitted(rows, relative ** 2);
  const explained = rows.reduce((sum, { own }) => sum + own, 0) * Math.max(0, 1 - 2 / rows.length);
  const squares = rows.reduce((sum, { design, ln }) => sum + (ln - dot(design, first.levels)) ** 2, 0);
  // The scatter that was found, pooled with what plucks usually do.
  const between = (ν0 * relative ** 2 + Math.max(0, squares - explained)) / (ν0 + Math.max(0, rows.length - 2));
  const { levels, covariance } = fitted(rows, between);
  const variance = covariance[0]! + covariance[4]! - 2 * covariance[1]!;
  return { lnRatio: levels[0]! - levels[1]!, relativeU: Math.sqrt(variance), driftRelative: levels[2]! };
}

interface Row {
  readonly design: readonly number[];
  readonly ln: number;
  readonly own: number;
}

function fitted(rows: readonly Row[], between: number): { levels: Float64Array; covariance: Float64Array } {
  const matrix = new Float64Array(9);
  const right = new Float64Array(3);
  matrix[8] = DRIFT_PRIOR_RELATIVE ** -2;
  for (const { design, ln, own } of rows) {
    const weight = 1 / (own + between);
    for (let i = 0; i < 3; i++) {
      right[i]! += weight * design[i]! * ln;
      for (let k = 0; k < 3; k++) matrix[3 * i + k]! += weight * design[i]! * design[k]!;
    }
  }
  const levels = solvePositiveDefinite(matrix, right);
  const covariance = inverseOfPositiveDefinite(matrix, 3);
  if (!levels || !covariance) throw new RangeError('frequencyRatio needs finite frequencies above 0');
  return { levels, covariance };
}

const dot = (a: readonly number[], b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

/** The belt to pluck next: the one that was not plucked last. */
export const nextToPluck = (plucks: readonly PairPluck[]): 0 | 1 => (plucks.at(-1)?.belt === 0 ? 1 : 0);
