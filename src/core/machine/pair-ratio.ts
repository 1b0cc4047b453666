/** The ratio of two belts' forces, far better known than either: density, stiffness and ends are inverted for both alike, and cancel as far as they are. */

import type { WeighedCell } from '../force/known-span.ts';
import { normalCdf } from '../math/normal.ts';
import { risingRoot } from '../math/root.ts';
import { type Conformance, conformance } from '../verdict/conformance.ts';
import { forceFromPartial } from '../vibration/beam.ts';
import { type ForceSlopes, forceSlopes } from '../vibration/beam-sensitivity.ts';
import { type Likeness, OWN_DOUBT, type OwnDoubt } from './alike-belts.ts';
import { type HeardBelt, sharedCells } from './shared-cells.ts';

export interface PairRatio {
  /** Force of the first over that of the second: median and 95 % interval. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Relative standard uncertainty, all together. */
  readonly relativeU: number;
  /** Of it, what no further pluck lowers. */
  readonly unlikeRelativeU: number;
  /** What `relativeU` would be on equal spans, the second as long as the first: missing where they are. */
  readonly onEqualSpansRelativeU?: number | undefined;
  /** Stiffness and ends as both belts leave them. */
  readonly cells: readonly WeighedCell[];
  /** Share of what is known of the ratio that lies below another. */
  readonly shareBelow: (ratio: number) => number;
  /** Shares of what is known of the ratio below, inside and above 1 ± tolerance. */
  readonly conformance: (tolerance: number) => Conformance;
}

/** Spans that differ by less than this share are as good as equal. */
const EQUAL_WITHIN = 0.005;
const QUANTILE = { low: 0.025, middle: 0.5, high: 0.975 } as const;
/** Width in the logarithm of the ratio at which a quantile is settled. */
const SETTLED = 1e-6;

/**
 * @param pair.belts           both with the same belt kind; stiffness and ends are taken from the first
 * @param pair.soundRelativeU  of the ratio of the two frequencies, as the plucks tell it
 * @returns undefined where no stiffness and ends leave room for both forces
 */
export function pairRatio(pair: {
  readonly belts: readonly [HeardBelt, HeardBelt];
  readonly likeness: Likeness;
  readonly soundRelativeU: number;
}): PairRatio | undefined {
  const { belts, likeness, soundRelativeU } = pair;
  const [one, other] = belts;
  const own = OWN_DOUBT[likeness];
  const cells = sharedCells(belts);
  const nodes = ratioNodes(cells, belts, own);
  if (nodes.length === 0) return undefined;
  const mixture = mixtureOf(nodes, soundRelativeU);
  const shareBelow = (of: number): number => mixture.below(Math.log(of));
  const equalSpans = Math.abs(one.span.spanLengthM / other.span.spanLengthM - 1) <= EQUAL_WITHIN;
  return {
    value: Math.exp(mixture.at(QUANTILE.middle)),
    low: Math.exp(mixture.at(QUANTILE.low)),
    high: Math.exp(mixture.at(QUANTILE.high)),
    relativeU: mixture.sd,
    unlikeRelativeU: mixtureOf(nodes, 0).sd,
    ...(equalSpans ? {} : { onEqualSpansRelativeU: onEqualSpans(cells, one, own, soundRelativeU) }),
    cells,
    shareBelow,
    conformance: (tolerance) => conformance(shareBelow, { low: 1 - tolerance, high: 1 + tolerance }),
  };
}

/** Under one cell ln(T1/T2) is normal; `perLnRatio` is its slope in the logarithm of the frequencies' ratio. */
interface RatioNode {
  readonly weight: number;
  readonly mean: number;
  readonly variance: number;
  readonly perLnRatio: number;
}

function ratioNodes(cells: readonly WeighedCell[], belts: readonly [HeardBelt, HeardBelt], own: OwnDoubt): RatioNode[] {
  return cells.flatMap((cell) => {
    const sides = belts.map((belt) => sideOf(cell, belt));
    const [one, other] = sides;
    if (!one || !other) return [];
    const variance = ownVariance(one, own) + ownVariance(other, own) + sharedVariance(cell, one, other);
    const perLnRatio = (one.slopes.perLnFrequency + other.slopes.perLnFrequency) / 2;
    return [{ weight: cell.weight, mean: one.lnForce - other.lnForce, variance, perLnRatio }];
  });
}

interface Side {
  readonly lnForce: number;
  readonly slopes: ForceSlopes;
  readonly spanLengthRelativeU: number;
  readonly linearDensityRelativeU: number;
}

function sideOf(cell: WeighedCell, { span, frequencyHz }: HeardBelt): Side | undefined {
  const { spanLengthM, linearDensityKgPerM, spanLengthRelativeU, linearDensityRelativeU } = span;
  const beam = {
    spanLengthM,
    linearDensityKgPerM,
    bendingStiffnessNm2: Math.exp(cell.lnStiffness),
    fixity: cell.fixity,
    number: 1,
  };
  const forceN = forceFromPartial({ ...beam, partialHz: frequencyHz });
  if (forceN === undefined || !(forceN > 0)) return undefined;
  return { lnForce: Math.log(forceN), slopes: forceSlopes({ ...beam, forceN }), spanLengthRelativeU, linearDensityRelativeU };
}

/** Of one belt alone: its span as it was measured, and what no belt shares with its like. */
function ownVariance({ slopes, spanLengthRelativeU }: Side, own: OwnDoubt): number {
  return (
    (slopes.perLnSpanLength * spanLengthRelativeU) ** 2 +
    (slopes.perLnLinearDensity * own.linearDensityRelative) ** 2 +
    (slopes.perLnBendingStiffness * own.bendingStiffnessRelative) ** 2 +
    ((slopes.perFixity[0] * own.fixity) ** 2 + (slopes.perFixity[1] * own.fixity) ** 2)
  );
}

/** What both share and what yet acts on them differently, since their spans or forces differ. */
function sharedVariance(cell: WeighedCell, one: Side, other: Side): number {
  const difference = (slope: (slopes: ForceSlopes) => number): number => slope(one.slopes) - slope(other.slopes);
  const even = 1 / Math.sqrt(12);
  const ends = [0, 1].map((end) => difference((slopes) => slopes.perFixity[end]!) * cell.width[end]! * even);
  const endsVariance = cell.alike ? (ends[0]! + ends[1]!) ** 2 : ends[0]! ** 2 + ends[1]! ** 2;
  return (
    (difference((slopes) => slopes.perLnLinearDensity) * Math.min(one.linearDensityRelativeU, other.linearDensityRelativeU)) ** 2 +
    (difference((slopes) => slopes.perLnBendingStiffness) * cell.widthLn * even) ** 2 +
    endsVariance
  );
}

function mixtureOf(nodes: readonly RatioNode[], soundRelativeU: number) {
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  const parts = nodes.map(({ weight, mean, variance, perLnRatio }) => ({
    weight: weight / total,
    mean,
    sd: Math.sqrt(variance + (perLnRatio * soundRelativeU) ** 2 + SETTLED ** 2),
  }));
  const below = (ln: number): number => parts.reduce((sum, { weight, mean, sd }) => sum + weight * normalCdf((ln - mean) / sd), 0);
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
  const sd = Math.sqrt(parts.reduce((sum, part) => sum + part.weight * (part.sd ** 2 + (part.mean - mean) ** 2), 0));
  const reach = Math.max(...parts.map((part) => Math.abs(part.mean - mean) + 6 * part.sd));
  const at = (share: number): number =>
    risingRoot({ value: (ln) => below(ln) - share, low: mean - reach, high: mean + reach, tolerance: SETTLED });
  return { below, at, sd };
}

/** As if the second belt had been plucked on a span like the first one's, under the first one's force. */
function onEqualSpans(cells: readonly WeighedCell[], one: HeardBelt, own: OwnDoubt, soundRelativeU: number): number {
  return mixtureOf(ratioNodes(cells, [one, one], own), soundRelativeU).sd;
}
