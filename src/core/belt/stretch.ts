/** Longitudinal stiffness EA: how much a length of belt gives under weights. */

import { leastSquares } from '../math/least-squares.ts';
import type { Measured } from '../math/measured.ts';
import { coverageFactorOf } from '../math/propagation.ts';

export interface Stretching {
  /** Length between the two marks under the smallest weight, > 0. */
  readonly gaugeLengthM: Measured;
  /** At least three, two of them under different forces. The zero of the lengthening is anywhere. */
  readonly readings: readonly { readonly forceN: number; readonly lengtheningM: number }[];
  /** Of one reading of the lengthening, m: the step or the line of what it is read from, one standard deviation. */
  readonly readingUM: number;
  /** Relative standard uncertainty that all weights share. */
  readonly forceScaleRelativeU: number;
}

export interface LongitudinalStiffness {
  /** EA, N. */
  readonly longitudinalStiffnessN: Measured;
  /** Lengthening less the line, in the order of the readings, m. */
  readonly residualsM: readonly number[];
  /** EA near the smallest and the largest force, where the readings bend away from a line beyond chance. */
  readonly changesFrom?: { readonly lowN: number; readonly highN: number } | undefined;
}

/** A bend is named where it lies outside its 95 % interval. */
const BEND_COVERAGE = 0.95;

/**
 * A straight line through lengthening over force; its slope is L/EA.
 *
 * @returns `undefined` where the readings cannot tell a slope above nought
 */
export function longitudinalStiffness({
  gaugeLengthM,
  readings,
  readingUM,
  forceScaleRelativeU,
}: Stretching): LongitudinalStiffness | undefined {
  const forces = readings.map(({ forceN }) => forceN);
  if (readings.length < 3 || Math.max(...forces) <= Math.min(...forces)) return undefined;
  const line = polynomial(readings, 1, readingUM);
  const slope = line?.coefficients[1];
  if (!line || slope === undefined || !(slope.value > 0)) return undefined;
  const value = gaugeLengthM.value / slope.value;
  const relativeU = Math.hypot(
    slope.standardUncertainty / slope.value,
    gaugeLengthM.standardUncertainty / gaugeLengthM.value,
    forceScaleRelativeU,
  );
  return {
    longitudinalStiffnessN: { value, standardUncertainty: value * relativeU },
    residualsM: line.residuals,
    changesFrom: bend(readings, readingUM, gaugeLengthM.value),
  };
}

function bend(readings: Stretching['readings'], readingUM: number, lengthM: number): LongitudinalStiffness['changesFrom'] {
  if (readings.length < 5) return undefined;
  const curve = polynomial(readings, 2, readingUM);
  const [, first, second] = curve?.coefficients ?? [];
  if (!curve || !first || !second) return undefined;
  if (Math.abs(second.value) < coverageFactorOf(readings.length - 3, BEND_COVERAGE) * second.standardUncertainty) return undefined;
  const at = (forceN: number): number => lengthM / (first.value + 2 * second.value * forceN);
  const forces = readings.map(({ forceN }) => forceN);
  return { lowN: at(Math.min(...forces)), highN: at(Math.max(...forces)) };
}

/** Coefficients with the larger of the scatter's doubt and the reading's own. */
function polynomial(readings: Stretching['readings'], degree: number, readingUM: number) {
  const columns = degree + 1;
  const values = Float64Array.from(readings.flatMap(({ forceN }) => Array.from({ length: columns }, (_, k) => forceN ** k)));
  const fit = leastSquares(
    { rows: readings.length, columns, values },
    Float64Array.from(readings, ({ lengtheningM }) => lengtheningM),
  );
  if (!fit) return undefined;
  const residuals = readings.map(({ forceN, lengtheningM }) => lengtheningM - fit.solution.reduce((sum, c, k) => sum + c * forceN ** k, 0));
  const freedom = readings.length - columns;
  const scatter = freedom > 0 ? Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / freedom) : 0;
  const u = Math.max(scatter, readingUM);
  return {
    residuals,
    coefficients: Array.from(
      fit.solution,
      (value, k): Measured => ({
        value,
        standardUncertainty: u * Math.sqrt(fit.inverseNormal[k * columns + k]!),
      }),
    ),
  };
}
