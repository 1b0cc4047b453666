/** One belt heard at two span lengths: what both sets of partials say together to each cell of stiffness and ends, which both share. */

import type { ForceNode } from './force.ts';
import type { KnownSpan } from './known-span.ts';
import { type HeardSet, lnForceAt, MODEL_ERROR_EACH, whiten } from './partial-nodes.ts';
import { readStretch, type Stretch, stretchTable } from './stretch-table.ts';

/** What was heard at one position of the carriage. */
export interface HeardPosition {
  readonly heard: HeardSet;
  /** Density, stiffness and ends are those of the first position; the length and its error are its own. */
  readonly span: KnownSpan;
}

/** A cell after both positions were heard. Under it the two ln T are normal together. */
export interface JointNode {
  /** Weights sum to 1 over all nodes. */
  readonly weight: number;
  /** ln T at each position. */
  readonly lnForce: readonly [number, number];
  /** Their variances and covariance. */
  readonly variance: readonly [number, number];
  readonly covariance: number;
}

export type Positions = readonly [HeardPosition, HeardPosition];

export interface Joint {
  /** The two forces free of one another. */
  readonly free: readonly JointNode[];
  /** Both held to be one force. */
  readonly tied: readonly JointNode[];
}

const PRUNE_BELOW = 1e-6;
const FROM_CELLS = 1 / Math.sqrt(12);
/** Errors that partials share: density, each length, how plucks repeat at each place, stiffness and both ends inside the cell. */
const SHARED = { density: 0, length: 1, plucks: 3, stiffness: 5, ends: 6, count: 8 } as const;

/**
 * Bayes' rule over the cells as in `judgedNodes`, with two forces. The density's error and those inside the cell move both positions' partials;
 * each ruler reading, and how plucks repeat at each place, move one.
 *
 * @param tie  standard uncertainty of ln(T2/T1) where both are held to be one force
 */
export function jointNodes(positions: Positions, nodes: readonly ForceNode[], tie: number): Joint {
  const work = createWork(positions[0].heard.partials.length + positions[1].heard.partials.length);
  const fitted = nodes.map((node) => fitOfNode(positions, node, tie, work));
  const lnPrior = nodes.map(({ weight }) => Math.log(weight));
  return { free: weighed(fitted, lnPrior, 'free'), tied: weighed(fitted, lnPrior, 'tied') };
}

interface Solved {
  readonly lnEvidence: number;
  readonly node: Omit<JointNode, 'weight'>;
}
type Fitted = Readonly<Record<keyof Joint, Solved>>;

function weighed(fitted: readonly Fitted[], lnPrior: readonly number[], kind: keyof Joint): readonly JointNode[] {
  const lnWeights = fitted.map((fit, i) => lnPrior[i]! + fit[kind].lnEvidence);
  const heaviest = lnWeights.reduce((most, one) => Math.max(most, one), -Infinity);
  const kept = fitted.flatMap((fit, i) => {
    const weight = Math.exp(lnWeights[i]! - heaviest);
    return weight > PRUNE_BELOW ? [{ ...fit[kind].node, weight }] : [];
  });
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((node) => ({ ...node, weight: node.weight / total }));
}

/** Scratch for one call: nothing is allocated for each cell but its answer. */
interface Work {
  readonly at: Stretch;
  readonly residual: Float64Array;
  /** d ln f / d ln T of the partials of each position; 0 of the other's. */
  readonly slopes: readonly [Float64Array, Float64Array];
  /** Row by row, each times its standard uncertainty. */
  readonly shared: Float64Array;
  readonly ownVariance: Float64Array;
  readonly covariance: Float64Array;
}

function createWork(count: number): Work {
  const empty = (length = count): Float64Array => new Float64Array(length);
  return {
    at: { lnStretch: 0, perLnSlackness: 0, perFixity1: 0, perFixity2: 0 },
    residual: empty(),
    slopes: [empty(), empty()],
    shared: empty(count * SHARED.count),
    ownVariance: empty(),
    covariance: empty(count * count),
  };
}

function fitOfNode(positions: Positions, node: ForceNode, tie: number, work: Work): Fitted {
  const { residual, slopes, covariance: C } = work;
  const count = residual.length;
  slopes[0].fill(0);
  slopes[1].fill(0);
  work.shared.fill(0);
  const first = fillRows(positions[0], 0, 0, node, work);
  const second = fillRows(positions[1], 1, positions[0].heard.partials.length, node, work);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k <= i; k++) {
      let sum = 0;
      for (let e = 0; e < SHARED.count; e++) sum += work.shared[i * SHARED.count + e]! * work.shared[k * SHARED.count + e]!;
      C[i * count + k] = sum;
    }
    C[i * count + i]! += work.ownVariance[i]!;
  }
  const lnRoot = whiten(C, count, residual, slopes[0], slopes[1]);
  const dot = (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += a[i]! * b[i]!;
    return sum;
  };
  const system = {
    start: [first.lnForce, second.lnForce] as const,
    a: dot(slopes[0], slopes[0]),
    b: dot(slopes[1], slopes[1]),
    c: dot(slopes[0], slopes[1]),
    right: [dot(slopes[0], residual), dot(slopes[1], residual)] as const,
    squares: dot(residual, residual),
  };
  // Flat in ln f1 and not in ln T, so that one partial alone leaves every cell its weight.
  const lnMeasure = Math.log(first.perLnForce * second.perLnForce);
  const w = 1 / tie ** 2;
  const apart = first.lnForce - second.lnForce;
  const [r1, r2] = system.right;
  const tied = { ...system, a: system.a + w, b: system.b + w, c: system.c - w, right: [r1 - w * apart, r2 + w * apart] as const };
  return {
    free: solved(system, lnMeasure - lnRoot),
    tied: solved({ ...tied, squares: system.squares + w * apart * apart }, lnMeasure / 2 - lnRoot),
  };
}

/** Normal equations [a c; c b] x = right about a start. */
function solved(
  system: {
    readonly start: readonly [number, number];
    readonly a: number;
    readonly b: number;
    readonly c: number;
    readonly right: readonly [number, number];
    readonly squares: number;
  },
  lnConstant: number,
): Solved {
  const { start, a, b, c, right, squares } = system;
  const determinant = a * b - c * c;
  const step = [(b * right[0] - c * right[1]) / determinant, (a * right[1] - c * right[0]) / determinant] as const;
  const misfit = Math.max(0, squares - step[0] * right[0] - step[1] * right[1]);
  return {
    lnEvidence: lnConstant - (Math.log(determinant) + misfit) / 2,
    node: {
      lnForce: [start[0] + step[0], start[1] + step[1]],
      variance: [b / determinant, a / determinant],
      covariance: -c / determinant,
    },
  };
}

/** One position's partials into the scratch from a row on. @returns where the lowest of them puts the force in this cell */
function fillRows({ heard, span }: HeardPosition, position: 0 | 1, from: number, node: ForceNode, work: Work) {
  const { at } = work;
  const lnLength = Math.log(span.spanLengthM);
  const lnBase = -Math.log(span.linearDensityKgPerM) / 2 - Math.LN2 - lnLength;
  const lowest = heard.partials[0]!;
  const lnForce = lnForceAt({
    table: stretchTable(node.fixity, lowest.number),
    lnHz: Math.log(lowest.frequencyHz / lowest.number) - lnBase,
    lnBendingLength: node.lnStiffness / 2 - lnLength,
    at,
  });
  const lnSlackness = (node.lnStiffness - lnForce) / 2 - lnLength;
  heard.partials.forEach(({ number, frequencyHz, relativeU }, k) => {
    readStretch(stretchTable(node.fixity, number), lnSlackness, at);
    const i = from + k;
    const e = at.perLnSlackness;
    work.residual[i] = Math.log(frequencyHz / number) - (lnForce / 2 + lnBase + at.lnStretch);
    work.slopes[position][i] = (1 - e) / 2;
    const row = i * SHARED.count;
    const end1 = at.perFixity1 * node.width[0] * FROM_CELLS;
    const end2 = at.perFixity2 * node.width[1] * FROM_CELLS;
    work.shared[row + SHARED.density] = span.linearDensityRelativeU / 2;
    work.shared[row + SHARED.length + position] = (1 + e) * span.spanLengthRelativeU;
    work.shared[row + SHARED.plucks + position] = heard.sharedRelativeU;
    work.shared[row + SHARED.stiffness] = (e / 2) * node.widthLn * FROM_CELLS;
    work.shared[row + SHARED.ends] = node.alike ? end1 + end2 : end1;
    work.shared[row + SHARED.ends + 1] = node.alike ? 0 : end2;
    work.ownVariance[i] = relativeU ** 2 + (MODEL_ERROR_EACH * number) ** 2;
  });
  readStretch(node.table, lnSlackness, at);
  return { lnForce, perLnForce: (1 - at.perLnSlackness) / 2 };
}
