/** Which single cause explains the differences best, by its mark and its size; or which cannot be told apart, and what to measure for it. */

import { coverageFactorOf } from '../math/propagation.ts';
import { CAUSES, type Cause, type CauseId } from './causes.ts';
import type { KnownForceTake } from './known-take.ts';

export interface WeighedCause {
  readonly id: CauseId | 'none';
  /** Probability among the causes that were tried and none. */
  readonly probability: number;
  /** Size that fits best, in the unit of its kind, with half its 95 % interval; of 'none' missing. */
  readonly size?: { readonly value: number; readonly u95: number } | undefined;
  /** The size lies within the doubt that the input was told with: nothing is wrong, it only could be known better. */
  readonly isWithinTold?: boolean | undefined;
}

export interface CauseReport {
  /** Likeliest first. */
  readonly causes: readonly WeighedCause[];
  /** The likeliest one, where it is clearly ahead of every other that would need something else to be put right. */
  readonly likely?: WeighedCause | undefined;
  /** What would tell the foremost causes apart; missing where one is ahead. */
  readonly next?: 'another-span' | 'another-force' | 'more-takes' | undefined;
}

/** From here on one cause is called the likely one. */
const CLEAR = 0.7;
/** Causes that belong to the question which it is. */
const IN_QUESTION = 0.1;
/** Two takes on spans or forces closer than this, relative, count as one. */
const ALIKE = 0.15;
const FEWEST_TAKES = 3;
/** A take's own scatter is no smaller than this, relative (our judgement: place of the pluck, hook that swings). */
const SMALLEST_RELATIVE_U = 0.003;

interface Difference {
  readonly take: KnownForceTake;
  readonly logRatio: number;
  readonly standardUncertainty: number;
}

/** @param takes  with a force each; below three nothing is said */
export function likelyCause(takes: readonly KnownForceTake[]): CauseReport | undefined {
  if (takes.length < FEWEST_TAKES) return undefined;
  const told = takes.map(differenceOf);
  const scale = scatterOf(told);
  const scored = CAUSES.map((cause) => scoredCause(cause, told, scale));
  const all = [{ id: 'none' as const, logEvidence: -squares(told, scale) / 2 }, ...scored];
  const most = Math.max(...all.map(({ logEvidence }) => logEvidence));
  const total = all.reduce((sum, { logEvidence }) => sum + Math.exp(logEvidence - most), 0);
  const causes: WeighedCause[] = all
    .map(({ logEvidence, ...cause }) => ({ ...cause, probability: Math.exp(logEvidence - most) / total }))
    .sort((a, b) => b.probability - a.probability);
  const [first] = causes;
  if (first && first.probability >= CLEAR) return { causes, likely: first };
  return { causes, next: nextOf(takes, causes) };
}

function differenceOf(take: KnownForceTake): Difference {
  const { forceN, frequencyRelativeU } = take.heard!;
  const own = Math.hypot(2 * frequencyRelativeU, take.knownForceN.standardUncertainty / take.knownForceN.value, SMALLEST_RELATIVE_U);
  return { take, logRatio: Math.log(forceN.value / take.knownForceN.value), standardUncertainty: own };
}

/** Scatter that no single cause explains, over the takes' own doubt, at least 1. */
function scatterOf(told: readonly Difference[]): number {
  const left = CAUSES.map((cause) => {
    const { a, b, r } = sumsOf(cause, told, 1);
    return r - (b * b) / a;
  });
  return Math.max(1, Math.sqrt(Math.min(...left) / (told.length - 1)));
}

const squares = (told: readonly Difference[], scale: number): number =>
  told.reduce((sum, { logRatio, standardUncertainty: u }) => sum + (logRatio / (scale * u)) ** 2, 0);

function sumsOf(cause: Cause, told: readonly Difference[], scale: number): { a: number; b: number; r: number } {
  let [a, b] = [0, 0];
  for (const { take, logRatio, standardUncertainty } of told) {
    const weight = 1 / (scale * standardUncertainty) ** 2;
    const mark = cause.mark(take);
    a += weight * mark * mark;
    b += weight * mark * logRatio;
  }
  return { a, b, r: squares(told, scale) };
}

/** Evidence of a cause whose size is normal about nothing with its usual size: small where it fits badly, or only with an unusual size. */
function scoredCause(cause: Cause, told: readonly Difference[], scale: number) {
  const { a, b, r } = sumsOf(cause, told, scale);
  const spread = cause.usualSize ** 2;
  const logEvidence = -0.5 * (Math.log(1 + spread * a) + r - (spread * b * b) / (1 + spread * a));
  const factor = coverageFactorOf(told.length - 1, 0.95);
  const value = b / a;
  const isWithinTold = told.every(({ take }) => Math.abs(value) <= cause.toldU95(take));
  return { id: cause.id, logEvidence, size: { value, u95: factor / Math.sqrt(a) }, isWithinTold };
}

/** Marks of causes part by span or by force; where both were varied, only more takes help. */
function nextOf(takes: readonly KnownForceTake[], causes: readonly WeighedCause[]): CauseReport['next'] {
  const varies = (values: readonly number[]) => Math.max(...values) / Math.min(...values) > 1 + ALIKE;
  const foremost = causes.filter(({ probability, id }) => probability >= IN_QUESTION && id !== 'none').map(({ id }) => id);
  const asksSpan = foremost.some((id) => id === 'span-length' || id === 'ends');
  if (asksSpan && !varies(takes.map(({ spanLengthM }) => spanLengthM.value))) return 'another-span';
  const asksForce = foremost.some((id) => id === 'forgotten-weight' || id === 'ends');
  if (asksForce && !varies(takes.map(({ knownForceN }) => knownForceN.value))) return 'another-force';
  return 'more-takes';
}
