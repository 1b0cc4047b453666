import { describe, expect, it } from 'vitest';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { type ClippedSpan, clippedHz } from '../../../../src/core/vibration/clipped-beam.ts';
import { elementFirstHz } from '../../../support/element-beam.ts';

const SPAN: ClippedSpan = {
  forceN: 8,
  spanLengthM: 0.18,
  linearDensityKgPerM: 0.0078,
  bendingStiffnessNm2: 1.2e-4,
  fixity: 0.5,
  clipMassKg: 0.0004,
};

describe('clippedHz', () => {
  it.each([0, 0.5, 1])('agrees with finite elements where the ends hold by %s', (fixity) => {
    for (const [spanLengthM, forceN, clipMassKg] of [
      [0.08, 3, 0.0002],
      [0.18, 8, 0.0004],
      [0.4, 20, 0.0015],
    ] as const) {
      const span = { ...SPAN, spanLengthM, forceN, clipMassKg, fixity };
      const elements = elementFirstHz({ ...span, fixity: [fixity, fixity], pointMass: { kg: clipMassKg, placeShare: 0.5 } });
      expect(Math.abs(clippedHz(span) / elements - 1)).toBeLessThan(1e-5);
    }
  });

  it('follows the loaded string where hardly any stiffness is left: θ tan θ = μ L/M', () => {
    // Rayleigh, The Theory of Sound, § 136: a string with a load at its middle
    const span = { ...SPAN, bendingStiffnessNm2: 1e-12, fixity: 0 };
    const stringHz = Math.sqrt(span.forceN / span.linearDensityKgPerM) / (2 * span.spanLengthM);
    const θ = (Math.PI / 2) * (clippedHz(span) / stringHz);
    const ratio = (span.linearDensityKgPerM * span.spanLengthM) / span.clipMassKg;
    expect(Math.abs((θ * Math.tan(θ)) / ratio - 1)).toBeLessThan(1e-4);
  });

  it('is the span itself without a clip', () => {
    const bare = partialHz({ ...SPAN, fixity: [0.5, 0.5], number: 1 });
    expect(clippedHz({ ...SPAN, clipMassKg: 0 })).toBeCloseTo(bare, 9);
    expect(Math.abs(clippedHz({ ...SPAN, clipMassKg: 1e-9 }) / bare - 1)).toBeLessThan(1e-6);
  });

  it('refuses a clip wider than the span', () => {
    expect(() => clippedHz({ ...SPAN, clipHalfWidthM: 0.09 })).toThrow('clippedHz needs a finite freeLengthM above 0');
  });
});
