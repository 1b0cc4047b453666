/** All that is known of a span besides its sound, in the form in which the force is reckoned from it. */

import { type Measured, relativeUncertainty } from '../math/measured.ts';
import type { SpanSetup } from '../setup.ts';
import type { BeamSpan } from '../vibration/beam.ts';
import { type EndsCell, endsCells, type StiffnessCell, stiffnessCells } from './prior.ts';

export interface KnownSpan {
  readonly spanLengthM: number;
  /** Relative standard uncertainty; read as log-normal. */
  readonly spanLengthRelativeU: number;
  readonly linearDensityKgPerM: number;
  /** Relative standard uncertainty, the air that moves along included; read as log-normal. */
  readonly linearDensityRelativeU: number;
  /** EA, where it was measured. */
  readonly axialStiffnessN?: Measured | undefined;
  readonly stiffness: readonly StiffnessCell[];
  readonly ends: readonly EndsCell[];
}

/** Middle and spread of stiffness and ends: what first-order propagation, and anything that needs one span instead of all, goes by. */
export interface CentralSpan extends Omit<BeamSpan, 'number'> {
  /** Standard deviation of ln EI; 0 where the belt has none. */
  readonly lnStiffnessU: number;
  readonly fixityU: readonly [number, number];
  /** Covariance of the two ends' fixities. */
  readonly fixityCovariance: number;
  /** Covariance of ln EI with each fixity: none before partials were heard, which tell their product better than either. */
  readonly stiffnessCovariance: readonly [number, number];
}

/**
 * Air moves with the belt, about ρ π w²/4 per metre: 0.2 to 0.8 % of the mass of belts up to 10 mm wide. It is not added, since the width is
 * not known here, but counts as this relative standard uncertainty of the density.
 */
export const AIR_LOAD_RELATIVE_U = 0.0025;

/** `undefined` where the span's length or the belt's density was not told: then sound cannot say a force. */
export function knownSpan(setup: SpanSetup): KnownSpan | undefined {
  const { spanLengthM, belt } = setup;
  if (spanLengthM === undefined || belt === undefined) return undefined;
  return {
    spanLengthM: spanLengthM.value,
    spanLengthRelativeU: relativeUncertainty(spanLengthM),
    linearDensityKgPerM: belt.linearDensityKgPerM.value,
    linearDensityRelativeU: Math.hypot(relativeUncertainty(belt.linearDensityKgPerM), AIR_LOAD_RELATIVE_U),
    axialStiffnessN: belt.axialStiffnessN,
    stiffness: stiffnessCells(belt.bendingStiffnessNm2),
    ends: endsCells(setup.ends),
  };
}

/** A cell of stiffness and ends together with its weight, as the prior or as heard partials give it. */
export interface WeighedCell extends Omit<StiffnessCell, 'weight'>, Omit<EndsCell, 'weight'> {
  readonly weight: number;
}

/** What is known before anything was heard. */
export const centralSpan = (span: KnownSpan): CentralSpan =>
  centralOfCells(
    span,
    span.ends.flatMap((ends) => span.stiffness.map((cell) => ({ ...ends, ...cell, weight: ends.weight * cell.weight }))),
  );

/** Mean of ln EI and of each fixity, with their spread inside and between the cells. */
export function centralOfCells(span: KnownSpan, cells: readonly WeighedCell[]): CentralSpan {
  const stiff = cells.filter((cell) => cell.lnStiffness > -Infinity);
  const lnStiffness = average(stiff, (cell) => cell.lnStiffness);
  const lnVariance = average(stiff, (cell) => (cell.lnStiffness - lnStiffness) ** 2 + cell.widthLn ** 2 / 12);
  const mean = (end: 0 | 1): number => average(cells, (cell) => cell.fixity[end]);
  const φ = [mean(0), mean(1)] as const;
  // Cells that stand for both orders of the ends are told once: read them both ways.
  const middle = (φ[0] + φ[1]) / 2;
  const symmetric = span.ends.some((cell) => cell.alike);
  const centre: readonly [number, number] = symmetric ? [middle, middle] : φ;
  const variance = (end: 0 | 1): number => average(cells, (cell) => (cell.fixity[end] - centre[end]) ** 2 + cell.width[end] ** 2 / 12);
  const own = [variance(0), variance(1)] as const;
  const covariance = average(
    cells,
    (cell) => (cell.fixity[0] - centre[0]) * (cell.fixity[1] - centre[1]) + (cell.alike ? cell.width[0] ** 2 / 12 : 0),
  );
  const withStiffness = (end: 0 | 1): number =>
    average(stiff, (cell) => (cell.lnStiffness - lnStiffness) * (cell.fixity[end] - centre[end]));
  const both = <T>(one: T, other: T, shared: T): readonly [T, T] => (symmetric ? [shared, shared] : [one, other]);
  const [first, second] = [withStiffness(0), withStiffness(1)];
  return {
    spanLengthM: span.spanLengthM,
    linearDensityKgPerM: span.linearDensityKgPerM,
    bendingStiffnessNm2: stiff.length === 0 ? 0 : Math.exp(lnStiffness),
    fixity: centre,
    lnStiffnessU: stiff.length === 0 ? 0 : Math.sqrt(lnVariance),
    fixityU: both(Math.sqrt(own[0]), Math.sqrt(own[1]), Math.sqrt((own[0] + own[1]) / 2)),
    fixityCovariance: covariance,
    stiffnessCovariance: both(first, second, (first + second) / 2),
  };
}

function average<Cell extends { readonly weight: number }>(cells: readonly Cell[], value: (cell: Cell) => number): number {
  const total = cells.reduce((sum, cell) => sum + cell.weight, 0);
  return total === 0 ? 0 : cells.reduce((sum, cell) => sum + cell.weight * value(cell), 0) / total;
}
