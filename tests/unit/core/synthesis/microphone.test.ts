import { describe, expect, it } from 'vitest';
import { atRails, throughCorner } from '../../../../src/core/synthesis/microphone.ts';
import { gainDb } from '../../../support/gain.ts';

const sampleRateHz = 32_768;

describe('throughCorner', () => {
  // −10 log10(2) at the corner of any maximally flat filter; far below it 6 dB an octave for each order.
  it.each([1, 2, 4] as const)('of order %d', (order) => {
    const gain = (frequencyHz: number) =>
      gainDb((sound) => throughCorner(sound, { cornerHz: 200, order }, sampleRateHz), { frequencyHz, sampleRateHz });
    const corners = order === 4 ? 2 : 1;
    expect(gain(200)).toBeCloseTo(-3.0103 * corners, 2);
    expect(gain(20) - gain(10)).toBeCloseTo(6.02 * order, 0);
    expect(gain(4000)).toBeCloseTo(0, 1);
  });
});

describe('atRails', () => {
  it('leaves what fits, to the precision of samples, and holds the rest at full scale', () => {
    const sound = Float64Array.of(0, 0.25, -0.25, 1, -1, 1.0001, -7, 1 / 3);
    expect(atRails(sound)).toEqual(Float32Array.of(0, 0.25, -0.25, 1, -1, 1, -1, 1 / 3));
  });

  it('gives samples of their own', () => {
    const sound = Float64Array.of(2, -2);
    atRails(sound);
    expect(sound).toEqual(Float64Array.of(2, -2));
  });
});
