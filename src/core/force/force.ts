/** From the partials to the force, with the 95 % interval that holds when ends and stiffness are hardly known. */

import { normalCdf } from '../math/normal.ts';
import { risingRoot } from '../math/root.ts';
import type { ForceN } from '../outcome.ts';
import type { EndFixities } from '../vibration/beam-phase.ts';
import type { KnownSpan } from './known-span.ts';
import { type HeardSet, type Judged, type JudgedNode, judgedNodes } from './partial-nodes.ts';
import { readStretch, type Stretch, type StretchTable, stretchTable } from './stretch-table.ts';

/** Relative standard uncertainties of a fundamental, by where they come from. */
export interface FrequencyDoubt {
  /** Of the sound within the plucks. */
  readonly withinRelative: number;
  /** Of how plucks repeat. */
  readonly repeatabilityRelative: number;
  /** ν of how plucks repeat; known where missing. */
  readonly repeatabilityDegreesOfFreedom?: number | undefined;
  /** Of taking the frequency to small amplitude. */
  readonly amplitudeRelative: number;
  /** Of the beam as a picture of the belt; none where it is not told. */
  readonly modelRelative?: number | undefined;
}

export const totalDoubt = (doubt: FrequencyDoubt): number =>
  Math.hypot(doubt.withinRelative, doubt.repeatabilityRelative, doubt.amplitudeRelative, doubt.modelRelative ?? 0);

export interface HeardFrequency {
  /** First partial at small amplitude, undamped, > 0. */
  readonly frequencyHz: number;
  /** Relative standard uncertainty of it, all doubts together. */
  readonly relativeU: number;
}

/** One cell of stiffness and ends with its share of the weight. */
export interface ForceNode {
  readonly fixity: EndFixities;
  /** Of the first partial. */
  readonly table: StretchTable;
  readonly lnStiffness: number;
  readonly widthLn: number;
  readonly width: readonly [number, number];
  readonly alike: boolean;
  readonly weight: number;
  /** 2 π L² sqrt(μ/EI) f of the first mode without force. */
  readonly slackProduct: number;
}

/** First roots of the beam without force: π² hinged, one clamped end (tan = tanh), two (cos cosh = 1); any other end turns hinged. */
const SLACK_PRODUCT = { hinged: Math.PI ** 2, oneClamped: 3.926602312047919 ** 2, clamped: 4.730040744862704 ** 2 } as const;
const LOW = 0.025;
const HIGH = 0.975;
/** Width in ln T at which a bound is settled. */
const SETTLED = 1e-6;

/**
 * What a fundamental tells of the force: median and 95 % interval. A bound is missing where it would be no force at all.
 *
 * @returns `undefined` where the sound is so low that hardly any stiffness and ends allow a force
 */
export function forceFromFrequency(heard: HeardFrequency, span: KnownSpan): ForceN | undefined {
  return forceOfNodes(heard, span, forceNodes(span));
}

/** Every cell of stiffness with every cell of ends. */
export function forceNodes(span: KnownSpan): ForceNode[] {
  return span.ends.flatMap((ends) => {
    const table = stretchTable(ends.fixity);
    const clampedEnds = ends.fixity.filter((φ) => φ === 1).length;
    const slackProduct = [SLACK_PRODUCT.hinged, SLACK_PRODUCT.oneClamped, SLACK_PRODUCT.clamped][clampedEnds]!;
    return span.stiffness.map((cell) => ({
      fixity: ends.fixity,
      table,
      slackProduct,
      lnStiffness: cell.lnStiffness,
      widthLn: cell.widthLn,
      width: ends.width,
      alike: ends.alike,
      weight: cell.weight * ends.weight,
    }));
  });
}

/** The same with the nodes given. */
export function forceOfNodes(heard: HeardFrequency, span: KnownSpan, nodes: readonly ForceNode[]): ForceN | undefined {
  return intervalOf({
    none: shareWithoutForce(heard, span, nodes),
    below: (forceN) => shareBelow(forceN, heard, span, nodes),
    stringForceN: 4 * span.linearDensityKgPerM * (span.spanLengthM * heard.frequencyHz) ** 2,
  });
}

/** A force with what the partials made of the cells of stiffness and ends. */
export interface ForceFromPartials extends Judged {
  readonly forceN: ForceN | undefined;
}

/** What several partials tell of the force: median and 95 % interval; among stiffness and ends those count that the partials fit. */
export function forceFromPartials(heard: HeardSet, span: KnownSpan, prior: readonly ForceNode[] = forceNodes(span)): ForceFromPartials {
  const judged = judgedNodes(heard, span, prior);
  const lowest = heard.partials[0]!;
  const forceN = intervalOf({
    none: shareOfJudgedWithoutForce(span, judged.nodes),
    below: (forceN) => shareOfJudgedBelow(forceN, span, judged.nodes),
    stringForceN: 4 * span.linearDensityKgPerM * ((span.spanLengthM * lowest.frequencyHz) / lowest.number) ** 2,
  });
  return { ...judged, forceN };
}

/** Median and bounds of a distribution of the force. @param of.none  what `below` comes to as the force goes to nothing */
function intervalOf(of: {
  readonly none: number;
  readonly below: (forceN: number) => number;
  readonly stringForceN: number;
}): ForceN | undefined {
  const { none } = of;
  if (none >= HIGH) return undefined;
  const at = (share: number): number | undefined => forceQuantile(share, of.below, of.stringForceN);
  // Where it is even odds that there is no force at all, the median of those forces that there are.
  const value = at(none < 0.5 ? 0.5 : (1 + none) / 2);
  if (value === undefined) return undefined;
  const low = none < LOW ? at(LOW) : undefined;
  const high = at(HIGH);
  return { value, low, high, u95: low === undefined || high === undefined ? undefined : Math.max(value - low, high - value) };
}

/**
 * Share of what is known that lies below a force: Σ w Φ(ln(F(T)/f) / s), F the first partial that the node's span would have under T.
 *
 * Closed in ln f, ln μ and ln L and in the width of the cells, all linear inside a node (slopes ½, 1 + e, e/2, g, taken at T itself), so
 * that nothing is inverted and slack spans behave: propagation of distributions, JCGM 101:2008, without drawing.
 */
export function shareBelow(forceN: number, heard: HeardFrequency, span: KnownSpan, nodes: readonly ForceNode[]): number {
  const lnForce = Math.log(forceN);
  const lnLength = Math.log(span.spanLengthM);
  const lnString = (lnForce - Math.log(span.linearDensityKgPerM)) / 2 - Math.LN2 - lnLength;
  const lnHeard = Math.log(heard.frequencyHz);
  const fixed = heard.relativeU ** 2 + (span.linearDensityRelativeU / 2) ** 2;
  const at: Stretch = { lnStretch: 0, perLnSlackness: 0, perFixity1: 0, perFixity2: 0 };
  let share = 0;
  for (const node of nodes) {
    readStretch(node.table, (node.lnStiffness - lnForce) / 2 - lnLength, at);
    const e = at.perLnSlackness;
    const end1 = at.perFixity1 * node.width[0];
    const end2 = at.perFixity2 * node.width[1];
    const ends = node.alike ? (end1 + end2) ** 2 : end1 * end1 + end2 * end2;
    const cell = ((e * node.widthLn) / 2) ** 2 + ends;
    const variance = fixed + ((1 + e) * span.spanLengthRelativeU) ** 2 + cell / 12;
    share += node.weight * shareOfNormal(lnString + at.lnStretch - lnHeard, variance);
  }
  return share;
}

/** What `shareBelow` comes to as the force goes to nothing: the share of stiffness and ends that leave no room for a force. */
export function shareWithoutForce(heard: HeardFrequency, span: KnownSpan, nodes: readonly ForceNode[]): number {
  const { spanLengthM: L, linearDensityKgPerM: μ } = span;
  const lnProduct = Math.log(2 * Math.PI * heard.frequencyHz * L * L) + Math.log(μ) / 2;
  const fixed = heard.relativeU ** 2 + (span.linearDensityRelativeU / 2) ** 2 + (2 * span.spanLengthRelativeU) ** 2;
  let share = 0;
  for (const node of nodes) {
    const lead = Math.log(node.slackProduct) + node.lnStiffness / 2 - lnProduct;
    share += node.weight * shareOfNormal(lead, fixed + node.widthLn ** 2 / 48);
  }
  return share;
}

/** Share of the judged cells that lies below a force: in each, ln f1 is normal and the first partial rises with the force. */
function shareOfJudgedBelow(forceN: number, span: KnownSpan, nodes: readonly JudgedNode[]): number {
  const lnForce = Math.log(forceN);
  const lnLength = Math.log(span.spanLengthM);
  const lnString = (lnForce - Math.log(span.linearDensityKgPerM)) / 2 - Math.LN2 - lnLength;
  const at: Stretch = { lnStretch: 0, perLnSlackness: 0, perFixity1: 0, perFixity2: 0 };
  let share = 0;
  for (const { node, weight, lnFirstHz, lnFirstU } of nodes) {
    readStretch(node.table, (node.lnStiffness - lnForce) / 2 - lnLength, at);
    share += weight * normalCdf((lnString + at.lnStretch - lnFirstHz) / lnFirstU);
  }
  return share;
}

function shareOfJudgedWithoutForce(span: KnownSpan, nodes: readonly JudgedNode[]): number {
  const lnBase = -Math.log(2 * Math.PI * span.spanLengthM ** 2) - Math.log(span.linearDensityKgPerM) / 2;
  return nodes.reduce(
    (share, { node, weight, lnFirstHz, lnFirstU }) =>
      share + weight * normalCdf((Math.log(node.slackProduct) + node.lnStiffness / 2 + lnBase - lnFirstHz) / lnFirstU),
    0,
  );
}

/** Beyond e^12 times the string's force, or below e^-40 N, there is nothing to be looked for: so vague a sound has no such bound. */
const FARTHEST = { aboveString: 12, belowLn: -40 } as const;

function forceQuantile(share: number, below: (forceN: number) => number, stringForceN: number): number | undefined {
  const value = (lnForce: number): number => below(Math.exp(lnForce)) - share;
  const string = Math.log(stringForceN); // no stiffness leaves room for more than the string's force
  let high = string;
  let low = high;
  for (let step = 0.05; value(high) < 0; step *= 2) {
    if (high > string + FARTHEST.aboveString) return undefined;
    high += step;
  }
  for (let step = 0.1; low > FARTHEST.belowLn && value(low) > 0; step *= 2) low -= step;
  return value(low) > 0 ? undefined : Math.exp(risingRoot({ value, low, high, tolerance: SETTLED }));
}

const shareOfNormal = (lead: number, variance: number): number => (variance > 0 ? normalCdf(lead / Math.sqrt(variance)) : lead > 0 ? 1 : 0);
