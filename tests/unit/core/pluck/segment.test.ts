import { describe, expect, it } from 'vitest';
import { cutSegment, type PluckSegment, stretchOf } from '../../../../src/core/pluck/segment.ts';
import { rmsOf, stiffPartials, tones } from '../../../support/tones.ts';

const rateHz = 8000;
const count = (seconds: number) => Math.round(seconds * rateHz);
const hum = [50.02, 100.04, 150.06].map((frequencyHz) => ({ frequencyHz, amplitude: 0.05 }));
const ring = stiffPartials({ firstHz: 121, inharmonicity: 0.005, numbers: [1, 2, 3], amplitude: 0.2, decayS: 0.18, startS: 0.8 });
const take = tones([...ring, ...hum], { rateHz, count: count(2), noise: 0.001 });
const cut = (options: Partial<Parameters<typeof cutSegment>[1]>, samples = take) =>
  cutSegment(samples, { touch: count(0.8), rateHz, originS: 0, ...options });

describe('cutSegment', () => {
  it('begins at the touch and holds the sound as it was heard', () => {
    const segment = cut({ originS: 12 })!;
    expect(segment.startS).toBeCloseTo(12.8, 9);
    expect(segment.heard).toEqual(take.slice(count(0.8), count(0.8) + segment.heard.length));
    expect(segment.samples.length).toBe(segment.heard.length);
    expect(segment.heard.length / rateHz).toBeGreaterThan(0.3);
  });

  it('takes away what stood in the room, and nothing of the ring', () => {
    const { samples } = cut({})!;
    const alone = tones(ring, { rateHz, count: count(2) }).slice(count(0.8), count(0.8) + samples.length);
    const rest = rmsOf(samples.map((x, t) => x - alone[t]!));
    expect(rest).toBeLessThan(0.05 * rmsOf(tones(hum, { rateHz, count: count(1) })) + 0.0012);
  });

  it('ends before the next pluck', () => {
    const next = count(0.8) + count(0.3);
    const segment = cut({ next })!;
    expect(count(0.8) + segment.samples.length).toBeLessThan(next);
    expect(segment.samples.length / rateHz).toBeGreaterThan(0.25);
  });

  it.each([
    ['hardly any ring behind it', { next: count(0.83) }],
    ['the end of the sound behind it', { touch: count(1.98) }],
    ['no room before it', { touch: 10 }],
  ])('gives nothing where there is %s', (_, options) => {
    expect(cut(options)).toBeUndefined();
  });

  it('takes over the room of the pluck before where it has none of its own', () => {
    const segment = cut({})!;
    const next = cut({ touch: count(1.2), before: { touch: count(0.8), segment } })!;
    for (const hz of [113, 400, 2000]) expect(next.background.noiseAt(hz)).toBe(segment.background.noiseAt(hz));
    // Tones of long ago cannot be taken away in phase: they stay in the samples, and all of their power is expected there.
    const mean = next.heard.reduce((sum, x) => sum + x, 0) / next.heard.length;
    expect(next.samples).toEqual(next.heard.map((x) => x - mean));
    expect(next.background.lineRemains).toBe(1);
  });

  it('learns its own room where it has one, not the ring before', () => {
    const second = stiffPartials({ firstHz: 121, inharmonicity: 0.005, numbers: [1, 2], amplitude: 0.2, decayS: 0.18, startS: 1.7 });
    const samples = tones([...ring, ...second], { rateHz, count: count(2.4), noise: 0.01 });
    const first = cut({}, samples)!;
    const segment = cut({ touch: count(1.7), before: { touch: count(0.8), segment: first } }, samples)!;
    expect(segment.background.lineRemains).toBeLessThan(1);
    expect(Math.abs(10 * Math.log10(segment.background.noiseAt(1000) / 1e-4))).toBeLessThan(2);
  });
});

describe('stretchOf', () => {
  const segment = cut({})!;

  it('starts later, with a grid that fits', () => {
    const { samples, grid, noise } = stretchOf(segment, { fromS: 0.05, modelFloor: 0 });
    expect(samples).toEqual(segment.samples.subarray(count(0.05)));
    expect([grid.length, grid.rateHz]).toEqual([samples.length, rateHz]);
    expect(grid.size).toBeGreaterThanOrEqual(samples.length);
    expect(noise.length).toBe(grid.binCount);
  });

  it('expects the room’s noise, and a floor that grows with the ring', () => {
    const plain = stretchOf(segment, { fromS: 0, modelFloor: 0 });
    const floored = stretchOf(segment, { fromS: 0, modelFloor: 0.01 });
    const power = rmsOf(plain.samples) ** 2;
    plain.noise.forEach((noise, k) => {
      expect(floored.noise[k]! - noise).toBeCloseTo(0.01 * power, 12);
    });
    const far = Math.round(2500 / plain.grid.binWidthHz);
    expect(plain.noise[far]! / segment.background.noiseAt(2500)).toBeCloseTo(1, 1);
  });

  it('expects more where a line was taken away, most at the line itself', () => {
    const { noise, grid } = stretchOf(segment, { fromS: 0, modelFloor: 0 });
    const over = (hz: number) => noise[Math.round(hz / grid.binWidthHz)]! / segment.background.noiseAt(hz);
    expect(over(100.04)).toBeGreaterThan(3);
    expect(over(100.04)).toBeGreaterThan(over(108));
    expect(over(1500)).toBeLessThan(1.5);
  });

  it('gives an empty stretch behind the end', () => {
    const short: PluckSegment = { ...segment, samples: segment.samples.slice(0, count(0.1)) };
    expect(stretchOf(short, { fromS: 3, modelFloor: 1e-5 }).samples.length).toBe(0);
  });
});
