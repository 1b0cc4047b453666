import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../src/core/synthesis/random.ts';

const draw = (count: number, next: () => number) => Array.from({ length: count }, next);

describe('createRandom', () => {
  it('gives the same numbers for the same seed, others for another seed or stream', () => {
    const numbers = (seed: number, stream?: number) => draw(20, createRandom(seed, stream).uniform);
    expect(numbers(7)).toEqual(numbers(7));
    expect(numbers(8)).not.toEqual(numbers(7));
    expect(numbers(7, 1)).not.toEqual(numbers(7));
  });

  it('is even: no hundredth of the range is 5 standard deviations off', () => {
    const counts = new Array(100).fill(0);
    for (const value of draw(100_000, createRandom(3).uniform)) counts[Math.floor(100 * value)]++;
    // Binomial with 1e5 draws at 1 %: standard deviation 31.5.
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(158);
  });

  it('is normal: moments of 0, 1, 0 and 3', () => {
    const values = draw(200_000, createRandom(4).gaussian);
    const moment = (power: number) => values.reduce((sum, value) => sum + value ** power, 0) / values.length;
    // Five standard errors: sqrt(1, 2, 15, 96) / sqrt(2e5).
    expect(Math.abs(moment(1))).toBeLessThan(0.0112);
    expect(Math.abs(moment(2) - 1)).toBeLessThan(0.0159);
    expect(Math.abs(moment(3))).toBeLessThan(0.0434);
    expect(Math.abs(moment(4) - 3)).toBeLessThan(0.11);
  });

  it('has neighbours that know nothing of each other, also across close seeds', () => {
    const a = draw(50_000, createRandom(5).gaussian);
    const b = draw(50_000, createRandom(6).gaussian);
    const correlation = (x: number[], y: number[], lag: number) =>
      x.reduce((sum, value, i) => sum + value * (y[i + lag] ?? 0), 0) / x.length;
    for (const value of [correlation(a, a, 1), correlation(a, a, 2), correlation(a, b, 0)]) expect(Math.abs(value)).toBeLessThan(0.0224);
  });
});
