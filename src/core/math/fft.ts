/** The Fourier transform of real samples. The one file that knows the FFT library. */

import FFT from 'fft.js';

/** A plan for one length; making it costs more than a transform, so keep it (`fftPlan` does). */
export interface FftPlan {
  /** Number of samples that a transform takes, a power of two. */
  readonly size: number;
  /**
   * Discrete Fourier transform X_k = Σ x_t exp(−2πi k t / size) of real samples.
   *
   * @param samples  Float64Array or Float32Array [<= size]; what is missing counts as zero; not modified
   * @param out      Float64Array [2 · size] to write into: real and imaginary parts in turn; bins 0 to size/2 are filled
   * @returns `out`
   */
  transform(samples: ArrayLike<number>, out?: Float64Array): Float64Array;
}

const plans = new Map<number, FftPlan>();

/**
 * The plan for a length, made on first use.
 *
 * @throws RangeError when size is not a power of two of at least 2
 */
export function fftPlan(size: number): FftPlan {
  let plan = plans.get(size);
  if (!plan) {
    plan = makePlan(size);
    plans.set(size, plan);
  }
  return plan;
}

/** Smallest power of two that is at least `length`. */
export const powerOfTwoFrom = (length: number): number => 2 ** Math.ceil(Math.log2(Math.max(2, length)));

function makePlan(size: number): FftPlan {
  if (!(Number.isInteger(size) && size >= 2 && (size & (size - 1)) === 0)) {
    throw new RangeError(`fftPlan needs a power of two, got ${size}`);
  }
  const fft = new FFT(size);
  const input = new Float64Array(size);
  return {
    size,
    transform(samples, out = new Float64Array(2 * size)) {
      if (samples.length > size) throw new RangeError(`transform needs at most ${size} samples, got ${samples.length}`);
      input.set(samples);
      input.fill(0, samples.length);
      fft.realTransform(out as unknown as number[], input as unknown as number[]);
      return out;
    },
  };
}
