import { describe, expect, it, vi } from 'vitest';
import { backgroundOf } from '../../../../src/core/pluck/background.ts';
import { withoutLines } from '../../../../src/core/pluck/steady-lines.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { rmsOf, spread, type Tone, tones } from '../../../support/tones.ts';

/** Many draws; a busy machine takes its time. */
vi.setConfig({ testTimeout: 30_000 });

const rateHz = 8000;
const count = 5600; // 0.7 s

describe('lines', () => {
  it.each([
    ['one', [117.3]],
    ['hum with its harmonics', [49.98, 99.96, 149.94, 199.92, 249.9]],
    ['two of a fan', [480, 512]],
    ['three of a motor', [164.4, 493.2, 1315.2]],
  ])('%s: each to 0.1 Hz, with its amplitude and phase, and nothing elsewhere', (_, frequencies) => {
    for (let seed = 1; seed <= 5; seed++) {
      const random = createRandom(seed, 7);
      const list = frequencies.map((frequencyHz) => ({ frequencyHz, amplitude: random.between(0.02, 0.1), phase: random.between(0, 6) }));
      const { lines } = backgroundOf(tones(list, { rateHz, count, noise: 0.002, seed }), rateHz);
      for (const { frequencyHz, amplitude, phase } of list) {
        // A strong line may leave a little of itself beside it, which is found as a weak line of its own.
        const near = lines.filter((line) => Math.abs(line.frequencyHz - frequencyHz) < 2.5);
        const line = near.reduce((a, b) => (Math.hypot(b.re, b.im) > Math.hypot(a.re, a.im) ? b : a));
        expect(Math.abs(line.frequencyHz - frequencyHz)).toBeLessThan(0.1);
        expect(Math.abs(Math.hypot(line.re, line.im) / amplitude - 1)).toBeLessThan(0.06);
        const middle = Math.PI * (count / rateHz); // phase is best known in the middle of the stretch
        const turns = (Math.atan2(-line.im, line.re) - phase + middle * (line.frequencyHz - frequencyHz)) / (2 * Math.PI);
        expect(Math.abs(turns - Math.round(turns))).toBeLessThan(0.02);
      }
      const isOfOne = (hz: number) => frequencies.some((frequencyHz) => Math.abs(hz - frequencyHz) < 2.5);
      expect(lines.filter((line) => !isOfOne(line.frequencyHz))).toEqual([]);
    }
  });

  it('are none in noise', () => {
    for (let seed = 1; seed <= 20; seed++) expect(backgroundOf(tones([], { rateHz, count, noise: 0.01, seed }), rateHz).lines).toEqual([]);
  });

  it('are none in the end of a ring that dies away', () => {
    const ring = [113, 228, 347].map((frequencyHz) => ({ frequencyHz, amplitude: 0.1, decayS: 0.2 }));
    expect(backgroundOf(tones(ring, { rateHz, count, noise: 0.0005 }), rateHz).lines).toEqual([]);
  });

  it('are none in digital silence', () => {
    expect(backgroundOf(new Float64Array(count), rateHz).lines).toEqual([]);
  });
});

describe('noise', () => {
  it.each([0.0005, 0.5])('white: its variance at every frequency, standard deviation %d', (noise) => {
    const drawn = Array.from({ length: 20 }, (_, seed) => backgroundOf(tones([], { rateHz, count, noise, seed: seed + 1 }), rateHz));
    for (const frequencyHz of [50, 113, 400, 1000, 2500]) {
      const { mean, sd } = spread(drawn.map(({ noiseAt }) => Math.log(noiseAt(frequencyHz) / noise ** 2)));
      expect(Math.abs(mean)).toBeLessThan((4 * sd) / Math.sqrt(drawn.length));
      expect(sd).toBeLessThan(0.35); // 1.5 dB
    }
  });

  it('is not raised by the lines that stand in it', () => {
    const hum = [1, 2, 3, 4, 5, 6].map((n) => ({ frequencyHz: 50.02 * n, amplitude: 0.1 / n }));
    const samples = (list: readonly Tone[]) => tones(list, { rateHz, count, noise: 0.003, seed: 2 });
    const [without, within] = [backgroundOf(samples([]), rateHz), backgroundOf(samples(hum), rateHz)];
    for (const frequencyHz of [60, 113, 180, 280, 600, 2000]) {
      // The lines themselves stand 20 dB and more over this.
      expect(Math.abs(10 * Math.log10(within.noiseAt(frequencyHz) / without.noiseAt(frequencyHz)))).toBeLessThan(5);
    }
  });

  it('follows its colour: first differences of white noise have 4 sin²(π f/rate) of its power', () => {
    const drawn = Array.from({ length: 12 }, (_, seed) => {
      const white = tones([], { rateHz, count: count + 1, noise: 0.1, seed: seed + 1 });
      return backgroundOf(
        white.slice(1).map((x, t) => x - white[t]!),
        rateHz,
      );
    });
    for (const frequencyHz of [300, 800, 1500, 3000]) {
      const expected = 0.01 * 4 * Math.sin((Math.PI * frequencyHz) / rateHz) ** 2;
      const { mean, sd } = spread(drawn.map(({ noiseAt }) => Math.log(noiseAt(frequencyHz) / expected)));
      expect(Math.abs(mean)).toBeLessThan((4 * sd) / Math.sqrt(drawn.length));
    }
  });

  it('is never nothing, so that it can weigh: silence, a constant, the shortest stretch, any frequency', () => {
    for (const samples of [new Float64Array(count), new Float64Array(count).fill(0.4), new Float64Array(240)]) {
      const background = backgroundOf(samples, rateHz);
      for (const frequencyHz of [0, 1, 113, 3999, 4000, 9000]) {
        expect(background.noiseAt(frequencyHz)).toBeGreaterThan(0);
        expect(background.noiseAt(frequencyHz)).toBeLessThan(1);
      }
    }
  });
});

describe('withoutLines', () => {
  const hum = [50.02, 100.04, 150.06].map((frequencyHz, i) => ({ frequencyHz, amplitude: 0.1, phase: i }));
  const longer = tones(hum, { rateHz, count: 3 * count, noise: 0.001 });
  const { lines } = backgroundOf(longer.subarray(0, count), rateHz);

  it('takes the tones away where they were found, down to the noise', () => {
    const rest = withoutLines(longer.subarray(0, count), { lines, rateHz, startIndex: 0 });
    expect(rmsOf(rest)).toBeLessThan(1.2 * 0.001);
  });

  it('and in what follows, in phase, by 25 dB and more', () => {
    const later = longer.subarray(count, 2 * count);
    const rest = withoutLines(later, { lines, rateHz, startIndex: count });
    expect(20 * Math.log10(rmsOf(rest) / rmsOf(later))).toBeLessThan(-25);
  });

  it('changes nothing without lines, and never the samples that it was given', () => {
    const before = longer.slice();
    expect(withoutLines(longer, { lines: [], rateHz, startIndex: 5 })).toEqual(longer);
    withoutLines(longer, { lines, rateHz, startIndex: 0 });
    expect(longer).toEqual(before);
  });
});
