/**
 * One belt under one force, plucked at two positions of the carriage: the unknown ends and the stiffness shorten both spans by the same, so that
 * together they tell the force about twice as well as the shorter alone. First it is asked whether it may have been one force at all.
 */

import { answerOf, type ForceBasis, forceBasis, type Take } from '../answer.ts';
import { forceNodes } from '../force/force.ts';
import { type HeardPosition, type JointNode, jointNodes, type Positions } from '../force/joint-nodes.ts';
import { withoutSag } from '../force/sag.ts';
import { mixtureQuantile } from '../math/mixture.ts';
import type { ForceN, Grade, Reading, Reason } from '../outcome.ts';
import { gradeOfInterval, gradeOfReasons, toleranceOf, worstGrade } from '../verdict/grade.ts';
import { inputReasons } from '../verdict/input-reasons.ts';

/** Force at the second position over that at the first. */
export interface ForceRatio {
  readonly value: number;
  /** 95 % interval. */
  readonly low: number;
  readonly high: number;
}

export type TwoPositions =
  | {
      readonly kind: 'combined';
      readonly ratio: ForceRatio;
      /** Mean of the forces at the two positions. */
      readonly forceN: ForceN;
      readonly grade: Grade;
      readonly soundGrade: Grade;
      readonly reasons: readonly Reason[];
      readonly alone: readonly [Reading, Reading];
    }
  /** The force was not the same, or the ends are of another kind than told: either way the two say nothing together. */
  | { readonly kind: 'not-one-force'; readonly ratio: ForceRatio; readonly alone: readonly [Reading, Reading] }
  /** One of the two gives no force by itself, or the lengths are too much alike. */
  | { readonly kind: 'not-two'; readonly why: 'no-force' | 'lengths-alike' };

/** Belt friction leaves the force at two positions alike to this, standard uncertainty of the ratio, after a run from end to end (our judgement). */
const ONE_FORCE_WITHIN = 0.01;
/** Of lengths closer than this nothing is learned about the ends. */
export const LEAST_LENGTH_RATIO = 1.3;
const LOW = 0.025;
const HIGH = 0.975;
/**
 * Tails of the combined force, a little thinner than of 95 %: the two were first tested on the very plucks that are then combined, so that some
 * pairs were let through because their errors happen to agree. With them 96 to 97 % of seeded belts hold.
 */
const COMBINED_TAIL = 0.015;

/**
 * @param takes  the same belt, ends and tolerance in both setups; each with its own span length and what was heard there
 */
export function twoPositions(takes: readonly [Take, Take]): TwoPositions {
  const bases = takes.map(forceBasis);
  const alone = takes.map((take) => answerOf(take).reading);
  const [first, second] = bases;
  const [one, other] = alone;
  if (!first || !second || !one?.forceN || !other?.forceN) return { kind: 'not-two', why: 'no-force' };
  const lengths = [first.span.spanLengthM, second.span.spanLengthM];
  if (Math.max(...lengths) < LEAST_LENGTH_RATIO * Math.min(...lengths)) return { kind: 'not-two', why: 'lengths-alike' };
  const positions: Positions = [positionOf(first), { ...positionOf(second), span: onSameBelt(first, second) }];
  const nodes = forceNodes(first.span);
  const joint = jointNodes(positions, nodes, ONE_FORCE_WITHIN);
  const ratio = ratioOf(joint.free);
  if (ratio === undefined) return { kind: 'not-two', why: 'no-force' };
  if (ratio.low > 1 || ratio.high < 1) return { kind: 'not-one-force', ratio, alone: [one, other] };
  const forceN = meanForce(joint.tied);
  return { kind: 'combined', ratio, forceN, alone: [one, other], ...judged(takes, [first, second], [one, other], forceN) };
}

/** Those partials that a reading of this position alone would rest on, without what sag does to them. */
function positionOf({ span, partials, fit, rise, sharedRelativeU }: ForceBasis): HeardPosition {
  const used = partials.filter(({ number }) => fit.numbers.includes(number));
  return { span, heard: { partials: rise > 0 ? withoutSag(used, rise) : used, sharedRelativeU } };
}

/** The length is the second position's own, everything else is known once. */
const onSameBelt = (first: ForceBasis, second: ForceBasis): ForceBasis['span'] => ({
  ...first.span,
  spanLengthM: second.span.spanLengthM,
  spanLengthRelativeU: second.span.spanLengthRelativeU,
});

function ratioOf(nodes: readonly JointNode[]): ForceRatio | undefined {
  const parts = nodes.map(({ weight, lnForce, variance, covariance }) => ({
    weight,
    mean: lnForce[1] - lnForce[0],
    sd: Math.sqrt(Math.max(1e-12, variance[0] + variance[1] - 2 * covariance)),
  }));
  if (parts.length === 0) return undefined;
  const at = (share: number): number => Math.exp(mixtureQuantile(share, parts));
  return { value: at(0.5), low: at(LOW), high: at(HIGH) };
}

function meanForce(nodes: readonly JointNode[]): ForceN {
  const parts = nodes.map(({ weight, lnForce, variance, covariance }) => ({
    weight,
    mean: (lnForce[0] + lnForce[1]) / 2,
    sd: Math.sqrt((variance[0] + variance[1] + 2 * covariance) / 4),
  }));
  const at = (share: number): number => Math.exp(mixtureQuantile(share, parts));
  const [low, value, high] = [at(COMBINED_TAIL), at(0.5), at(1 - COMBINED_TAIL)];
  return { value, low, high, u95: Math.max(value - low, high - value) };
}

/** Grade and reasons: the sound of both, and of the inputs what the longer span still says of this force. */
function judged(
  takes: readonly [Take, Take],
  bases: readonly [ForceBasis, ForceBasis],
  alone: readonly [Reading, Reading],
  forceN: ForceN,
): { readonly grade: Grade; readonly soundGrade: Grade; readonly reasons: readonly Reason[] } {
  const longer = bases[0].span.spanLengthM > bases[1].span.spanLengthM ? 0 : 1;
  const { setup } = takes[longer];
  const { span, partials, fit, sharedRelativeU, rise } = bases[longer];
  const ofSound = uniqueReasons(alone.flatMap(({ reasons }) => reasons.filter(({ about }) => about === 'sound')));
  const ofInputs = inputReasons({
    setup,
    span,
    partials: partials.filter(({ number }) => fit.numbers.includes(number)),
    sharedRelativeU,
    forceN,
    budget: alone[longer].budget,
    rise,
  });
  const reasons = [...ofSound, ...ofInputs];
  return {
    grade: worstGrade([gradeOfInterval(forceN, toleranceOf(setup)), gradeOfReasons(reasons)]),
    soundGrade: worstGrade(alone.map(({ soundGrade }) => soundGrade)),
    reasons,
  };
}

const uniqueReasons = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ id }, i) => reasons.findIndex((other) => other.id === id) === i);
