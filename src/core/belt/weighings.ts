/** Several weighings of one belt as one density, and whether that density is one to expect of it. */

import type { Measured } from '../math/measured.ts';
import { relativeUncertainty } from '../math/measured.ts';
import type { CatalogueBelt } from './catalogue.ts';
import { type WeighedDensity, type Weighing, weighedDensity } from './density.ts';

export interface CombinedWeighings {
  readonly linearDensityKgPerM: Measured;
  readonly single: readonly WeighedDensity[];
  /** Whether the weighings lie as near to each other as their doubts let expect. */
  readonly agree: boolean;
}

/** Weighings on one scale share its gain, and all share the air's lift: no number of them goes below this (our judgement). */
const SHARED_RELATIVE_U = 0.001;
/** χ² over its degrees of freedom beyond which the weighings do not agree: seldom exceeded by chance for two and more. */
const AGREE_BELOW = 4;

/** @param weighings  at least one */
export function combinedWeighings(weighings: readonly Weighing[]): CombinedWeighings {
  if (weighings.length === 0) throw new RangeError('combinedWeighings needs at least one weighing');
  const single = weighings.map(weighedDensity);
  const densities = single.map(({ linearDensityKgPerM }) => linearDensityKgPerM);
  const first = densities[0]!;
  if (densities.length === 1) return { linearDensityKgPerM: first, single, agree: true };
  const weights = densities.map(({ standardUncertainty }) => standardUncertainty ** -2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const value = densities.reduce((sum, density, i) => sum + weights[i]! * density.value, 0) / total;
  const spread = densities.reduce((sum, density, i) => sum + weights[i]! * (density.value - value) ** 2, 0) / (densities.length - 1);
  const own = Math.sqrt(Math.max(1, spread) / total);
  return {
    linearDensityKgPerM: { value, standardUncertainty: Math.hypot(own, SHARED_RELATIVE_U * value) },
    single,
    agree: spread < AGREE_BELOW,
  };
}

export interface UnexpectedDensity {
  /** What the catalogue lets one expect, kg/m. */
  readonly low: number;
  readonly high: number;
  /** Belts of the catalogue that weigh as much, nearest first: another width or pitch than was thought. */
  readonly looksLike: readonly CatalogueBelt[];
}

/** Pitches within this share count as one. */
const SAME_PITCH_RELATIVE = 0.02;
const COVERAGE_FACTOR = 2;

/** Undefined where the density may be that of its row, or without a row of any belt of its pitch. */
export function unexpectedDensity(
  density: Measured,
  about: {
    readonly row?: CatalogueBelt | undefined;
    readonly toothPitchM?: number | undefined;
    readonly catalogue: readonly CatalogueBelt[];
  },
): UnexpectedDensity | undefined {
  const { row, toothPitchM, catalogue } = about;
  const alike = catalogue.filter(
    (belt) => toothPitchM !== undefined && Math.abs(belt.toothPitchM / toothPitchM - 1) <= SAME_PITCH_RELATIVE,
  );
  const company = row ? [row] : alike.length > 0 ? alike : catalogue;
  const ranges = company.map(expectedOf);
  const low = Math.min(...ranges.map((range) => range.low));
  const high = Math.max(...ranges.map((range) => range.high));
  const half = COVERAGE_FACTOR * density.standardUncertainty;
  if (density.value + half >= low && density.value - half <= high) return undefined;
  const looksLike = catalogue
    .filter((belt) => !company.includes(belt))
    .filter((belt) => density.value >= expectedOf(belt).low && density.value <= expectedOf(belt).high)
    .sort((a, b) => distance(density, a) - distance(density, b));
  return { low, high, looksLike };
}

const expectedOf = ({ linearDensityKgPerM: { value, standardUncertainty: u } }: CatalogueBelt) => ({
  low: value - COVERAGE_FACTOR * u,
  high: value + COVERAGE_FACTOR * u,
});

const distance = ({ value }: Measured, { linearDensityKgPerM: other }: CatalogueBelt): number =>
  Math.abs(Math.log(value / other.value)) / relativeUncertainty(other);
