import { describe, expect, test } from 'vitest';
import { MomentMeter } from '../../../src/analysis/moment-meter.ts';

const SAMPLE_RATE_HZ = 44_100;

const sine = ({ amplitude, frequencyHz, offset = 0 }: { amplitude: number; frequencyHz: number; offset?: number }, seconds = 1) =>
  Float32Array.from(
    { length: seconds * SAMPLE_RATE_HZ },
    (_, index) => offset + amplitude * Math.sin((2 * Math.PI * frequencyHz * index) / SAMPLE_RATE_HZ),
  );

const lastOf = (samples: Float32Array) => new MomentMeter(SAMPLE_RATE_HZ).hear(samples).at(-1)!;

test('fifteen moments a second, however the sound is cut', () => {
  const samples = sine({ amplitude: 0.1, frequencyHz: 330 }, 2);
  const whole = new MomentMeter(SAMPLE_RATE_HZ).hear(samples);
  const meter = new MomentMeter(SAMPLE_RATE_HZ);
  const cut: unknown[] = [];
  for (let at = 0; at < samples.length; at += 1024) cut.push(...meter.hear(samples.subarray(at, at + 1024)));
  expect(whole).toHaveLength(30);
  expect(cut).toEqual(whole);
});

describe('a sine of amplitude 0.1', () => {
  // full scale = a sine of amplitude 1, whose root mean square is 3.01 dB below its peak
  const moment = lastOf(sine({ amplitude: 0.1, frequencyHz: 330 }));
  test('peak −20 dB, level −23 dB', () => {
    expect(moment.peakDbfs).toBeCloseTo(-20, 2);
    expect(moment.levelDbfs).toBeCloseTo(-20 - 10 * Math.log10(2), 1);
    expect(moment.clipped).toBe(false);
  });
  test('stands in the spectrum at its frequency, at most 1.42 dB too low', () => {
    const strongest = moment.levelsDbfs.reduce((best, level, index, all) => (level > all[best]! ? index : best), 0);
    expect(Math.abs(strongest * moment.binWidthHz - 330)).toBeLessThanOrEqual(moment.binWidthHz / 2);
    expect(moment.levelsDbfs[strongest]).toBeLessThan(-19.99);
    expect(moment.levelsDbfs[strongest]).toBeGreaterThan(-20 - 1.43); // Harris (1978), table I: Hann, scalloping loss 1.42 dB
  });
  test('the spectrum ends at 3 kHz', () => {
    const topHz = (moment.levelsDbfs.length - 1) * moment.binWidthHz;
    expect(topHz).toBeLessThanOrEqual(3000);
    expect(topHz).toBeGreaterThan(3000 - moment.binWidthHz);
  });
});

test('an offset of the converter is no sound, but it is part of the peak', () => {
  const moment = lastOf(sine({ amplitude: 0.01, frequencyHz: 330, offset: 0.5 }));
  expect(moment.levelDbfs).toBeCloseTo(-40 - 10 * Math.log10(2), 1);
  expect(moment.peakDbfs).toBeCloseTo(20 * Math.log10(0.51), 2);
});

test('samples at the rails are a clip, above or below', () => {
  const samples = sine({ amplitude: 0.1, frequencyHz: 330 });
  samples[samples.length - 100] = -1;
  expect(lastOf(samples).clipped).toBe(true);
});

test('digital silence is minus infinity', () => {
  const moment = lastOf(new Float32Array(SAMPLE_RATE_HZ));
  expect(moment).toMatchObject({ peakDbfs: -Infinity, levelDbfs: -Infinity, clipped: false });
});

test('after a gap nothing is left of the sound before it', () => {
  const meter = new MomentMeter(SAMPLE_RATE_HZ);
  meter.hear(sine({ amplitude: 0.5, frequencyHz: 330 }).subarray(0, 43_000));
  meter.forget();
  const moment = meter.hear(new Float32Array(2940))[0]!;
  expect(moment.levelDbfs).toBe(-Infinity);
  expect(Math.max(...moment.levelsDbfs)).toBeLessThan(-190);
});

test('at a low rate the spectrum ends with what the rate can hold', () => {
  const meter = new MomentMeter(4000);
  const moment = meter.hear(new Float32Array(4000)).at(-1)!;
  expect((moment.levelsDbfs.length - 1) * moment.binWidthHz).toBe(2000);
});
