/** The transform beside another library's: ml-fft 1.3.5, radix 2 on separate real and imaginary arrays. */
import { FFT } from 'ml-fft';
import { expect, it } from 'vitest';
import { fftPlan } from '../../src/core/math/fft.ts';
import { createRandom } from '../../src/core/synthesis/random.ts';

it.each([8, 64, 1024, 4096, 16_384])('the same for %d random samples', (size) => {
  const random = createRandom(size);
  FFT.init(size);
  for (let draw = 0; draw < 3; draw++) {
    const samples = Float64Array.from({ length: size }, () => random.gaussian());
    const re = Array.from(samples);
    const im = new Array<number>(size).fill(0);
    FFT.fft(re, im);
    const transform = fftPlan(size).transform(samples);
    const worst = { re: 0, im: 0 };
    for (let k = 0; k <= size / 2; k++) {
      worst.re = Math.max(worst.re, Math.abs(transform[2 * k]! - re[k]!));
      worst.im = Math.max(worst.im, Math.abs(transform[2 * k + 1]! - im[k]!));
    }
    // Both round at every one of their log2(n) steps, on values of the size √n.
    const rounding = 20 * Number.EPSILON * Math.log2(size) * Math.sqrt(size);
    expect(worst.re).toBeLessThan(rounding);
    expect(worst.im).toBeLessThan(rounding);
  }
});
