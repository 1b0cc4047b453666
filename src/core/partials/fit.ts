/** Least squares of damped sinusoids in a spectrum, weighted by the room's noise: frequency, decay and amplitude with their covariance. */

import { inverseOfPositiveDefinite, solvePositiveDefinite } from '../math/linear-solve.ts';
import { type BinGrid, basisAt, type DampedSinusoid, polesOf } from '../spectrum/damped-sinusoid.ts';

export interface FitInput {
  readonly grid: BinGrid;
  /** Interleaved spectrum of the segment under no window [>= 2 · binCount]; not modified. */
  readonly spectrum: Float64Array;
  /** Noise power per sample at each bin, Float64Array [binCount], > 0. */
  readonly noise: Float64Array;
}

export interface Fit {
  readonly sinusoids: readonly DampedSinusoid[];
  /** Standard uncertainties of frequency (Hz) and decay (1/s) of each, from the fit's covariance with the noise as told. */
  readonly frequencyU: readonly number[];
  readonly decayU: readonly number[];
  /** Weighted sum of squares left. */
  readonly cost: number;
}

/** Parameters of one sinusoid in the normal equations: frequency, decay, re, im. */
const EACH = 4;
const MOST_STEPS = 14;
const FIRST_DAMPING = 1e-3;
/** A step moves a frequency by at most this many half-widths (or bins, where they are wider), a decay by at most this factor. */
const STEP_HALF_WIDTHS = 1;
const STEP_DECAY_FACTOR = 1.7;
const SLOWEST_DECAY_PER_S = 0.3;
/** What dies within 5 ms is the finger's noise: a partial that is not there must not run away into it. */
const FASTEST_DECAY_PER_S = 200;
const ENOUGH = 1e-5;
/** Keeps two sinusoids that have met from making everything else unknown. */
const RIDGE = 1e-9;

/**
 * Levenberg-Marquardt on frequencies and decays with the complex amplitudes solved anew at each trial (variable projection). A step is
 * taken only when the cost falls: free Gauss-Newton steps run away from weak partials.
 *
 * @param start  sinusoids to begin with; amplitudes are not needed
 * @param bins   ascending bin numbers that count; others are ignored
 */
export function fitSinusoids(input: FitInput, start: readonly DampedSinusoid[], bins: readonly number[]): Fit {
  let state = evaluate(input, start, bins);
  let damping = FIRST_DAMPING;
  for (let step = 0; step < MOST_STEPS; step++) {
    const trialStart = stepped(state, damping, input.grid);
    if (!trialStart) break;
    const trial = evaluate(input, trialStart, bins);
    if (trial.cost < state.cost) {
      const gain = (state.cost - trial.cost) / (1 + state.cost);
      state = trial;
      damping = Math.max(damping / 5, 1e-9);
      if (gain < ENOUGH) break;
    } else {
      damping *= 8;
      if (damping > 1e4) break;
    }
  }
  const u = standardUncertainties(state);
  return {
    sinusoids: state.sinusoids,
    frequencyU: state.sinusoids.map((_, i) => u[i * EACH]!),
    decayU: state.sinusoids.map((_, i) => u[i * EACH + 1]!),
    cost: state.cost,
  };
}

/** Roots of the covariance's diagonal; a parameter without any effect is not known at all. */
function standardUncertainties(state: State): Float64Array {
  const n = state.derivatives.length;
  const matrix = normalMatrix(state);
  const scale = Float64Array.from({ length: n }, (_, i) => Math.sqrt(matrix[i * n + i]!));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) matrix[i * n + j]! /= scale[i]! * scale[j]! || 1;
    matrix[i * n + i] = 1 + RIDGE;
  }
  const inverse = inverseOfPositiveDefinite(matrix, n);
  return scale.map((s, i) => (inverse && s > 0 ? Math.sqrt(inverse[i * n + i]!) / s : Number.POSITIVE_INFINITY));
}

interface State {
  readonly sinusoids: readonly DampedSinusoid[];
  readonly cost: number;
  /** Weighted derivatives, row-major [parameter][2 · bins], and weighted residual [2 · bins]. */
  readonly derivatives: readonly Float64Array[];
  readonly residual: Float64Array;
}

/** Solves the amplitudes at the given frequencies and decays, then residual and derivatives there. */
function evaluate(input: FitInput, at: readonly DampedSinusoid[], bins: readonly number[]): State {
  const { grid, spectrum, noise } = input;
  const count = at.length;
  const rows = 2 * bins.length;
  const basis = new Float64Array(8 * count * bins.length);
  const poles = at.map((sinusoid) => polesOf(sinusoid, grid));
  const weights = new Float64Array(bins.length);
  for (let b = 0; b < bins.length; b++) {
    const k = bins[b]!;
    // variance of one component of X is noise · length / 2; neighbouring bins of a padded transform repeat each other size/length times
    weights[b] = Math.sqrt(2 / (noise[k]! * grid.size));
    for (let j = 0; j < count; j++) basisAt(poles[j]!, grid, k, basis, 8 * (b * count + j));
  }
  const derivatives = Array.from({ length: count * EACH }, () => new Float64Array(rows));
  const target = new Float64Array(rows);
  for (let b = 0; b < bins.length; b++) {
    const weight = weights[b]!;
    const k = bins[b]!;
    target[2 * b] = weight * spectrum[2 * k]!;
    target[2 * b + 1] = weight * spectrum[2 * k + 1]!;
    for (let j = 0; j < count; j++) {
      const o = 8 * (b * count + j);
      const half = 0.5 * weight;
      const byRe = derivatives[j * EACH + 2]!;
      const byIm = derivatives[j * EACH + 3]!;
      byRe[2 * b] = half * (basis[o]! + basis[o + 2]!);
      byRe[2 * b + 1] = half * (basis[o + 1]! + basis[o + 3]!);
      byIm[2 * b] = -half * (basis[o + 1]! - basis[o + 3]!);
      byIm[2 * b + 1] = half * (basis[o]! - basis[o + 2]!);
    }
  }
  const amplitudes = solveAmplitudes(derivatives, target, count);
  const residual = target;
  const sinusoids = at.map((sinusoid, j) => {
    const re = amplitudes[2 * j]!;
    const im = amplitudes[2 * j + 1]!;
    subtract(residual, derivatives[j * EACH + 2]!, re);
    subtract(residual, derivatives[j * EACH + 3]!, im);
    return { frequencyHz: sinusoid.frequencyHz, decayPerS: sinusoid.decayPerS, re, im };
  });
  const perHz = (2 * Math.PI) / grid.rateHz;
  for (let b = 0; b < bins.length; b++) {
    for (let j = 0; j < count; j++) {
      const o = 8 * (b * count + j);
      const { re, im } = sinusoids[j]!;
      const half = 0.5 * weights[b]!;
      const cuRe = re * basis[o + 4]! - im * basis[o + 5]!;
      const cuIm = re * basis[o + 5]! + im * basis[o + 4]!;
      const cvRe = re * basis[o + 6]! + im * basis[o + 7]!;
      const cvIm = re * basis[o + 7]! - im * basis[o + 6]!;
      const byFrequency = derivatives[j * EACH]!;
      const byDecay = derivatives[j * EACH + 1]!;
      byFrequency[2 * b] = -half * perHz * (cuIm - cvIm);
      byFrequency[2 * b + 1] = half * perHz * (cuRe - cvRe);
      byDecay[2 * b] = (-half * (cuRe + cvRe)) / grid.rateHz;
      byDecay[2 * b + 1] = (-half * (cuIm + cvIm)) / grid.rateHz;
    }
  }
  return { sinusoids, cost: dot(residual, residual), derivatives, residual };
}

function solveAmplitudes(derivatives: readonly Float64Array[], target: Float64Array, count: number): Float64Array {
  const columns = Array.from({ length: 2 * count }, (_, i) => derivatives[(i >> 1) * EACH + 2 + (i & 1)]!);
  const n = columns.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) matrix[i * n + j] = dot(columns[i]!, columns[j]!);
    matrix[i * n + i]! *= 1 + 1e-9; // two sinusoids that have met have no amplitudes of their own
  }
  return (
    solvePositiveDefinite(
      matrix,
      Float64Array.from(columns, (column) => dot(column, target)),
    ) ?? new Float64Array(n)
  );
}

/** Frequencies and decays after one damped step; undefined where the equations cannot be solved. */
function stepped(state: State, damping: number, grid: BinGrid): readonly DampedSinusoid[] | undefined {
  const n = state.derivatives.length;
  const matrix = normalMatrix(state);
  for (let i = 0; i < n; i++) matrix[i * n + i]! *= 1 + damping;
  const step = solvePositiveDefinite(
    matrix,
    Float64Array.from(state.derivatives, (column) => dot(column, state.residual)),
  );
  if (!step) return undefined;
  return state.sinusoids.map((sinusoid, j) => {
    const largest = Math.max(grid.rateHz / grid.length, (STEP_HALF_WIDTHS * sinusoid.decayPerS) / (2 * Math.PI));
    const frequencyHz = sinusoid.frequencyHz + clamp(step[j * EACH]!, -largest, largest);
    const decayPerS = clamp(
      sinusoid.decayPerS + step[j * EACH + 1]!,
      sinusoid.decayPerS / STEP_DECAY_FACTOR,
      sinusoid.decayPerS * STEP_DECAY_FACTOR,
    );
    return { ...sinusoid, frequencyHz: Math.max(frequencyHz, 1), decayPerS: clamp(decayPerS, SLOWEST_DECAY_PER_S, FASTEST_DECAY_PER_S) };
  });
}

function normalMatrix({ derivatives }: State): Float64Array {
  const n = derivatives.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const product = dot(derivatives[i]!, derivatives[j]!);
      matrix[i * n + j] = product;
      matrix[j * n + i] = product;
    }
  }
  return matrix;
}

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function subtract(from: Float64Array, column: Float64Array, factor: number): void {
  for (let i = 0; i < from.length; i++) from[i]! -= factor * column[i]!;
}

/** Ascending numbers of the bins within a distance of any of the frequencies; bin 0 never counts. */
export function binsAround(grid: BinGrid, places: readonly { readonly frequencyHz: number; readonly withinHz: number }[]): number[] {
  const taken = new Uint8Array(grid.binCount);
  for (const { frequencyHz, withinHz } of places) {
    const from = Math.max(1, Math.ceil((frequencyHz - withinHz) / grid.binWidthHz));
    const to = Math.min(grid.binCount - 1, Math.floor((frequencyHz + withinHz) / grid.binWidthHz));
    for (let k = from; k <= to; k++) taken[k] = 1;
  }
  const bins: number[] = [];
  for (let k = 1; k < taken.length; k++) if (taken[k] === 1) bins.push(k);
  return bins;
}
