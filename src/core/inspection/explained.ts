/** How much of a ring its partials explain: their frequencies and decays are held, their amplitudes fitted anew to the sound itself. */

import { solvePositiveDefinite } from '../math/linear-solve.ts';
import type { Ringing } from './ringing.ts';

export interface Explained {
  /** The sound less all that was fitted, Float64Array [as long as the stretch]. */
  readonly residual: Float64Array;
  /** Amplitude of each partial at the touch, full scale = 1, in the given order. */
  readonly amplitudes: readonly number[];
  /** Share of the stretch's power that partials and steady tones make up, 0 to 1. */
  readonly share: number;
}

/** Keeps the normal equations solvable where two tones lie on each other. */
const RIDGE = 1e-9;

/**
 * @param stretch.samples   Float64Array [n]; not modified
 * @param stretch.fromS     of the first of them, after the touch
 * @param stretch.steadyHz  tones of the room that go on through the ring
 */
export function explained(
  stretch: { readonly samples: Float64Array; readonly rateHz: number; readonly fromS: number; readonly steadyHz: readonly number[] },
  partials: readonly Ringing[],
): Explained {
  const { samples, rateHz, fromS, steadyHz } = stretch;
  const columns = [
    ...partials.flatMap(({ decayS, angleAt }) => [
      column(samples.length, rateHz, fromS, (t) => Math.exp(-t / decayS) * Math.cos(angleAt(t))),
      column(samples.length, rateHz, fromS, (t) => Math.exp(-t / decayS) * Math.sin(angleAt(t))),
    ]),
    ...steadyHz.flatMap((hz) => [
      column(samples.length, rateHz, fromS, (t) => Math.cos(2 * Math.PI * hz * t)),
      column(samples.length, rateHz, fromS, (t) => Math.sin(2 * Math.PI * hz * t)),
    ]),
  ];
  const factors = leastSquares(columns, samples);
  const residual = samples.slice();
  columns.forEach((values, i) => {
    for (let t = 0; t < residual.length; t++) residual[t]! -= factors[i]! * values[t]!;
  });
  const power = (of: Float64Array): number => of.reduce((sum, x) => sum + x * x, 0);
  const whole = power(samples);
  return {
    residual,
    amplitudes: partials.map((_, i) => Math.hypot(factors[2 * i]!, factors[2 * i + 1]!)),
    share: whole > 0 ? Math.max(0, 1 - power(residual) / whole) : 0,
  };
}

const column = (count: number, rateHz: number, fromS: number, at: (seconds: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, t) => at(fromS + t / rateHz));

function leastSquares(columns: readonly Float64Array[], samples: Float64Array): Float64Array {
  const n = columns.length;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k <= i; k++) normal[i * n + k] = dot(columns[i]!, columns[k]!);
    right[i] = dot(columns[i]!, samples);
  }
  for (let i = 0; i < n; i++) normal[i * n + i]! *= 1 + RIDGE;
  return solvePositiveDefinite(normal, right) ?? new Float64Array(n);
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let t = 0; t < one.length; t++) sum += one[t]! * other[t]!;
  return sum;
}
