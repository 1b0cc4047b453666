/** Density, stiffness and fixity of a belt from plucks under known forces: the best fit, and what it leaves open, each with a 95 % interval. */

import type { LeastSquaresFit } from '../math/nonlinear-least-squares.ts';
import { normalCdf } from '../math/normal.ts';
import { type BenchData, checkBenchData } from './bench-data.ts';
import { type BenchModel, benchModel, LN_DENSITY, LN_STIFFNESS } from './bench-model.ts';
import { type BenchValue, covarianceOver, exponential, fitBetween, overSlices, sdOf, slicesOf } from './bench-slices.ts';

export interface BenchFit {
  readonly linearDensityKgPerM: BenchValue;
  readonly bendingStiffnessNm2: BenchValue;
  /** Mean of the two ends, 0 hinged to 1 clamped. */
  readonly fixity: BenchValue;
  /** φ sqrt(EI), N^½ m: divided by sqrt(T) it is the length by which each end shortens the span. */
  readonly endEffect: BenchValue;
  /** Of ln density, ln stiffness and fixity, by rows [9]. */
  readonly covariance: Float64Array;
  /** Correlation of every shared error with ln density, ln stiffness and fixity at the best fit; places as in `model`. */
  readonly best: LeastSquaresFit;
  readonly model: BenchModel;
  /** In the order of takes and their partials. */
  readonly residuals: readonly BenchResidual[];
  /** Share of belts that obey the beam and would fit worse than this one. */
  readonly fitProbability: number;
}

export interface BenchResidual {
  readonly take: number;
  readonly number: number;
  /** Heard over fitted, less 1, shared errors as fitted. */
  readonly relative: number;
  /** The partial's own relative standard uncertainty. */
  readonly relativeU: number;
}

/** The ridge between stiffness and fixity may have more than one foot. */
const STARTS = [0.05, 0.5, 0.95];
/** Below this chance the intervals widen by what is left over (Birge's ratio); so seldom would it be chance. */
const WIDEN_BELOW = 0.05;
/** With fewer degrees of freedom what is left over says little of the doubts. */
const LEAST_FREEDOM = 4;

/**
 * @returns `undefined` where no take holds a partial, or the search came to no rest
 * @throws RangeError where a quantity is out of its range
 */
export function benchFit(data: BenchData): BenchFit | undefined {
  checkBenchData(data);
  const model = benchModel(data);
  if (model.heardCount === 0) return undefined;
  const best = STARTS.map((fixity) => fitBetween(model, model.start(fixity), 0, 1))
    .filter((fit) => fit !== undefined)
    .sort((a, b) => a.sumOfSquares - b.sumOfSquares)[0];
  if (!best) return undefined;
  const slices = slicesOf(model, best);
  if (slices.length === 0) return undefined;
  const fitProbability = chanceOfMore(best.sumOfSquares, best.degreesOfFreedom);
  const widening =
    fitProbability < WIDEN_BELOW && best.degreesOfFreedom >= LEAST_FREEDOM ? Math.sqrt(best.sumOfSquares / best.degreesOfFreedom) : 1;
  const of = (place: number): BenchValue =>
    exponential(
      overSlices(
        slices,
        (at) => at.fit.parameters[place]!,
        (at) => sdOf(at.fit, place),
        widening,
      ),
    );
  return {
    linearDensityKgPerM: of(LN_DENSITY),
    bendingStiffnessNm2: of(LN_STIFFNESS),
    fixity: withinBounds(
      overSlices(
        slices,
        (at) => at.fixity,
        () => 0,
        widening,
      ),
    ),
    endEffect: exponential(
      overSlices(
        slices,
        (at) => Math.log(Math.max(at.fixity, LEAST_FIXITY)) + at.fit.parameters[LN_STIFFNESS]! / 2,
        (at) => sdOf(at.fit, LN_STIFFNESS) / 2,
        widening,
      ),
    ),
    covariance: covarianceOver(slices, widening),
    best,
    model,
    residuals: residualsOf(data, best),
    fitProbability,
  };
}

/** An end effect is told by its logarithm; a hinged end has one of so little. */
const LEAST_FIXITY = 1e-4;

function withinBounds({ value, low, high, standardUncertainty }: BenchValue): BenchValue {
  const inside = (fixity: number): number => Math.min(1, Math.max(0, fixity));
  return { value: inside(value), low: inside(low), high: inside(high), standardUncertainty };
}

function residualsOf(data: BenchData, best: LeastSquaresFit): BenchResidual[] {
  // Whitened residuals of a take mix its partials: reckon anew with each partial alone.
  const alone = {
    ...data,
    takes: data.takes.flatMap((take) => take.partials.map((partial) => ({ ...take, partials: [partial], sharedRelativeU: 0 }))),
  };
  const places = data.takes.flatMap((take, index) =>
    take.partials.map(({ number, frequencyHz }) => ({ take: index, number, frequencyHz })),
  );
  const values = benchModel(alone).residualsAt(best.parameters)?.values;
  return places.map(({ take, number, frequencyHz }, i) => {
    const relativeU = frequencyHz.standardUncertainty / frequencyHz.value;
    return { take, number, relative: -(values?.[i] ?? 0) * relativeU, relativeU };
  });
}

/** Share of χ² above a value, by Wilson's and Hilferty's cube root (Proc. Natl. Acad. Sci. 17 (1931) 684): within 0.002 from 3 degrees on. */
function chanceOfMore(square: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom <= 0) return 1;
  const spread = 2 / (9 * degreesOfFreedom);
  return 1 - normalCdf((Math.cbrt(square / degreesOfFreedom) - (1 - spread)) / Math.sqrt(spread));
}
