import { describe, expect, it } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import { demoTake } from '../../../../src/core/synthesis/demo.ts';
import { spanPartialHz } from '../../../../src/core/synthesis/span.ts';
import { toneHz } from '../../../support/heterodyne.ts';

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
