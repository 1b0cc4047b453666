/** How the belief changes: after a turn the forces have moved and are less sure; after a reading all that moved them is known better. */

import { type GaussianState, observed, restarted, type Shift, shifted } from '../../math/gaussian-state.ts';
import { type AdjustGroup, MOST_BACKLASH, RESPONSE_SPREAD, STICTION_RELATIVE } from './adjusters.ts';
import { type Belief, backlashAt, forceAt, responseAt, type Turn, type Way } from './belief.ts';

/** A force as it was read. */
export interface ForceRead {
  readonly belt: number;
  readonly forceN: number;
  /** Relative standard uncertainty of this reading alone: what another reading of the same belt would not repeat. */
  readonly ownRelativeU: number;
}

/** Below this share of the target's low end a belt hangs: what was done to it says little of its adjuster. */
const SLACK_SHARE = 0.1;
/** A reading of a belt that hangs is known to within this share of the target's low end. */
const SLACK_KNOWN_TO = 0.2;
/** A spring may have been moved by anything: the force is anywhere, of the size of the target. */
const SPRING_SHARE = 1;

/** What is left of a turn after the play, with what that depends on. */
export interface MovingTurn {
  readonly turns: number;
  /** Change of `turns` for each turn of backlash. */
  readonly perBacklash: number;
  /** Variance that stands beside the doubt of the backlash itself. */
  readonly variance: number;
}

export function movingTurn({ group, state, lastWay }: Belief, { belt, turns }: Turn): MovingTurn {
  const way = Math.sign(turns);
  const last = lastWay[belt]!;
  if (way === 0 || way === last) return { turns, perBacklash: 0, variance: 0 };
  const backlash = state.mean[backlashAt(group, belt)]!;
  // Never turned yet: the screw stands anywhere in its play.
  const share = last === 0 ? 0.5 : 1;
  const lost = Math.min(share * backlash, Math.abs(turns));
  return { turns: turns - way * lost, perBacklash: -way * share, variance: last === 0 ? backlash ** 2 / 12 : 0 };
}

/** After an adjuster was moved and the carriage was run. */
export function turned(belief: Belief, turn: Turn): Belief {
  const { group, state } = belief;
  if (turn.turns === 0) return belief;
  const lastWay = belief.lastWay.map((way, j) => (j === turn.belt ? (Math.sign(turn.turns) as Way) : way));
  if (group.belts[turn.belt]!.adjuster.kind === 'spring') return { group, state: sprung(belief, turn.belt), lastWay };
  const moving = movingTurn(belief, turn);
  const shifts = group.belts.map((_, i): Shift => {
    const at = responseAt(group, turn.belt, i);
    const response = state.mean[at]!;
    const by = response * moving.turns;
    return {
      index: forceAt(i),
      by,
      slopes: [
        [at, moving.turns],
        [backlashAt(group, turn.belt), response * moving.perBacklash],
      ],
      variance: moving.variance * response ** 2 + stictionVariance(state.mean[forceAt(i)]!, by),
    };
  });
  return { group, state: shifted(state, shifts), lastWay };
}

/** A change of less than this share of the force is as good as none. */
const UNFELT_RELATIVE = 0.002;

/** What a belt held back before may be let go of, and what it is given may be held back: half of the most, whatever the change. */
const stictionVariance = (forceN: number, byN: number): number =>
  Math.abs(byN) < UNFELT_RELATIVE * forceN ? 0 : ((STICTION_RELATIVE * forceN) / 2) ** 2;

const sprung = ({ group, state }: Belief, belt: number): GaussianState =>
  restarted(state, { index: forceAt(belt), value: state.mean[forceAt(belt)]!, sd: SPRING_SHARE * group.targetForceN.highN });

/** After a belt was plucked and read. */
export function read(belief: Belief, { belt, forceN, ownRelativeU }: ForceRead): Belief {
  const { group } = belief;
  const { lowN } = group.targetForceN;
  const index = forceAt(belt);
  const state =
    forceN < SLACK_SHARE * lowN
      ? restarted(belief.state, { index, value: forceN, sd: SLACK_KNOWN_TO * lowN })
      : observed(belief.state, { index, value: forceN, variance: (forceN * ownRelativeU) ** 2 });
  return { ...belief, state: withinReason(group, state) };
}

/** No screw works backwards on its own belt, nor far outside what any real loop does; no play is less than none. */
function withinReason(group: AdjustGroup, state: GaussianState): GaussianState {
  const mean = state.mean.slice();
  const clamp = (at: number, low: number, high: number) => {
    mean[at] = Math.min(Math.max(mean[at]!, low), high);
  };
  group.belts.forEach(({ adjuster: { kind, modelResponseN = 0 } }, j) => {
    clamp(responseAt(group, j, j), 0.5 * RESPONSE_SPREAD.low * modelResponseN, 2 * RESPONSE_SPREAD.high * modelResponseN);
    clamp(backlashAt(group, j), 0, 2 * MOST_BACKLASH[kind]);
  });
  return { mean, covariance: state.covariance };
}
