import { describe, expect, it } from 'vitest';
import { demoTake } from '../../../../src/core/synthesis/demo.ts';
import { synthesiseTake, type TakeDescription } from '../../../../src/core/synthesis/take.ts';

const { truth } = demoTake();
const short: TakeDescription = { ...truth, sampleRateHz: 16_000, background: {}, room: undefined, corner: undefined };
const largest = (samples: ArrayLike<number>, fromS: number, toS: number, rateHz: number) =>
  Math.max(
    ...Array.from(samples)
      .slice(Math.round(fromS * rateHz), Math.round(toS * rateHz))
      .map(Math.abs),
  );

describe('synthesiseTake', () => {
  it('is the same for the same seed and another for another', () => {
    const noisy = { ...short, background: { whiteDbfs: -40 } };
    expect(synthesiseTake(noisy, 1).samples).toEqual(synthesiseTake(noisy, 1).samples);
    expect(synthesiseTake(noisy, 2).samples).not.toEqual(synthesiseTake(noisy, 1).samples);
  });

  it('is silent until two milliseconds before the first release, and stilled before the next', () => {
    const { samples } = synthesiseTake(short, 1);
    const [first, second] = short.plucks.map(({ startS }) => startS) as [number, number];
    expect(largest(samples, 0, first - 0.003, 16_000)).toBe(0);
    expect(largest(samples, first, first + 0.03, 16_000)).toBeGreaterThan(0.1);
    expect(largest(samples, second - 0.01, second - 0.003, 16_000)).toBeLessThan(
      0.05 * largest(samples, second - 0.07, second - 0.05, 16_000),
    );
  });

  it('peaks where it is told, and is held at the rails beyond', () => {
    expect(largest(synthesiseTake({ ...short, peakDbfs: -6 }, 1).samples, 0, 3, 16_000)).toBeCloseTo(10 ** (-6 / 20), 6);
    const { samples } = synthesiseTake({ ...short, peakDbfs: 12 }, 1);
    expect(samples.filter((value) => Math.abs(value) === 1).length).toBeGreaterThan(100);
    expect(largest(samples, 0, 3, 16_000)).toBe(1);
  });
});
