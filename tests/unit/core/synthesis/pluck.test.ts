import { describe, expect, it } from 'vitest';
import { pluckSound } from '../../../../src/core/synthesis/pluck.ts';
import { glideFactor, partialDecayS, releaseShape, type SimulatedSpan, spanPartialHz } from '../../../../src/core/synthesis/span.ts';
import { toneAmplitude, toneHz } from '../../../support/heterodyne.ts';

const sampleRateHz = 24_000;
const span: SimulatedSpan = {
  forceN: 10,
  spanLengthM: 0.15,
  linearDensityKgPerM: 0.0078,
  bendingStiffnessNm2: 1.2e-4,
  fixity: [0.5, 0.5],
  axialStiffnessN: 0,
  decayS: 0.2,
  dampingGrowth: 0.05,
};
const pluck = { placeShare: 0.37, heightM: 0.001, fingerWidthM: 0.008 };
const listener = { placeShare: 0.29, distanceM: 0.02 };
const ring = (changes: Partial<SimulatedSpan> = {}) =>
  pluckSound({ span: { ...span, ...changes }, pluck, listener, sampleRateHz, sampleCount: sampleRateHz });

/** The undamped frequency less what damping takes from it. */
const ringingHz = (number: number) => {
  const undampedHz = spanPartialHz(span, number);
  return Math.sqrt(undampedHz ** 2 - 1 / (2 * Math.PI * partialDecayS(span, undampedHz)) ** 2);
};

describe('pluckSound', () => {
  it.each([1, 2, 3, 4])('rings in partial %d at its damped frequency', (number) => {
    const heard = toneHz(ring(), { nearHz: ringingHz(number) + 0.3, firstS: 0.02, secondS: 0.2, lengthS: 0.2, sampleRateHz });
    expect(Math.abs(heard / ringingHz(number) - 1)).toBeLessThan(1e-5);
  });

  it.each([1, 3])('lets partial %d die with its own time', (number) => {
    const sound = ring();
    const at = (startS: number) => toneAmplitude(sound, { frequencyHz: ringingHz(number), startS, lengthS: 0.1, sampleRateHz });
    const decayS = 0.15 / Math.log(at(0.05) / at(0.2));
    expect(Math.abs(decayS / partialDecayS(span, spanPartialHz(span, number)) - 1)).toBeLessThan(0.005);
  });

  it('starts high and glides down by the exact law, all partials alike', () => {
    const stretching = { axialStiffnessN: 9000 };
    const sound = ring(stretching);
    const firstM = pluck.heightM * releaseShape(span, { ...pluck, partialCount: 40 })[0]!;
    for (const number of [1, 2]) {
      const startsS = [0.02, 0.06];
      const heard = toneHz(sound, {
        nearHz: 1.015 * ringingHz(number),
        firstS: startsS[0]!,
        secondS: startsS[1]!,
        lengthS: 0.08,
        sampleRateHz,
      });
      // Between the middles of the two windows.
      const factor = glideFactor({ ...span, ...stretching }, firstM * Math.exp(-0.08 / span.decayS));
      expect(Math.abs(heard / ringingHz(number) / factor - 1)).toBeLessThan(0.001);
    }
    const late = toneHz(sound, { nearHz: ringingHz(1), firstS: 0.7, secondS: 0.85, lengthS: 0.1, sampleRateHz });
    expect(Math.abs(late / ringingHz(1) - 1)).toBeLessThan(5e-5);
  });

  it('makes nothing near half the sample rate, so that nothing folds back', () => {
    const slow = pluckSound({
      span,
      pluck: { ...pluck, fingerWidthM: 0.001 },
      listener: { ...listener, distanceM: 0 },
      sampleRateHz: 8000,
      sampleCount: 8000,
    });
    const fast = pluckSound({
      span,
      pluck: { ...pluck, fingerWidthM: 0.001 },
      listener: { ...listener, distanceM: 0 },
      sampleRateHz: 48000,
      sampleCount: 48000,
    });
    const at = (samples: Float64Array, rateHz: number, frequencyHz: number) =>
      toneAmplitude(samples, { frequencyHz, startS: 0.02, lengthS: 0.2, sampleRateHz: rateHz });
    const inBand = at(fast, 48000, ringingHz(5));
    expect(Math.abs(at(slow, 8000, ringingHz(5)) / inBand - 1)).toBeLessThan(0.01);
    for (let frequencyHz = 3700; frequencyHz < 3990; frequencyHz += 20) expect(at(slow, 8000, frequencyHz)).toBeLessThan(0.003 * inBand);
  });
});
