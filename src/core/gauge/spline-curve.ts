/** A cubic spline through readings at a few forces, its slopes limited so that it never turns back between them. */

import { solveSquare } from '../math/general-solve.ts';
import type { Curve } from './curve.ts';

/**
 * Slopes of the cubic spline at its knots as a linear map of the readings there, row-major [K · K]: continuous curvature inside, and one
 * cubic over each outermost pair of intervals ('not a knot'). Two knots give a line, three a parabola.
 */
export function slopeMap(knotsN: readonly number[]): Float64Array {
  const K = knotsN.length;
  const h = Array.from({ length: K - 1 }, (_, i) => knotsN[i + 1]! - knotsN[i]!);
  const left = new Float64Array(K * K);
  const right = new Float64Array(K * K);
  /** Adds c times the secant slope of interval i. */
  const secant = (row: number, i: number, c: number): void => {
    right[row * K + i + 1]! += c / h[i]!;
    right[row * K + i]! -= c / h[i]!;
  };
  for (let i = 1; i < K - 1; i++) {
    left[i * K + i - 1] = 1 / h[i - 1]!;
    left[i * K + i] = 2 / h[i - 1]! + 2 / h[i]!;
    left[i * K + i + 1] = 1 / h[i]!;
    secant(i, i - 1, 3 / h[i - 1]!);
    secant(i, i, 3 / h[i]!);
  }
  for (const [row, at] of [
    [0, 0],
    [K - 1, K - 3],
  ] as const) {
    if (K < 3) {
      left[row * K + row] = 1;
      secant(row, 0, 1);
    } else if (K === 3) {
      // no third power in the first (last) interval: m0 + m1 = 2 Δ0
      const interval = row === 0 ? 0 : 1;
      left[row * K + interval] = 1;
      left[row * K + interval + 1] = 1;
      secant(row, interval, 2);
    } else {
      const [a, b] = [1 / h[at]! ** 2, 1 / h[at + 1]! ** 2];
      left[row * K + at] = a;
      left[row * K + at + 1] = a - b;
      left[row * K + at + 2] = -b;
      secant(row, at, 2 * a);
      secant(row, at + 1, -2 * b);
    }
  }
  return solveSquare(left, right, K);
}

/** Readings made to rise (or fall) throughout, by pooling neighbours that do not (Ayer et al. 1955); a hair apart where pooled. */
function monotoneReadings(readings: readonly number[]): readonly number[] {
  const sign = Math.sign(readings[readings.length - 1]! - readings[0]!) || 1;
  const blocks: { sum: number; count: number }[] = [];
  for (const reading of readings) {
    blocks.push({ sum: sign * reading, count: 1 });
    while (blocks.length > 1) {
      const [a, b] = [blocks[blocks.length - 2]!, blocks[blocks.length - 1]!];
      if (a.sum / a.count <= b.sum / b.count) break;
      blocks.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => (sign * sum) / count));
}

/** Index of the interval that holds x; the outermost ones reach on. */
function intervalOf(knotsN: readonly number[], x: number): number {
  let i = 0;
  while (i < knotsN.length - 2 && x > knotsN[i + 1]!) i += 1;
  return i;
}

/** Hermite's weights on value and slope at both ends of an interval of width h, t in 0..1. */
const hermite = (t: number, h: number): readonly [number, number, number, number] => [
  (1 + 2 * t) * (1 - t) ** 2,
  h * t * (1 - t) ** 2,
  t * t * (3 - 2 * t),
  -h * t * t * (1 - t),
];

/** Weights of the readings at the knots in the spline's value at x, before any slope is limited; beyond the ends it goes on straight. */
export function splineWeights(knotsN: readonly number[], slopes: Float64Array, x: number): readonly number[] {
  const K = knotsN.length;
  const inside = Math.min(Math.max(x, knotsN[0]!), knotsN[K - 1]!);
  const i = intervalOf(knotsN, inside);
  const h = knotsN[i + 1]! - knotsN[i]!;
  const [a, b, c, d] = hermite((inside - knotsN[i]!) / h, h);
  const end = x === inside ? undefined : inside === knotsN[0] ? 0 : K - 1;
  return Array.from({ length: K }, (_, j) => {
    const beyond = end === undefined ? 0 : (x - inside) * slopes[end * K + j]!;
    return (j === i ? a : 0) + (j === i + 1 ? c : 0) + b * slopes[i * K + j]! + d * slopes[(i + 1) * K + j]! + beyond;
  });
}

/** Steepest slope that keeps a cubic from turning back, in secants of the flatter neighbour (Fritsch & Carlson 1980; Hyman 1983). */
const STEEPEST_IN_SECANTS = 3;

/**
 * @param readings  at the knots, [K >= 2]; pooled where they turn back
 * @param slopesAs  `smooth`: of the cubic spline. `local`: the harmonic mean of the two neighbouring secants, which knows the neighbours only;
 *   what the two differ by between the knots shows how far interpolation can be trusted
 */
export function splineCurve(knotsN: readonly number[], readings: readonly number[], slopesAs: 'smooth' | 'local' = 'smooth'): Curve {
  const K = knotsN.length;
  const map = slopeMap(knotsN);
  const y = monotoneReadings(readings);
  const sign = Math.sign(y[K - 1]! - y[0]!);
  const secants = Array.from({ length: K - 1 }, (_, i) => (sign * (y[i + 1]! - y[i]!)) / (knotsN[i + 1]! - knotsN[i]!));
  const slopes = Array.from({ length: K }, (_, k) => {
    const [before, after] = [secants[Math.max(0, k - 1)]!, secants[Math.min(K - 2, k)]!];
    const free = sign * y.reduce((sum, value, j) => sum + map[k * K + j]! * value, 0);
    const harmonic = before + after > 0 ? (2 * before * after) / (before + after) : 0;
    const isInside = k > 0 && k < K - 1;
    const wanted = slopesAs === 'local' && isInside ? harmonic : free;
    return sign * Math.min(Math.max(wanted, 0), STEEPEST_IN_SECANTS * Math.min(before, after));
  });
  const at = (x: number) => {
    const inside = Math.min(Math.max(x, knotsN[0]!), knotsN[K - 1]!);
    const i = intervalOf(knotsN, inside);
    const h = knotsN[i + 1]! - knotsN[i]!;
    return { i, h, t: (inside - knotsN[i]!) / h, beyond: x - inside };
  };
  const slopeAt = (x: number): number => {
    const { i, h, t, beyond } = at(x);
    if (beyond !== 0) return slopes[beyond < 0 ? 0 : K - 1]!;
    const rise = (6 * t * (1 - t) * (y[i + 1]! - y[i]!)) / h;
    return rise + (1 - t) * (1 - 3 * t) * slopes[i]! + t * (3 * t - 2) * slopes[i + 1]!;
  };
  return {
    kind: 'spline',
    names: knotsN.map((knot) => `r(${knot})`),
    parameters: readings,
    knotsN,
    reading: (x) => {
      const { i, h, t, beyond } = at(x);
      const [a, b, c, d] = hermite(t, h);
      return a * y[i]! + b * slopes[i]! + c * y[i + 1]! + d * slopes[i + 1]! + beyond * slopes[beyond < 0 ? 0 : K - 1]!;
    },
    slope: slopeAt,
    gradient: (x) => splineWeights(knotsN, map, x),
  };
}
