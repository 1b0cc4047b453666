/** Moves that would serve best if they could be made exactly: least expected square of all distances, careful with an adjuster that is not known yet. */

import { covarianceOf } from '../../math/gaussian-state.ts';
import { solvePositiveDefinite } from '../../math/linear-solve.ts';
import { type Belief, forceAt, responseAt } from './belief.ts';

/**
 * How much of the doubt of the responses counts against a long turn. All of it on the way to the target; none between belts, or one that is where it should be
 * would be moved out of its place to meet another that is still on its way.
 */
const CAUTION = { toTarget: 1, betweenBelts: 0 } as const;
/** A target without width is aimed at as if it had this share of its force on each side. */
const LEAST_HALF_WIDTH = 0.01;

/** A distance that should be nothing: a belt from the middle of the target, or two belts from each other. */
interface Distance {
  readonly belts: readonly (readonly [belt: number, sign: number])[];
  readonly aimN: number;
  /** How far off still serves. */
  readonly toleranceN: number;
  readonly caution: number;
}

/**
 * Turns of the adjusters that move the belts, play not counted: Σ E[distance²]/tolerance² at its least. The doubt of each response is part of the
 * expectation, so that an ill-known adjuster is turned less.
 *
 * @returns Float64Array, one for each of `adjusters`, in their order
 */
export function plannedMoves(belief: Belief, adjusters: readonly number[]): Float64Array {
  const { group, state } = belief;
  const size = adjusters.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (const { belts, aimN, toleranceN, caution } of distances(belief)) {
    const distance = belts.reduce((sum, [i, sign]) => sum + sign * state.mean[forceAt(i)]!, 0) - aimN;
    const effect = (j: number): number => belts.reduce((sum, [i, sign]) => sum + sign * state.mean[responseAt(group, j, i)]!, 0);
    const doubt = (j: number, l: number): number =>
      belts.reduce(
        (sum, [i, s]) =>
          sum + belts.reduce((inner, [k, t]) => inner + s * t * covarianceOf(state, responseAt(group, j, i), responseAt(group, l, k)), 0),
        0,
      );
    adjusters.forEach((j, a) => {
      right[a]! -= (effect(j) * distance) / toleranceN ** 2;
      adjusters.forEach((l, b) => {
        matrix[a * size + b]! += (effect(j) * effect(l) + caution * doubt(j, l)) / toleranceN ** 2;
      });
    });
  }
  return solvePositiveDefinite(matrix, right) ?? new Float64Array(size);
}

function distances({ group }: Belief): Distance[] {
  const { lowN, highN } = group.targetForceN;
  const aimN = (lowN + highN) / 2;
  const halfN = Math.max((highN - lowN) / 2, LEAST_HALF_WIDTH * aimN);
  const fromTarget = group.belts.map((_, i): Distance => ({ belts: [[i, 1]], aimN, toleranceN: halfN, caution: CAUTION.toTarget }));
  if (group.matchRelative === undefined) return fromTarget;
  const toleranceN = group.matchRelative * aimN;
  const fromEachOther = group.belts.flatMap((_, i) =>
    group.belts.slice(i + 1).map(
      (_, k): Distance => ({
        belts: [
          [i, 1],
          [i + 1 + k, -1],
        ],
        aimN: 0,
        toleranceN,
        caution: CAUTION.betweenBelts,
      }),
    ),
  );
  return [...fromTarget, ...fromEachOther];
}
