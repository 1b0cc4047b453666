import { describe, expect, it } from 'vitest';
import { fftPlan, powerOfTwoFrom } from '../../../../src/core/math/fft.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { directSum } from '../../../support/tones.ts';

const noise = (count: number, seed: number) => {
  const random = createRandom(seed);
  return Float64Array.from({ length: count }, () => random.gaussian());
};

describe('fftPlan', () => {
  it.each([2, 4, 8, 64, 512])('of %d samples is the sum in its definition, bin by bin', (size) => {
    const samples = noise(size, size);
    const transform = fftPlan(size).transform(samples);
    for (let k = 0; k <= size / 2; k++) {
      const { re, im } = directSum(samples, k, size);
      expect(Math.abs(transform[2 * k]! - re)).toBeLessThan(1e-12 * size);
      expect(Math.abs(transform[2 * k + 1]! - im)).toBeLessThan(1e-12 * size);
    }
  });

  it('takes what is missing as zero, also after a longer transform', () => {
    const plan = fftPlan(64);
    plan.transform(noise(64, 3));
    const short = noise(23, 4);
    const transform = plan.transform(short);
    for (let k = 0; k <= 32; k++) {
      const { re, im } = directSum(short, k, 64);
      expect(Math.abs(transform[2 * k]! - re)).toBeLessThan(1e-11);
      expect(Math.abs(transform[2 * k + 1]! - im)).toBeLessThan(1e-11);
    }
  });

  it('writes where it is told, leaves its samples alone and gives each caller an array of its own', () => {
    const samples = Float32Array.from(noise(16, 5));
    const before = samples.slice();
    const out = new Float64Array(32);
    expect(fftPlan(16).transform(samples, out)).toBe(out);
    expect(samples).toEqual(before);
    const first = fftPlan(16).transform(samples);
    const kept = first.slice();
    fftPlan(16).transform(noise(16, 6));
    expect(first).toEqual(kept);
  });

  it.each([0, 1, 3, 48, 2.5, Number.NaN])('refuses a length of %d', (size) => {
    expect(() => fftPlan(size)).toThrow(RangeError);
  });

  it('refuses more samples than it was made for', () => {
    expect(() => fftPlan(16).transform(new Float64Array(17))).toThrow('at most 16 samples, got 17');
  });
});

it.each([
  [1, 2],
  [2, 2],
  [3, 4],
  [1024, 1024],
  [1025, 2048],
  [4799, 8192],
])('powerOfTwoFrom: the first power of two from %d on is %d', (length, power) => {
  expect(powerOfTwoFrom(length)).toBe(power);
});
