/** The figures that the corpus and the benchmark state of their takes: bounds, densities, shares, verdicts. */

import { expect, test } from 'vitest';
import { isOctaveType, isRight } from '../../bench/judge.ts';
import { quantile, share } from '../../bench/statistics.ts';
import { altered } from '../../support/corpus/alter.ts';
import { densityAt, hiss, rumble } from '../../support/corpus/surroundings.ts';
import { dampedToneBoundHz } from '../../support/corpus/take.ts';

// Fisher information of amplitude, phase, frequency and decay time summed sample by sample, 48 kHz over 1 s: 6.473858e-3 Hz at 110 Hz,
// 0.1 s and 20 dB, 1.826151e-2 Hz at 0.05 s; the closed form lies within 1 % of it.
test.each([
  [0.1, 6.473858e-3],
  [0.05, 1.826151e-2],
])('the bound of a damped tone of %d s at 20 dB is the one of its Fisher information', (decayS, boundHz) => {
  const variance = 0.5 / 100; // η = A²/(2σ²) = 100 with A = 1
  expect(Math.abs(dampedToneBoundHz({ densityPerHz: (2 * variance) / 48_000, amplitude: 1, decayS }) / boundHz - 1)).toBeLessThan(0.01);
});

test('the density of white noise is twice its variance over the rate, that of pink noise falls by 3 dB an octave', () => {
  const extent = { seed: 4, sampleRateHz: 16_000, sampleCount: 160_000 };
  expect((densityAt(hiss(extent), { frequencyHz: 400, sampleRateHz: 16_000 }) * 16_000) / 2).toBeCloseTo(1, 0);
  const pink = rumble(extent);
  const fall = densityAt(pink, { frequencyHz: 100, sampleRateHz: 16_000 }) / densityAt(pink, { frequencyHz: 1600, sampleRateHz: 16_000 });
  expect(10 * Math.log10(fall)).toBeGreaterThan(9);
  expect(10 * Math.log10(fall)).toBeLessThan(15);
});

// R, prop.test(8, 10, correct = FALSE): 0.4901625 to 0.9433178.
test("a share has Wilson's interval", () => {
  const { low, high } = share(8, 10);
  expect(low).toBeCloseTo(0.4901625, 5);
  expect(high).toBeCloseTo(0.9433178, 5);
});

test('quantiles lie on lines between the order statistics', () => {
  expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  expect(quantile([4, 1, 3, 2], 1)).toBe(4);
  expect(quantile([], 0.5)).toBeUndefined();
});

test('an octave, a third of the frequency and another partial count as octave-type, a near miss does not', () => {
  const of = (hertz: number) => ({ hertz, truthHz: 100, partialsHz: [100, 230, 390, 590] });
  for (const hertz of [50, 33.3, 150, 200, 231, 388]) expect(isOctaveType(of(hertz)), String(hertz)).toBe(true);
  for (const hertz of [98, 102, 125, 270]) expect(isOctaveType(of(hertz)), String(hertz)).toBe(false);
  expect(isRight(of(100.9))).toBe(true);
  expect(isRight(of(101.1))).toBe(false);
});

test('each alteration does what it is named for', () => {
  const sampleRateHz = 16_000;
  const tone = Float64Array.from(
    { length: 16_000 },
    (_, index) => (index < 8000 ? 0.01 : 0.5) * Math.sin((2 * Math.PI * 440 * index) / sampleRateHz),
  );
  const sound = { samples: tone, sampleRateHz };
  const level = (samples: Float64Array, from: number, to: number) => Math.max(...samples.subarray(from, to));
  const railed = altered(sound, { kind: 'gain', gainDb: 12, soft: false }).samples;
  expect(level(railed, 8000, 16_000)).toBe(1);
  const evened = altered(sound, { kind: 'gain control', aimDbfs: -14, mostGainDb: 24, attackS: 0.005, releaseS: 0.2 }).samples;
  expect(level(evened, 15_000, 16_000) / level(evened, 6000, 8000)).toBeLessThan(5);
  const steps = new Set(altered(sound, { kind: 'few bits', bits: 8 }).samples);
  expect(steps.size).toBeLessThanOrEqual(256);
  const line = altered(sound, { kind: 'narrow line', cornerHz: 100, times: 3 });
  expect(line.sampleRateHz).toBe(48_000);
  expect(line.samples.length).toBe(48_000);
  expect(level(line.samples, 40_000, 47_000)).toBeCloseTo(0.5, 1);
  const quieter = altered(
    { samples: hiss({ seed: 1, sampleRateHz, sampleCount: 48_000 }), sampleRateHz },
    { kind: 'noise suppression', deepestDb: 18, learnS: 0.3 },
  );
  expect(level(quieter.samples, 30_000, 47_000)).toBeLessThan(2);
});
