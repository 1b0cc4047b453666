import { describe, expect, it } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import { demoTake } from '../../../../src/core/synthesis/demo.ts';
import { bell, heldNotes, speechLike, taps } from '../../../../src/core/synthesis/non-belts.ts';
import { spanPartialHz } from '../../../../src/core/synthesis/span.ts';
import { synthesiseTake, type TakeDescription } from '../../../../src/core/synthesis/take.ts';
import { toneHz } from '../../../support/heterodyne.ts';

const { truth } = demoTake();
const short: TakeDescription = { ...truth, sampleRateHz: 16_000, background: {}, room: undefined, corner: undefined };
const largest = (samples: ArrayLike<number>, fromS: number, toS: number, rateHz: number) =>
  Math.max(
    ...Array.from(samples)
      .slice(Math.round(fromS * rateHz), Math.round(toS * rateHz))
      .map(Math.abs),
  );

describe('synthesiseTake', () => {
  it('is the same for the same seed and another for another', () => {
    const noisy = { ...short, background: { whiteDbfs: -40 } };
    expect(synthesiseTake(noisy, 1).samples).toEqual(synthesiseTake(noisy, 1).samples);
    expect(synthesiseTake(noisy, 2).samples).not.toEqual(synthesiseTake(noisy, 1).samples);
  });

  it('is silent until two milliseconds before the first release, and stilled before the next', () => {
    const { samples } = synthesiseTake(short, 1);
    const [first, second] = short.plucks.map(({ startS }) => startS) as [number, number];
    expect(largest(samples, 0, first - 0.003, 16_000)).toBe(0);
    expect(largest(samples, first, first + 0.03, 16_000)).toBeGreaterThan(0.1);
    expect(largest(samples, second - 0.01, second - 0.003, 16_000)).toBeLessThan(
      0.05 * largest(samples, second - 0.07, second - 0.05, 16_000),
    );
  });

  it('peaks where it is told, and is held at the rails beyond', () => {
    expect(largest(synthesiseTake({ ...short, peakDbfs: -6 }, 1).samples, 0, 3, 16_000)).toBeCloseTo(10 ** (-6 / 20), 6);
    const { samples } = synthesiseTake({ ...short, peakDbfs: 12 }, 1);
    expect(samples.filter((value) => Math.abs(value) === 1).length).toBeGreaterThan(100);
    expect(largest(samples, 0, 3, 16_000)).toBe(1);
  });
});

describe('demoTake', () => {
  const demo = demoTake();

  it('leaves the room a while, and each pluck the time to ring', () => {
    const starts = demo.truth.plucks.map(({ startS }) => startS);
    expect(starts.length).toBe(3);
    expect(starts[0]).toBeGreaterThanOrEqual(0.9);
    for (const [index, startS] of starts.entries()) expect((starts[index + 1] ?? 3.2) - startS).toBeGreaterThanOrEqual(0.75 - 1e-9);
    expect(demo.recording.samples.length / demo.recording.sampleRateHz).toBeCloseTo(3.2, 6);
  });

  it('rings at the partial of its force, which lies inside the target', () => {
    const f1 = spanPartialHz(demo.truth.span, 1);
    const { samples, sampleRateHz } = demo.recording;
    // Late in the ring, where the amplitude no longer raises it; damping takes 5 parts in 100 000.
    expect(Math.abs(toneHz(samples, { nearHz: f1, firstS: 2.75, secondS: 2.9, lengthS: 0.15, sampleRateHz }) / f1 - 1)).toBeLessThan(0.001);
    const { lowN, highN } = demo.setup.targetForceN!;
    expect(demo.truth.span.forceN).toBeGreaterThan(lowN);
    expect(demo.truth.span.forceN).toBeLessThan(highN);
  });

  it('tells a setup that the truth agrees with, of a belt in the catalogue', () => {
    const { span } = demo.truth;
    const density = demo.setup.belt!.linearDensityKgPerM;
    expect(Math.abs(density.value - span.linearDensityKgPerM)).toBeLessThan(2 * density.standardUncertainty);
    expect(demo.setup.spanLengthM!.value).toBe(span.spanLengthM);
    const belt = belts.find(({ id }) => id === demo.beltId)!;
    expect(belt.toothPitchM).toBe(demo.setup.belt!.toothPitchM);
    expect(belt.bendingStiffnessNm2.low).toBeLessThan(span.bendingStiffnessNm2);
    expect(belt.bendingStiffnessNm2.high).toBeGreaterThan(span.bendingStiffnessNm2);
  });
});

describe('sounds that are no belt', () => {
  const extent = { seed: 1, sampleRateHz: 16_000, sampleCount: 32_000 };

  it('peak at full scale and begin where they are told', () => {
    const sounds = [
      heldNotes(extent, { notesHz: [131], startS: 0.5, attackS: 0.1, endS: 1.9 }),
      speechLike(extent, { startS: 0.5 }),
      taps(extent, { startsS: [0.5, 1] }),
      bell(extent, { lowestHz: 900, startsS: [0.5] }),
    ];
    for (const sound of sounds) {
      expect(largest(sound, 0, 2, 16_000)).toBeCloseTo(1, 9);
      expect(largest(sound, 0, 0.44, 16_000)).toBe(0);
      expect(largest(sound, 0.5, 0.8, 16_000)).toBeGreaterThan(0.05);
    }
  });

  it('knocks are dead after a few hundredths of a second, a held tone does not fade', () => {
    const knocks = taps(extent, { startsS: [0.5] });
    expect(largest(knocks, 0.6, 0.7, 16_000)).toBeLessThan(0.002);
    const held = heldNotes(extent, { notesHz: [131], startS: 0.5, attackS: 0.1, endS: 1.9 });
    expect(largest(held, 1.5, 1.7, 16_000)).toBeCloseTo(largest(held, 0.8, 1, 16_000), 2);
  });
});
