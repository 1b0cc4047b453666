import { describe, expect, it } from 'vitest';
import {
  type Coefficients,
  filtered,
  firstOrderHighPass,
  firstOrderLowPass,
  resonator,
  secondOrderHighPass,
} from '../../../../src/core/synthesis/filter.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { db, gainDb } from '../../../support/gain.ts';

const sampleRateHz = 32_768;
const gain = (coefficients: Coefficients, frequencyHz: number) =>
  gainDb((sound) => filtered(sound, coefficients), { frequencyHz, sampleRateHz });

/** The bilinear transform sees a frequency as tan(π f/rate): Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.2.2. */
const warped = (frequencyHz: number) => Math.tan((Math.PI * frequencyHz) / sampleRateHz);

describe('Butterworth’s |H|² = 1 / (1 + x²ⁿ), the corner in x on its proper side', () => {
  const frequencies = [40, 130, 200, 333, 2000, 9000, 15_000];

  it.each([
    ['first-order high-pass', firstOrderHighPass, 1],
    ['second-order high-pass', secondOrderHighPass, 2],
  ] as const)('%s', (_, made, order) => {
    for (const cornerHz of [200, 3000]) {
      for (const frequencyHz of frequencies) {
        const x = warped(cornerHz) / warped(frequencyHz);
        expect(gain(made(cornerHz, sampleRateHz), frequencyHz)).toBeCloseTo(-db(1 + x ** (2 * order)), 2);
      }
    }
  });

  it('first-order low-pass', () => {
    for (const cornerHz of [200, 3000]) {
      for (const frequencyHz of frequencies) {
        const x = warped(frequencyHz) / warped(cornerHz);
        expect(gain(firstOrderLowPass(cornerHz, sampleRateHz), frequencyHz)).toBeCloseTo(-db(1 + x ** 2), 2);
      }
    }
  });
});

describe('the resonator', () => {
  // A pole pair of quality Q = centre/width: |H|² = 1 / (1 + Q² (x − 1/x)²), x = frequency over centre.
  it.each([
    [700, 100],
    [270, 80],
    [3010, 140],
  ])('of %d Hz and %d Hz of width', (centreHz, bandwidthHz) => {
    for (const frequencyHz of [centreHz, centreHz - bandwidthHz / 2, centreHz + bandwidthHz / 2, 3 * centreHz]) {
      const x = warped(frequencyHz) / warped(centreHz);
      const expected = -db(1 + ((centreHz / bandwidthHz) * (x - 1 / x)) ** 2);
      expect(gain(resonator(centreHz, bandwidthHz, sampleRateHz), frequencyHz)).toBeCloseTo(expected, 2);
    }
    expect(gain(resonator(centreHz, bandwidthHz, sampleRateHz), centreHz)).toBeCloseTo(0, 3);
  });
});

const MADE: readonly Coefficients[] = [
  firstOrderHighPass(100, sampleRateHz),
  secondOrderHighPass(100, sampleRateHz),
  firstOrderLowPass(100, sampleRateHz),
  resonator(500, 50, sampleRateHz),
];

describe.each(MADE)('every filter: %o', (coefficients) => {
  const noise = (seed: number) => Float64Array.from({ length: 500 }, createRandom(seed).gaussian);

  it('stays at rest when nothing comes in, and comes to rest again', () => {
    const silence = new Float64Array(100);
    expect(filtered(silence, coefficients)).toEqual(silence);
    const impulse = new Float64Array(sampleRateHz);
    impulse[0] = 1;
    expect(Math.abs(filtered(impulse, coefficients).at(-1)!)).toBeLessThan(1e-9);
  });

  it('is linear, does not look ahead, and leaves what it was given', () => {
    const [one, two] = [noise(1), noise(2)];
    const before = one.slice();
    const [ofOne, ofTwo] = [filtered(one, coefficients), filtered(two, coefficients)];
    filtered(
      one.map((x, t) => 3 * x - two[t]!),
      coefficients,
    ).forEach((y, t) => {
      expect(y).toBeCloseTo(3 * ofOne[t]! - ofTwo[t]!, 10);
    });
    expect(filtered(one.subarray(0, 200), coefficients)).toEqual(ofOne.slice(0, 200));
    expect(one).toEqual(before);
  });

  it('comes later for what comes later', () => {
    const late = new Float64Array(600);
    late.set(noise(3), 100);
    expect(filtered(late, coefficients).slice(100)).toEqual(filtered(noise(3), coefficients));
  });
});

it('what is constant passes low-pass filters alone', () => {
  const constant = new Float64Array(sampleRateHz).fill(0.5);
  expect(MADE.map((coefficients) => filtered(constant, coefficients).at(-1)!)).toEqual([0, 0, 0.5, 0].map((y) => expect.closeTo(y, 6)));
});
