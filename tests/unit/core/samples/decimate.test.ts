import { describe, expect, it } from 'vitest';
import { createDecimator } from '../../../../src/core/samples/decimate.ts';
import { rmsOf, tones } from '../../../support/tones.ts';

const RATES_HZ = [8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000, 192_000];

/** Everything that comes out, in one array, of samples given in blocks. */
function decimated(samples: Float64Array, sampleRateHz: number, blockSize = samples.length): Float64Array {
  const decimator = createDecimator(sampleRateHz);
  const parts: Float64Array[] = [];
  for (let from = 0; from < samples.length; from += blockSize) parts.push(decimator.push(samples.subarray(from, from + blockSize)));
  parts.push(decimator.finish());
  return Float64Array.from(parts.flatMap((part) => [...part]));
}

describe.each(RATES_HZ)('at %d Hz', (sampleRateHz) => {
  const { factor, rateHz } = createDecimator(sampleRateHz);
  const count = Math.round(0.25 * sampleRateHz);
  /** Away from both ends, where silence is assumed behind them. */
  const inner = (samples: Float64Array) => samples.slice(50, -50);

  it('comes down to 8 to 16 kHz by a whole factor', () => {
    expect(rateHz).toBeGreaterThanOrEqual(8000);
    expect(rateHz).toBeLessThan(16_000);
    expect(rateHz * factor).toBeCloseTo(sampleRateHz, 9);
  });

  it('leaves what lies below 2.5 kHz as it is: same level, same moment', () => {
    for (const frequencyHz of [0, 20, 113, 990, 2000, 2500]) {
      const tone = [{ frequencyHz, amplitude: 1, phase: 0.4 }];
      const output = inner(decimated(tones(tone, { rateHz: sampleRateHz, count }), sampleRateHz));
      const expected = tones(tone, { rateHz, count: output.length + 50 }).slice(50);
      const off = rmsOf(output.map((x, m) => x - expected[m]!)) / rmsOf(expected);
      expect(off).toBeLessThan(0.005);
    }
  });

  it('still lets 3 kHz through, and no later', () => {
    const tone = [{ frequencyHz: 3000, amplitude: 1, phase: 0.4 }];
    const output = inner(decimated(tones(tone, { rateHz: sampleRateHz, count }), sampleRateHz));
    const expected = tones(tone, { rateHz, count: output.length + 50 }).slice(50);
    const gain = output.reduce((sum, x, m) => sum + x * expected[m]!, 0) / expected.reduce((sum, x) => sum + x * x, 0);
    expect(20 * Math.log10(gain)).toBeGreaterThan(-1.5);
    expect(rmsOf(output.map((x, m) => x - gain * expected[m]!))).toBeLessThan(0.005);
  });

  it('lets nothing from above fold back on what lies below 3 kHz, to 60 dB', () => {
    if (factor === 1) return expect(rateHz).toBe(sampleRateHz); // nothing is folded where nothing is left out
    for (const landsHz of [60, 400, 1500, 3000]) {
      for (const frequencyHz of [rateHz - landsHz, rateHz + landsHz, 2 * rateHz - landsHz].filter((hz) => hz < sampleRateHz / 2)) {
        const output = inner(decimated(tones([{ frequencyHz, amplitude: 1 }], { rateHz: sampleRateHz, count }), sampleRateHz));
        expect(20 * Math.log10(Math.SQRT2 * rmsOf(output))).toBeLessThan(-60);
      }
    }
  });

  it('gives the same samples whatever the size of the blocks', () => {
    const noise = tones([], { rateHz: sampleRateHz, count: 3001, noise: 1, seed: 5 });
    const whole = decimated(noise, sampleRateHz);
    for (const blockSize of [1, 7, 128, 1000]) expect(decimated(noise, sampleRateHz, blockSize)).toEqual(whole);
  });

  it('gives an output for the time of every input, no more', () => {
    for (const count of [0, 1, factor, factor + 1, 40 * factor, 1234]) {
      expect(decimated(new Float64Array(count), sampleRateHz).length).toBe(Math.ceil(count / factor));
    }
  });
});

it('takes the samples of a microphone, 32-bit floats, and leaves them alone', () => {
  const samples = Float32Array.from({ length: 500 }, (_, t) => Math.sin(t));
  const before = samples.slice();
  createDecimator(48_000).push(samples);
  expect(samples).toEqual(before);
});

it.each([0, -8000, Number.NaN, Number.POSITIVE_INFINITY])('refuses a rate of %d', (rateHz) => {
  expect(() => createDecimator(rateHz)).toThrow(RangeError);
});
