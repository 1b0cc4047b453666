/**
 * The exact transform of a damped sinusoid that begins with the segment and is cut off at its end: no window, no side lobes to fear.
 * The decay must be above 0: an undamped tone on a bin would be 0/0.
 */

/** Re(c · exp((−s + iω) t)) with c = re + i·im, t from the start of the segment. */
export interface DampedSinusoid {
  readonly frequencyHz: number;
  /** s = 1/τ, per second. */
  readonly decayPerS: number;
  readonly re: number;
  readonly im: number;
}

export const amplitude = (sinusoid: DampedSinusoid): number => Math.hypot(sinusoid.re, sinusoid.im);
export const decayS = (sinusoid: DampedSinusoid): number => 1 / sinusoid.decayPerS;
/** Quality factor π f τ: the energy falls to exp(−2π) in Q periods. */
export const qualityFactor = (sinusoid: DampedSinusoid): number => (Math.PI * sinusoid.frequencyHz) / sinusoid.decayPerS;
/** Half the width of the power peak at half its height, s/2π. */
export const halfWidthHz = (sinusoid: DampedSinusoid): number => sinusoid.decayPerS / (2 * Math.PI);

/** Amplitude-weighted length Σ exp(−2 s t) of a decay in samples: the energy of a damped sinusoid is a²/2 times this. */
export function decayEnergySamples(options: { readonly decayPerS: number; readonly rateHz: number; readonly length: number }): number {
  const q = Math.exp((-2 * options.decayPerS) / options.rateHz);
  return (1 - q ** options.length) / (1 - q);
}

/** The bins of one transform with the tables that make a sinusoid's spectrum one division a bin. */
export interface BinGrid {
  readonly rateHz: number;
  /** Samples in the segment. */
  readonly length: number;
  /** Length of the transform, at least `length`. */
  readonly size: number;
  readonly binWidthHz: number;
  readonly binCount: number;
  /** exp(−i w_k), interleaved [2 · binCount]. */
  readonly turn: Float64Array;
  /** exp(−i w_k · length), interleaved [2 · binCount]. */
  readonly turnAtEnd: Float64Array;
}

export function binGrid(options: {
  readonly rateHz: number;
  readonly length: number;
  readonly size: number;
  readonly highestHz: number;
}): BinGrid {
  const { rateHz, length, size } = options;
  const binWidthHz = rateHz / size;
  const binCount = Math.min(size / 2, Math.ceil(options.highestHz / binWidthHz)) + 1;
  const turn = new Float64Array(2 * binCount);
  const turnAtEnd = new Float64Array(2 * binCount);
  for (let k = 0; k < binCount; k++) {
    const w = (2 * Math.PI * k) / size;
    turn[2 * k] = Math.cos(w);
    turn[2 * k + 1] = -Math.sin(w);
    turnAtEnd[2 * k] = Math.cos(w * length);
    turnAtEnd[2 * k + 1] = -Math.sin(w * length);
  }
  return { rateHz, length, size, binWidthHz, binCount, turn, turnAtEnd };
}

/**
 * Four complex numbers at one bin, from which spectrum and derivatives follow: G(u), G(v), u G'(u), v G'(v) with
 * G(u) = (1 − uⁿ)/(1 − u), u = exp(−s + i(ω − w_k)), v = exp(−s − i(ω + w_k)).
 */
export interface Poles {
  /** exp(−s + iω) and its n-th power, real and imaginary parts. */
  readonly zRe: number;
  readonly zIm: number;
  readonly znRe: number;
  readonly znIm: number;
}

export function polesOf(sinusoid: { readonly frequencyHz: number; readonly decayPerS: number }, grid: BinGrid): Poles {
  const s = sinusoid.decayPerS / grid.rateHz;
  const w = (2 * Math.PI * sinusoid.frequencyHz) / grid.rateHz;
  const q = Math.exp(-s);
  const qn = Math.exp(-s * grid.length);
  return {
    zRe: q * Math.cos(w),
    zIm: q * Math.sin(w),
    znRe: qn * Math.cos(w * grid.length),
    znIm: qn * Math.sin(w * grid.length),
  };
}

/** Writes G(u), G(v), u G'(u), v G'(v) at bin k as eight numbers from `at` on. */
export function basisAt(poles: Poles, grid: BinGrid, k: number, out: Float64Array, at: number): void {
  const turnRe = grid.turn[2 * k]!;
  const turnIm = grid.turn[2 * k + 1]!;
  const endRe = grid.turnAtEnd[2 * k]!;
  const endIm = grid.turnAtEnd[2 * k + 1]!;
  for (let conjugate = 0; conjugate < 2; conjugate++) {
    const zIm = conjugate ? -poles.zIm : poles.zIm;
    const znIm = conjugate ? -poles.znIm : poles.znIm;
    const uRe = poles.zRe * turnRe - zIm * turnIm;
    const uIm = poles.zRe * turnIm + zIm * turnRe;
    const unRe = poles.znRe * endRe - znIm * endIm;
    const unIm = poles.znRe * endIm + znIm * endRe;
    const dRe = 1 - uRe;
    const dIm = -uIm;
    const inverse = 1 / (dRe * dRe + dIm * dIm);
    const topRe = 1 - unRe;
    const topIm = -unIm;
    const gRe = (topRe * dRe + topIm * dIm) * inverse;
    const gIm = (topIm * dRe - topRe * dIm) * inverse;
    // u G'(u) = (u G(u) − n uⁿ) / (1 − u)
    const hRe = uRe * gRe - uIm * gIm - grid.length * unRe;
    const hIm = uRe * gIm + uIm * gRe - grid.length * unIm;
    out[at + 2 * conjugate] = gRe;
    out[at + 2 * conjugate + 1] = gIm;
    out[at + 4 + 2 * conjugate] = (hRe * dRe + hIm * dIm) * inverse;
    out[at + 4 + 2 * conjugate + 1] = (hIm * dRe - hRe * dIm) * inverse;
  }
}

/**
 * Adds `factor` times the sinusoid's spectrum to a spectrum.
 *
 * @param options.spectrum        interleaved [>= 2 · binCount], changed in place
 * @param options.extraDecayPerS  decay of the window that the spectrum was taken under; default none
 */
export function addSpectrumOf(
  sinusoid: DampedSinusoid,
  options: {
    readonly grid: BinGrid;
    readonly spectrum: Float64Array;
    readonly factor: number;
    readonly extraDecayPerS?: number | undefined;
  },
): void {
  const { grid, spectrum } = options;
  const decayPerS = sinusoid.decayPerS + (options.extraDecayPerS ?? 0);
  const { zRe, zIm, znRe, znIm } = polesOf({ frequencyHz: sinusoid.frequencyHz, decayPerS }, grid);
  const re = 0.5 * options.factor * sinusoid.re;
  const im = 0.5 * options.factor * sinusoid.im;
  for (let k = 0; k < grid.binCount; k++) {
    const turnRe = grid.turn[2 * k]!;
    const turnIm = grid.turn[2 * k + 1]!;
    const endRe = grid.turnAtEnd[2 * k]!;
    const endIm = grid.turnAtEnd[2 * k + 1]!;
    for (let conjugate = 0; conjugate < 2; conjugate++) {
      const sign = conjugate ? -1 : 1;
      const dRe = 1 - (zRe * turnRe - sign * zIm * turnIm);
      const dIm = -(zRe * turnIm + sign * zIm * turnRe);
      const topRe = 1 - (znRe * endRe - sign * znIm * endIm);
      const topIm = -(znRe * endIm + sign * znIm * endRe);
      const inverse = 1 / (dRe * dRe + dIm * dIm);
      const gRe = (topRe * dRe + topIm * dIm) * inverse;
      const gIm = (topIm * dRe - topRe * dIm) * inverse;
      spectrum[2 * k]! += re * gRe - sign * im * gIm;
      spectrum[2 * k + 1]! += re * gIm + sign * im * gRe;
    }
  }
}
