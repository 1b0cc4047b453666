/** Windows: the weights that a stretch of samples is multiplied with before its spectrum is taken. */

/**
 * Cosine-sum windows in their periodic (DFT-even) form, which is the one for spectra: w_t = Σ (−1)^j a_j cos(2π j t / N).
 *
 * @see Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66 (1978), eqs. 26–33
 */
export const COSINE_WINDOWS = {
  rectangular: [1],
  hann: [0.5, 0.5],
  hamming: [0.54, 0.46],
  blackman: [0.42, 0.5, 0.08],
  blackmanHarris4: [0.35875, 0.48829, 0.14128, 0.01168],
} as const;

export type CosineWindow = keyof typeof COSINE_WINDOWS;

/** The window's weights, Float64Array [length]. */
export function cosineWindow(name: CosineWindow, length: number): Float64Array {
  const coefficients: readonly number[] = COSINE_WINDOWS[name];
  return Float64Array.from({ length }, (_, t) =>
    coefficients.reduce((sum, a, j) => sum + (j % 2 ? -a : a) * Math.cos((2 * Math.PI * j * t) / length), 0),
  );
}

/**
 * One-sided exponential window w_t = exp(−t / τ): begins at full weight and falls as the partial itself falls. It is the matched
 * filter of a damped sinusoid of that τ, and smears nothing of what comes before the onset into the ring.
 */
export function decayWindow(options: { readonly length: number; readonly decaySamples: number }): Float64Array {
  const step = Math.exp(-1 / options.decaySamples);
  const weights = new Float64Array(options.length);
  let weight = 1;
  for (let t = 0; t < weights.length; t++, weight *= step) weights[t] = weight;
  return weights;
}

const sum = (weights: Float64Array): number => weights.reduce((total, w) => total + w, 0);

/** Sum of squares, the noise power gain times the length. */
export const energy = (weights: Float64Array): number => weights.reduce((total, w) => total + w * w, 0);

/** Mean weight: what a sinusoid in the middle of a bin keeps of its amplitude (Harris 1978, IV B). */
export const coherentGain = (weights: Float64Array): number => sum(weights) / weights.length;

/** Equivalent noise bandwidth in bins (Harris 1978, eq. 11). */
export const equivalentNoiseBandwidthBins = (weights: Float64Array): number => (weights.length * energy(weights)) / sum(weights) ** 2;
