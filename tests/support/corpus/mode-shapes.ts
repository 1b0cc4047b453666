/** How the modes of a tensioned beam look: exact shapes between two ends that resist rotation, sampled where the ends' layers are resolved. */

import { modeUnderForce, partialHz } from '../../../src/core/vibration/beam.ts';
import type { EndFixities } from '../../../src/core/vibration/beam-phase.ts';

export interface BeamBelt {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: EndFixities;
}

/** Points along the span, crowded at the ends as 1 − cos is, where the shapes bend within sqrt(EI/T). */
export interface SpanGrid {
  /** Float64Array [pointCount], m from one end. */
  readonly placeM: Float64Array;
  /** Float64Array [pointCount], m: the sum of weight times value is the integral over the span. */
  readonly weightM: Float64Array;
}

const POINT_COUNT = 480;

export function spanGrid(spanLengthM: number): SpanGrid {
  const placeM = new Float64Array(POINT_COUNT);
  const weightM = new Float64Array(POINT_COUNT);
  for (let point = 0; point < POINT_COUNT; point++) {
    const angle = (Math.PI * (point + 0.5)) / POINT_COUNT;
    placeM[point] = 0.5 * spanLengthM * (1 - Math.cos(angle));
    weightM[point] = (0.5 * spanLengthM * Math.PI * Math.sin(angle)) / POINT_COUNT;
  }
  return { placeM, weightM };
}

export interface ModeShape {
  readonly angularRadPerS: number;
  /** Float64Array [pointCount] over the grid; norm: the integral of density times square is 1 kg. */
  readonly shape: Float64Array;
  /** First and second derivative by place. */
  readonly slope: Float64Array;
  readonly bend: Float64Array;
  /** Slopes at both ends, and the transverse force on the first end for a displacement of 1, as the frame feels it. */
  readonly endSlopes: readonly [number, number];
  readonly endForce: number;
}

/**
 * w = sin βx + α cos βx + C exp(−ax) + D exp(−a(L−x)), the three constants from no displacement at either end and the moment
 * (1 − φ) w'' = φ ξ w'/L at the first; the fourth condition holds where the frequency is right.
 */
export function modeShape(belt: BeamBelt, number: number, grid: SpanGrid): ModeShape {
  const { spanLengthM: L, linearDensityKgPerM, forceN: T, bendingStiffnessNm2: EI, fixity } = belt;
  const { a, b, xi } = modeUnderForce({ ...belt, number });
  const far = Math.exp(-a);
  const φ = fixity[0];
  // Rows of [α, C, D | right side].
  const [alpha, near, distant] = solve3([
    [1, 1, far, 0],
    [Math.cos(b), far, 1, -Math.sin(b)],
    [-(1 - φ) * b * b, (1 - φ) * a * a + φ * xi * a, ((1 - φ) * a * a - φ * xi * a) * far, φ * xi * b],
  ]);
  const at = (share: number) => {
    const [sin, cos] = [Math.sin(b * share), Math.cos(b * share)];
    const [first, last] = [near * Math.exp(-a * share), distant * Math.exp(-a * (1 - share))];
    return {
      value: sin + alpha * cos + first + last,
      slope: (b * (cos - alpha * sin) - a * (first - last)) / L,
      bend: (-b * b * (sin + alpha * cos) + a * a * (first + last)) / L ** 2,
      third: (-(b ** 3) * (cos - alpha * sin) - a ** 3 * (first - last)) / L ** 3,
    };
  };
  const count = grid.placeM.length;
  const [shape, slope, bend] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  let mass = 0;
  for (let point = 0; point < count; point++) {
    const here = at(grid.placeM[point]! / L);
    shape[point] = here.value;
    slope[point] = here.slope;
    bend[point] = here.bend;
    mass += linearDensityKgPerM * grid.weightM[point]! * here.value ** 2;
  }
  const norm = 1 / Math.sqrt(mass);
  for (const values of [shape, slope, bend]) for (let point = 0; point < count; point++) values[point]! *= norm;
  const [start, end] = [at(0), at(1)];
  return {
    angularRadPerS: 2 * Math.PI * partialHz({ ...belt, number }),
    shape,
    slope,
    bend,
    endSlopes: [norm * start.slope, norm * end.slope],
    endForce: norm * (T * start.slope - EI * start.third),
  };
}

function solve3(rows: number[][]): [number, number, number] {
  for (let column = 0; column < 3; column++) {
    let best = column;
    for (let row = column; row < 3; row++) if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    for (let row = 0; row < 3; row++) {
      if (row === column) continue;
      const factor = rows[row]![column]! / rows[column]![column]!;
      for (let entry = column; entry < 4; entry++) rows[row]![entry]! -= factor * rows[column]![entry]!;
    }
  }
  return [rows[0]![3]! / rows[0]![0]!, rows[1]![3]! / rows[1]![1]!, rows[2]![3]! / rows[2]![2]!];
}
