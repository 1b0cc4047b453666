import { describe, expect, it } from 'vitest';
import { glideFactor, partialDecayS, releaseShape, type SimulatedSpan, spanPartialHz } from '../../../../src/core/synthesis/span.ts';

const span: SimulatedSpan = {
  forceN: 30,
  spanLengthM: 0.15,
  linearDensityKgPerM: 0.0078,
  bendingStiffnessNm2: 2e-4,
  fixity: [1, 1],
  axialStiffnessN: 10_000,
  decayS: 0.2,
  dampingGrowth: 0.1,
};

describe('spanPartialHz', () => {
  it('is the clamped tensioned beam', () => {
    // Root of the frequency equation of a clamped beam under tension in 30-digit arithmetic: eps 0.017213259, f 214.4106468 Hz.
    expect(Math.abs(spanPartialHz(span, 1) - 214.4106468)).toBeLessThan(1e-7);
  });
});

describe('partialDecayS', () => {
  it('is the decay time told for the first partial, and falls with frequency squared', () => {
    const first = spanPartialHz(span, 1);
    expect(partialDecayS(span, first)).toBeCloseTo(0.2, 12);
    expect(partialDecayS(span, 3 * first)).toBeCloseTo(0.2 / (0.9 + 0.1 * 9), 12);
  });
});

describe('releaseShape', () => {
  it('is the triangle of a plucked string where neither stiffness nor finger rounds it', () => {
    const limp = { ...span, bendingStiffnessNm2: 0, fixity: [0, 0] as const };
    const shape = releaseShape(limp, { placeShare: 0.3, fingerWidthM: 0, partialCount: 40 });
    // Fourier series of a triangle, as in any textbook on the plucked string: q_n = 2 h sin(n π p) / (n² π² p (1 − p)).
    shape.slice(0, 8).forEach((value, index) => {
      const n = index + 1;
      const series = (2 * Math.sin(n * Math.PI * 0.3)) / (n * n * Math.PI ** 2 * 0.21);
      // The sum of 40 terms falls short of the peak by about 2 %, and is scaled to it.
      expect(Math.abs(value / shape[0]! - series / ((2 * Math.sin(Math.PI * 0.3)) / (Math.PI ** 2 * 0.21)))).toBeLessThan(1e-12);
      expect(Math.abs(value - series)).toBeLessThan(0.03 * Math.abs(series) + 1e-12);
    });
  });

  it('is softer under a wider finger and on a stiffer belt', () => {
    const tenth = (changes: Partial<SimulatedSpan>, fingerWidthM: number) =>
      Math.abs(releaseShape({ ...span, ...changes }, { placeShare: 0.35, fingerWidthM, partialCount: 20 })[9]!);
    expect(tenth({}, 0.012)).toBeLessThan(tenth({}, 0.004));
    expect(tenth({ bendingStiffnessNm2: 1e-3 }, 0.004)).toBeLessThan(tenth({}, 0.004));
  });

  it('leaves out even partials at the middle', () => {
    const shape = releaseShape(span, { placeShare: 0.5, fingerWidthM: 0.01, partialCount: 6 });
    for (const index of [1, 3, 5]) expect(Math.abs(shape[index]!)).toBeLessThan(1e-12);
  });
});

describe('glideFactor', () => {
  // Exact frequency of the hardening spring x'' + x + c x³ = 0 (Duffing) by the complete elliptic integral, in 30-digit arithmetic;
  // EA N, force N, amplitude mm, span mm → relative rise.
  it.each([
    [10_000, 30, 1, 0.013600062],
    [10_000, 30, 2, 0.053190668],
    [50_000, 30, 1, 0.066015477],
    [10_000, 5, 2, 0.28337158],
  ])('with EA %d N and %d N at %d mm is the exact one', (axialStiffnessN, forceN, amplitudeMm, expected) => {
    expect(Math.abs(glideFactor({ ...span, axialStiffnessN, forceN }, amplitudeMm / 1000) - 1 - expected)).toBeLessThan(5e-9);
  });

  it('is one at rest and on a belt that does not stretch back', () => {
    expect(glideFactor(span, 0)).toBe(1);
    expect(glideFactor({ ...span, axialStiffnessN: 0 }, 0.002)).toBe(1);
  });
});
