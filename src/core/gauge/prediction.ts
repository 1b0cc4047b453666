/** From a single new reading back to the force, with the interval that holds it. */

import { quadraticForm } from '../math/refined-least-squares.ts';
import { studentCoverage } from '../math/student-t.ts';
import type { Components } from './components.ts';
import type { Fit } from './fit.ts';
import { type LoadedReading, positionsBy, type SharedForceDoubt } from './loaded-reading.ts';
import type { Whitening } from './whitening.ts';

export interface ConvertedForce {
  readonly forceN: number;
  readonly lowN: number;
  readonly highN: number;
  /** The larger half of the interval. */
  readonly u95N: number;
}

const COVERAGE = 0.95;

/** What is not known of a single new reading at a force, divisions. */
interface Doubt {
  /** Standard uncertainty of the normal part. */
  readonly u: number;
  readonly degreesOfFreedom: number;
  /** Half of the gap between the directions; the reading may be of either. */
  readonly halfGap: number;
  /** The reading was rounded to within this. */
  readonly halfStep: number;
}

export interface Predicting {
  readonly fit: Fit;
  readonly rows: readonly LoadedReading[];
  readonly components: Components;
  readonly shared: SharedForceDoubt;
  /** How far the curve may lie off between its knots, divisions. */
  readonly between: (forceN: number) => number;
  readonly whitening: Whitening;
}

export interface Prediction {
  readonly doubtAt: (forceN: number) => Doubt;
  /** Half width of the interval of a single reading at a force, divisions. */
  readonly halfWidthAt: (forceN: number) => number;
  /** Force at a reading on the curve's own range, and a little beyond it; undefined where no force gives it. */
  readonly forceOf: (reading: number) => ConvertedForce | undefined;
}

/** Forces at which the half width is computed; between them it goes straight. */
const GRID = 48;
/** What two ways of drawing the curve differ by, in standard uncertainties: by trial on curves of known shape. */
const BETWEEN_PER_U = 1.5;
/** How far beyond the loads an interval may reach, in spans of the loads. */
const REACH = 0.6;

/** @param direction  +1 where the reading rises with the force, −1 where it falls */
export function predictionOf(told: Predicting, direction: number): Prediction {
  const { fit, rows, components, shared, between } = told;
  const { curve } = fit;
  const forces = rows.map(({ forceN }) => forceN);
  const [lowest, largest] = [Math.min(...forces), Math.max(...forces)];
  const covariance = parameterCovariance(told);

  const doubtAt = (forceN: number): Doubt => {
    const inside = Math.min(Math.max(forceN, lowest), largest);
    const { scatter, unrounded, halfStep, load, series, shape, halfGap } = components;
    const single = unrounded * shape(inside) ** 2;
    const mean = Math.max(0, quadraticForm(covariance, curve.gradient(forceN)));
    const parts = [
      { variance: single + mean, degreesOfFreedom: scatter.degreesOfFreedom },
      load,
      series,
      { variance: (between(inside) / BETWEEN_PER_U) ** 2, degreesOfFreedom: Infinity },
    ];
    const variance = parts.reduce((sum, part) => sum + part.variance, 0);
    const fourths = parts.reduce((sum, part) => sum + part.variance ** 2 / part.degreesOfFreedom, 0);
    const degreesOfFreedom = fourths > 0 ? Math.max(1, variance ** 2 / fourths) : 1e6;
    return { u: Math.sqrt(variance), degreesOfFreedom: Math.min(degreesOfFreedom, 1e6), halfGap: Math.abs(halfGap(inside)), halfStep };
  };

  const [start, end] = [lowest - REACH * (largest - lowest), largest + REACH * (largest - lowest)];
  const widths = Float64Array.from({ length: GRID + 1 }, (_, k) => halfWidth(doubtAt(start + ((end - start) * k) / GRID)));
  const halfWidthAt = (forceN: number): number => {
    const position = (Math.min(Math.max(forceN, start), end) - start) / ((end - start) / GRID);
    const k = Math.min(GRID - 1, Math.floor(position));
    return widths[k]! + (position - k) * (widths[k + 1]! - widths[k]!);
  };

  const forceOf = (reading: number): ConvertedForce | undefined => {
    const above = (forceN: number): number => direction * (curve.reading(forceN) - reading);
    const forceN = crossing(above, lowest, largest);
    if (forceN === undefined) return undefined;
    // The interval: forces whose single readings may well have been this one.
    const offMiddle = (F: number): number => above(F) + direction * components.middle(Math.min(Math.max(F, lowest), largest));
    const low = edge((F) => halfWidthAt(F) + offMiddle(F), forceN, start);
    const high = edge((F) => halfWidthAt(F) - offMiddle(F), forceN, end);
    const common = Math.hypot(shared.relative * forceN, shared.offsetN) * 1.959964;
    const lowN = forceN - Math.hypot(forceN - low, common);
    const highN = forceN + Math.hypot(high - forceN, common);
    return { forceN, lowN, highN, u95N: Math.max(forceN - lowN, highN - forceN) };
  };
  return { doubtAt, halfWidthAt, forceOf };
}

/** Where a rising function passes zero on the range; a reading a hair off the end counts as the end's. */
function crossing(above: (forceN: number) => number, lowN: number, highN: number): number | undefined {
  let [a, b] = [lowN, highN];
  const slack = 1e-9 * Math.abs(above(b) - above(a));
  if (above(a) > slack || above(b) < -slack) return undefined;
  for (let step = 0; step < 100 && b - a > 1e-13 * Math.max(Math.abs(a), Math.abs(b)); step++) {
    const middle = (a + b) / 2;
    if (above(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** From a force where `holds` is positive towards `end`, the first place where it is no longer; infinite where it stays so. */
function edge(holds: (forceN: number) => number, from: number, end: number): number {
  const STEPS = 120;
  let inside = from;
  for (let k = 1; k <= STEPS; k++) {
    const outside = from + ((end - from) * k) / STEPS;
    if (holds(outside) < 0) {
      let [a, b] = [inside, outside];
      for (let step = 0; step < 60; step++) {
        const middle = (a + b) / 2;
        if (holds(middle) < 0) b = middle;
        else a = middle;
      }
      return (a + b) / 2;
    }
    inside = outside;
  }
  return end > from ? Infinity : -Infinity;
}

/** Covariance of the parameters with what the rows of one load or series share: (JᵀWJ)⁻¹ Jᵀ W V W J (JᵀWJ)⁻¹. */
function parameterCovariance({ fit, rows, components, whitening }: Predicting): Float64Array {
  const { curve, inverse } = fit;
  const p = curve.parameters.length;
  const n = rows.length;
  const lines = rows.map(({ forceN }) => curve.gradient(forceN));
  const white = Array.from({ length: p }, (_, j) => whitening(whitening(lines.map((line) => line[j]!)))); // W J
  const gain = Array.from({ length: n }, (_, i) =>
    Array.from({ length: p }, (_unused, a) => white.reduce((sum, column, b) => sum + inverse[a * p + b]! * column[i]!, 0)),
  );
  const covariance = new Float64Array(p * p);
  const add = (vector: readonly number[], variance: number): void => {
    for (let a = 0; a < p; a++) for (let b = 0; b < p; b++) covariance[a * p + b]! += variance * vector[a]! * vector[b]!;
  };
  const { scatter, load, sharedRounding, series, shape } = components;
  for (const [i, { forceN }] of rows.entries()) add(gain[i]!, scatter.variance * shape(forceN) ** 2);
  const summed = (at: readonly number[]) => Array.from({ length: p }, (_, a) => at.reduce((sum, i) => sum + gain[i]![a]!, 0));
  for (const [forceN, at] of positionsBy(rows, (row) => row.forceN)) {
    const weight = (curve.slope(forceN) * Math.max(...at.map((i) => rows[i]!.forceUN ?? 0))) ** 2;
    add(summed(at), load.variance + sharedRounding + weight);
  }
  if (series.variance > 0) for (const at of positionsBy(rows, (row) => row.series).values()) add(summed(at), series.variance);
  return covariance;
}

/** Half width q with P(|±gap + u t + rounding| < q) = 95 %, for either sign. */
function halfWidth({ u, degreesOfFreedom, halfGap, halfStep }: Doubt): number {
  if (!(u > 0)) return halfGap + COVERAGE * halfStep;
  const below = (x: number): number => {
    const inside = studentCoverage(Math.abs(x), degreesOfFreedom) / 2;
    return x < 0 ? 0.5 - inside : 0.5 + inside;
  };
  // Rounding is even: its mean is taken over a few places of the half step, both halves alike for a symmetric q.
  const places = halfStep > 0 ? ROUNDING_PLACES.flatMap((place) => [place * halfStep, -place * halfStep]) : [0];
  const held = (q: number): number =>
    places.reduce((sum, rounded) => sum + below((q - halfGap - rounded) / u) - below((-q - halfGap - rounded) / u), 0) / places.length;
  let [low, high] = [0, halfGap + halfStep + 3 * u];
  while (held(high) < COVERAGE) high = halfGap + 2 * (high - halfGap);
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (held(middle) < COVERAGE) low = middle;
    else high = middle;
  }
  return high;
}

const ROUNDING_PLACES = [1 / 16, 3 / 16, 5 / 16, 7 / 16, 9 / 16, 11 / 16, 13 / 16, 15 / 16];
