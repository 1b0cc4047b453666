import { describe, expect, it } from 'vitest';
import { createRailCounter } from '../../../../src/core/samples/rails.ts';
import { tones } from '../../../support/tones.ts';

const rateHz = 48_000;
const factor = 6;
const sine = (amplitude: number, count = 4800) => tones([{ frequencyHz: 117, amplitude }], { rateHz, count });
const held = (samples: Float64Array, at: number) => Float32Array.from(samples, (x) => Math.max(-at, Math.min(at, x)));

/** Share over the whole of the samples. */
function shareOf(samples: Float32Array, blockSize = samples.length): number {
  const counter = createRailCounter(factor);
  for (let from = 0; from < samples.length; from += blockSize) counter.push(samples.subarray(from, from + blockSize));
  return counter.share(0, Math.ceil(samples.length / factor));
}

/** Share of time that a sine of amplitude a spends beyond a level: 1 − (2/π) asin(level/a). */
const beyond = (level: number, amplitude: number) => 1 - (2 / Math.PI) * Math.asin(level / amplitude);

describe('createRailCounter', () => {
  it.each([1.2, 2, 5])('counts the time that a sine of amplitude %d spends at the rails', (amplitude) => {
    expect(shareOf(held(sine(amplitude), 1))).toBeCloseTo(beyond(1, amplitude), 1);
  });

  it('counts nothing in sound that just does not reach them', () => {
    expect(shareOf(Float32Array.from(sine(0.95)))).toBe(0);
    expect(shareOf(Float32Array.from(tones([], { rateHz, count: 9600, noise: 0.1 })))).toBe(0);
    expect(shareOf(new Float32Array(4800))).toBe(0);
  });

  it('sees sound that was cut off before it was turned down', () => {
    const share = shareOf(held(sine(2), 1).map((x) => 0.3 * x));
    expect(share).toBeGreaterThan(0.8 * beyond(1, 2));
    expect(share).toBeLessThanOrEqual(beyond(1, 2) + 0.01);
  });

  it('takes no quiet level of a coarse converter for a rail', () => {
    const coarse = Float32Array.from(sine(0.01), (x) => Math.round(x * 128) / 128);
    expect(shareOf(coarse)).toBe(0);
  });

  it('counts the same whatever the size of the blocks', () => {
    const samples = held(sine(1.7), 1);
    for (const blockSize of [1, 100, 128]) expect(shareOf(samples, blockSize)).toBe(shareOf(samples));
  });

  it('counts only what lies between two decimated samples', () => {
    const samples = new Float32Array(6000);
    samples.fill(1, 3000, 3600); // decimated 500 to 600
    const counter = createRailCounter(factor);
    counter.push(samples);
    expect(counter.share(0, 500)).toBe(0);
    expect(counter.share(500, 600)).toBe(1);
    expect(counter.share(600, 1000)).toBe(0);
    expect(counter.share(0, 1000)).toBeCloseTo(0.1, 12);
    expect(counter.share(500, 500)).toBe(0);
  });

  it('remembers the last seconds of a long take', () => {
    const counter = createRailCounter(factor);
    const second = new Float32Array(rateHz);
    for (let s = 0; s < 60; s++) counter.push(second);
    counter.push(second.map(() => -1));
    for (let s = 0; s < 2; s++) counter.push(second);
    expect(counter.share(60 * 8000, 61 * 8000)).toBe(1);
  });
});
