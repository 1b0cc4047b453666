import { describe, expect, it } from 'vitest';
import { addAt, amplitudeOf, atLevel, peak, rms } from '../../../../src/core/synthesis/level.ts';

const sine = (amplitude: number) => Float64Array.from({ length: 1000 }, (_, t) => amplitude * Math.sin((2 * Math.PI * 7 * t) / 1000));

describe('levels', () => {
  it('are twenty times the logarithm of the amplitude', () => {
    expect([0, -20, -6.0206, 6.0206].map(amplitudeOf)).toEqual([1, 0.1, 0.5, 2].map((amplitude) => expect.closeTo(amplitude, 5)));
  });

  it('a sine has its amplitude as peak and 1/√2 of it as root mean square', () => {
    expect(rms(sine(0.4))).toBeCloseTo(0.4 * Math.SQRT1_2, 12);
    expect(peak(sine(0.4))).toBeCloseTo(0.4, 4);
    expect(peak(Float64Array.of(0.1, -0.9, 0.3))).toBe(0.9);
    expect(peak(new Float64Array(0))).toBe(0);
  });
});

describe('atLevel', () => {
  it('makes of a sine one of that level, whatever it was', () => {
    for (const amplitude of [1e-6, 0.3, 40]) expect(peak(atLevel(sine(amplitude), -20))).toBeCloseTo(0.1, 4);
  });

  it('gives any other sound the power of that sine', () => {
    const steps = Float64Array.from({ length: 100 }, (_, t) => (t % 2 === 0 ? 3 : -3));
    expect(rms(atLevel(steps, -20))).toBeCloseTo(0.1 * Math.SQRT1_2, 12);
  });

  it('cannot make a sound of silence', () => {
    expect(atLevel(new Float64Array(5), -20)).toEqual(new Float64Array(5));
  });
});

describe('addAt', () => {
  const added = (from?: number) => {
    const into = Float64Array.of(1, 1, 1, 1);
    addAt(into, Float64Array.of(10, 20, 30), from);
    return [...into];
  };

  it.each([
    [undefined, [11, 21, 31, 1]],
    [1, [1, 11, 21, 31]],
    [2, [1, 1, 11, 21]],
    [4, [1, 1, 1, 1]],
    [9, [1, 1, 1, 1]],
    [-1, [21, 31, 1, 1]],
    [-3, [1, 1, 1, 1]],
  ] as const)('from %d on, as far as there is room', (from, expected) => {
    expect(added(from)).toEqual(expected);
  });
});
