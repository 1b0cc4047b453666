/** What several partials say to each cell of stiffness and ends: how likely it is, and which first partial it then believes in. */

import type { ForceNode } from './force.ts';
import type { PartialEvidence } from './heard-partials.ts';
import type { KnownSpan } from './known-span.ts';
import { readStretch, type Stretch, type StretchTable, stretchTable } from './stretch-table.ts';

export interface HeardSet {
  /** At least one, ascending. */
  readonly partials: readonly PartialEvidence[];
  /** Relative standard uncertainty that moves all partials alike: how plucks repeat, the glide. */
  readonly sharedRelativeU: number;
}

/** A cell after the partials were heard. Under it ln f1 at the told length and density is normal. */
export interface JudgedNode {
  readonly node: ForceNode;
  /** Weights sum to 1 over all nodes. */
  readonly weight: number;
  readonly lnFirstHz: number;
  readonly lnFirstU: number;
}

export interface Judged {
  readonly nodes: readonly JudgedNode[];
  /** Weighted square of what is left of the partials in the cell that fits them best: χ² with one degree of freedom fewer than partials. */
  readonly misfit: number;
  /** ln of how likely the partials are under all that is known; compares sets of as many partials. */
  readonly lnEvidence: number;
}

/** The beam is no belt: partial n may lie this far from it for each of its number (1 % at the fourth). Our judgement, as no belt was measured. */
export const MODEL_ERROR_EACH = 0.0025;
/** ln of the slackness beyond which a force no longer moves a partial. */
const LN_SLACKEST = Math.log(50);
/** Cells that hold less than this share of the heaviest cell's weight decide nothing. */
const PRUNE_BELOW = 1e-6;
const MOST_STEPS = 40;

/**
 * Bayes' rule over the cells, each in closed form: inside a cell ln f1 is free, and partials, length, density, stiffness and ends are linear and normal.
 * Free in ln f1 and not in ln T, so that one partial alone leaves every cell its weight, as propagation of distributions does (JCGM 101:2008).
 */
export function judgedNodes(heard: HeardSet, span: KnownSpan, nodes: readonly ForceNode[]): Judged {
  const count = heard.partials.length;
  const work = createWork(count);
  const lnWeights = new Float64Array(nodes.length);
  const first: { ln: number; u: number }[] = [];
  let misfit = Infinity;
  let heaviest = -Infinity;
  nodes.forEach((node, i) => {
    const fit = fitOfNode(heard, span, node, work);
    misfit = Math.min(misfit, fit.misfit);
    lnWeights[i] = Math.log(node.weight) - fit.lnVolume - fit.misfit / 2;
    heaviest = Math.max(heaviest, lnWeights[i]!);
    first.push({ ln: fit.lnFirstHz, u: fit.lnFirstU });
  });
  const kept = nodes.flatMap((node, i) => {
    const weight = Math.exp(lnWeights[i]! - heaviest);
    return weight > PRUNE_BELOW ? [{ node, weight, lnFirstHz: first[i]!.ln, lnFirstU: first[i]!.u }] : [];
  });
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return { nodes: kept.map((one) => ({ ...one, weight: one.weight / total })), misfit, lnEvidence: heaviest + Math.log(total) };
}

/** Scratch for one call: nothing is allocated for each cell. */
interface Work {
  readonly at: Stretch;
  readonly residual: Float64Array;
  /** d ln f_n / d ln f1 as the force changes. */
  readonly direction: Float64Array;
  readonly perLength: Float64Array;
  readonly perStiffness: Float64Array;
  readonly perEnd1: Float64Array;
  readonly perEnd2: Float64Array;
  readonly covariance: Float64Array;
}

function createWork(count: number): Work {
  const empty = (): Float64Array => new Float64Array(count);
  return {
    at: { lnStretch: 0, perLnSlackness: 0, perFixity1: 0, perFixity2: 0 },
    residual: empty(),
    direction: empty(),
    perLength: empty(),
    perStiffness: empty(),
    perEnd1: empty(),
    perEnd2: empty(),
    covariance: new Float64Array(count * count),
  };
}

function fitOfNode({ partials, sharedRelativeU }: HeardSet, span: KnownSpan, node: ForceNode, work: Work) {
  const count = partials.length;
  const { at, residual, direction, perLength, perStiffness, perEnd1, perEnd2, covariance: C } = work;
  const lnLength = Math.log(span.spanLengthM);
  const lnBase = -Math.log(span.linearDensityKgPerM) / 2 - Math.LN2 - lnLength;
  const lowest = partials[0]!;
  const lnForce = lnForceAt({
    table: stretchTable(node.fixity, lowest.number),
    lnHz: Math.log(lowest.frequencyHz / lowest.number) - lnBase,
    lnBendingLength: node.lnStiffness / 2 - lnLength,
    at,
  });
  const lnSlackness = (node.lnStiffness - lnForce) / 2 - lnLength;
  readStretch(node.table, lnSlackness, at);
  const lnFirst = lnForce / 2 + lnBase + at.lnStretch;
  const perLnForce1 = 1 - at.perLnSlackness;
  const fromCells = 1 / Math.sqrt(12);
  for (let i = 0; i < count; i++) {
    const { number, frequencyHz } = partials[i]!;
    readStretch(stretchTable(node.fixity, number), lnSlackness, at);
    residual[i] = Math.log(frequencyHz / number) - (lnForce / 2 + lnBase + at.lnStretch);
    direction[i] = (1 - at.perLnSlackness) / perLnForce1;
    perLength[i] = (1 + at.perLnSlackness) * span.spanLengthRelativeU;
    perStiffness[i] = (at.perLnSlackness / 2) * node.widthLn * fromCells;
    perEnd1[i] = at.perFixity1 * node.width[0] * fromCells;
    perEnd2[i] = at.perFixity2 * node.width[1] * fromCells;
    if (node.alike) {
      perEnd1[i]! += perEnd2[i]!;
      perEnd2[i] = 0;
    }
  }
  const common = (span.linearDensityRelativeU / 2) ** 2 + sharedRelativeU ** 2;
  for (let i = 0; i < count; i++) {
    for (let k = 0; k <= i; k++) {
      C[i * count + k] =
        common +
        perLength[i]! * perLength[k]! +
        perStiffness[i]! * perStiffness[k]! +
        perEnd1[i]! * perEnd1[k]! +
        perEnd2[i]! * perEnd2[k]!;
    }
    const { number, relativeU } = partials[i]!;
    C[i * count + i]! += relativeU ** 2 + (MODEL_ERROR_EACH * number) ** 2;
  }
  const lnRoot = whiten(C, count, residual, direction);
  let A = 0;
  let B = 0;
  let left = 0;
  for (let i = 0; i < count; i++) {
    A += direction[i]! ** 2;
    B += direction[i]! * residual[i]!;
    left += residual[i]! ** 2;
  }
  return {
    lnFirstHz: lnFirst + B / A,
    lnFirstU: 1 / Math.sqrt(A),
    misfit: Math.max(0, left - (B * B) / A),
    lnVolume: lnRoot + Math.log(A) / 2,
  };
}

/**
 * ln T at which a partial lies where it was heard: Newton from the string's force downwards. ln f is convex in ln T, so no step overshoots; where no force is
 * low enough it ends at the slackest span there is.
 */
export function lnForceAt(given: { table: StretchTable; lnHz: number; lnBendingLength: number; at: Stretch }): number {
  const { table, lnHz, lnBendingLength, at } = given;
  const lowest = 2 * (lnBendingLength - LN_SLACKEST);
  let lnForce = 2 * lnHz;
  for (let step = 0; step < MOST_STEPS; step++) {
    readStretch(table, lnBendingLength - lnForce / 2, at);
    const change = (lnForce / 2 + at.lnStretch - lnHz) / ((1 - at.perLnSlackness) / 2);
    lnForce -= change;
    if (!(lnForce > lowest)) return lowest;
    if (Math.abs(change) < 1e-9) break;
  }
  return lnForce;
}

/** Cholesky's factor of C in place, and both vectors divided by it. @returns ½ ln |C| */
export function whiten(C: Float64Array, count: number, ...vectors: Float64Array[]): number {
  let lnRoot = 0;
  for (let i = 0; i < count; i++) {
    for (let k = 0; k <= i; k++) {
      let sum = C[i * count + k]!;
      for (let m = 0; m < k; m++) sum -= C[i * count + m]! * C[k * count + m]!;
      C[i * count + k] = i === k ? Math.sqrt(sum) : sum / C[k * count + k]!;
    }
    lnRoot += Math.log(C[i * count + i]!);
    for (const vector of vectors) {
      for (let m = 0; m < i; m++) vector[i]! -= C[i * count + m]! * vector[m]!;
      vector[i]! /= C[i * count + i]!;
    }
  }
  return lnRoot;
}
