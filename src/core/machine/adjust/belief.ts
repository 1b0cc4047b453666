/** What is believed of a group while it is adjusted: each force, each adjuster's effect on each belt, each backlash; learned together. */

import { covarianceOf, type GaussianState, independentState, sdOf } from '../../math/gaussian-state.ts';
import type { Measured } from '../../math/measured.ts';
import { type AdjustGroup, MOST_BACKLASH, RESPONSE_PRIOR } from './adjusters.ts';

export interface Belief {
  readonly group: AdjustGroup;
  /** Forces as read, N; responses, N per turn (or mm); backlash in turns (or mm): `forceAt`, `responseAt`, `backlashAt` say where each stands. */
  readonly state: GaussianState;
  /** Which way each adjuster was moved last; 0: not yet. */
  readonly lastWay: readonly Way[];
}

export type Way = -1 | 0 | 1;

/** A move of one belt's own adjuster. */
export interface Turn {
  readonly belt: number;
  /** Turns of a screw or millimetres of a slide; > 0 tightens. */
  readonly turns: number;
}

export const forceAt = (belt: number): number => belt;
/** Of one belt's adjuster on another belt, or on its own. */
export const responseAt = ({ belts }: AdjustGroup, adjuster: number, belt: number): number => belts.length * (1 + adjuster) + belt;
export const backlashAt = ({ belts }: AdjustGroup, adjuster: number): number => belts.length * (1 + belts.length) + adjuster;

/** A force before it was read may be anything: this many times the target. */
const ANY_FORCE = 100;

/** Before anything was read: forces anywhere, responses from the model, coupling from the layout. */
export function beliefBefore(group: AdjustGroup): Belief {
  const { belts, targetForceN } = group;
  const forces = belts.map(() => ({ mean: targetForceN.highN, sd: ANY_FORCE * targetForceN.highN }));
  const responses = belts.flatMap((_, adjuster) => belts.map((_, belt) => responseBefore(group, adjuster, belt)));
  const backlash = belts.map(({ adjuster }) => {
    const most = MOST_BACKLASH[adjuster.kind];
    return { mean: most / 2, sd: most / Math.sqrt(12) };
  });
  const state = correlated(group, independentState([...forces, ...responses, ...backlash]));
  return { group, state, lastWay: belts.map(() => 0) };
}

function responseBefore({ belts, coupling }: AdjustGroup, adjuster: number, belt: number): { mean: number; sd: number } {
  const { modelResponseN = 0 } = belts[adjuster]!.adjuster;
  const [mean, sd] = [modelResponseN * RESPONSE_PRIOR.mean, modelResponseN * RESPONSE_PRIOR.sd];
  if (adjuster === belt) return { mean, sd };
  // The product of two unknowns, the coupling and the adjuster's own response.
  return { mean: mean * coupling.mean, sd: Math.hypot(mean * coupling.sd, sd * coupling.mean, sd * coupling.sd) };
}

/** An adjuster's effects on its own belt and on the others rise and fall together. */
function correlated(group: AdjustGroup, state: GaussianState): GaussianState {
  const size = state.mean.length;
  const covariance = state.covariance.slice();
  group.belts.forEach(({ adjuster: { modelResponseN = 0 } }, j) => {
    const share = (belt: number): number => (belt === j ? 1 : group.coupling.mean);
    group.belts.forEach((_, i) => {
      group.belts.forEach((_, k) => {
        const at = responseAt(group, j, i) * size + responseAt(group, j, k);
        if (i !== k) covariance[at] = share(i) * share(k) * (modelResponseN * RESPONSE_PRIOR.sd) ** 2;
      });
    });
  });
  return { mean: state.mean, covariance };
}

/** The force that is believed now, as read: without what all readings share. */
export const believedForceN = ({ state }: Belief, belt: number): Measured => measuredAt(state, forceAt(belt));

/** Effect of a whole turn (or millimetre) of one belt's adjuster on a belt. */
export const believedResponseN = ({ group, state }: Belief, adjuster: number, belt: number): Measured =>
  measuredAt(state, responseAt(group, adjuster, belt));

const measuredAt = (state: GaussianState, at: number): Measured => ({ value: state.mean[at]!, standardUncertainty: sdOf(state, at) });

/** Covariance of two forces as read, N². */
export const forceCovariance = ({ state }: Belief, one: number, other: number): number => covarianceOf(state, forceAt(one), forceAt(other));
