/** A plain radix-2 Fourier transform, so that neither the corpus nor the baselines lean on the estimator's own. */

/** In place; length a power of two. `inverse` divides by the length. */
export function fourier(re: Float64Array, im: Float64Array, inverse = false): void {
  const count = re.length;
  for (let index = 1, other = 0; index < count; index++) {
    let bit = count >> 1;
    for (; other & bit; bit >>= 1) other ^= bit;
    other ^= bit;
    if (index < other) {
      [re[index], re[other]] = [re[other]!, re[index]!];
      [im[index], im[other]] = [im[other]!, im[index]!];
    }
  }
  for (let size = 2; size <= count; size *= 2) {
    const half = size / 2;
    const angle = ((inverse ? 2 : -2) * Math.PI) / size;
    for (let k = 0; k < half; k++) {
      const [cos, sin] = [Math.cos(angle * k), Math.sin(angle * k)];
      for (let from = k; from < count; from += size) {
        const to = from + half;
        const [x, y] = [re[to]! * cos - im[to]! * sin, re[to]! * sin + im[to]! * cos];
        re[to] = re[from]! - x;
        im[to] = im[from]! - y;
        re[from]! += x;
        im[from]! += y;
      }
    }
  }
  if (inverse) {
    for (let index = 0; index < count; index++) {
      re[index]! /= count;
      im[index]! /= count;
    }
  }
}

/** Magnitudes of bins 0 to size/2 of samples under a Hann window, padded with zeros up to the power of two `size`. */
export function hannSpectrum(samples: ArrayLike<number>, size: number): Float64Array {
  const [re, im] = [new Float64Array(size), new Float64Array(size)];
  const count = Math.min(samples.length, size);
  for (let index = 0; index < count; index++) re[index] = samples[index]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / count));
  fourier(re, im);
  return Float64Array.from({ length: size / 2 + 1 }, (_, bin) => Math.hypot(re[bin]!, im[bin]!));
}
