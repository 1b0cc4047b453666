import { describe, expect, it } from 'vitest';
import { type ClipMeasurement, clipDensity } from '../../../../src/core/belt/clip-mass.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { elementFirstHz } from '../../../support/element-beam.ts';

const TRUTH = { forceN: 8, spanLengthM: 0.18, linearDensityKgPerM: 0.0082, bendingStiffnessNm2: 1.4e-4, fixity: [0.3, 0.3] as const };
/** On this span 120 elements are good to a millionth. */
const ELEMENTS = 120;
const sure = (value: number, relative: number) => ({ value, standardUncertainty: value * relative });

function measured(kg: number, random?: ReturnType<typeof createRandom>): ClipMeasurement {
  const off = (relative: number): number => 1 + (random ? relative * random.gaussian() : 0);
  return {
    bareHz: sure(elementFirstHz(TRUTH, ELEMENTS) * off(0.001), 0.001),
    clippedHz: sure(elementFirstHz({ ...TRUTH, pointMass: { kg, placeShare: 0.5 } }, ELEMENTS) * off(0.001), 0.001),
    clipMassKg: sure(kg * off(0.005), 0.005),
    clipWidthM: 0,
    clipPlaceUM: 0.001,
    spanLengthM: { value: TRUTH.spanLengthM * off(0.0015), standardUncertainty: 0.00027 },
    bendingStiffnessNm2: { low: 5e-5, high: 3e-4 },
    fixity: { value: 0.4, standardUncertainty: 0.3 },
  };
}

describe('clipDensity', () => {
  it('gives the density to 1 to 2 % for clips of 0.2 to 0.4 of the span, and says so', () => {
    for (const ratio of [0.2, 0.3, 0.4]) {
      const found = clipDensity(measured(ratio * 0.0082 * 0.18))!;
      const { value, standardUncertainty } = found.linearDensityKgPerM;
      expect(standardUncertainty / value).toBeLessThan(0.02);
      expect(Math.abs(value - TRUTH.linearDensityKgPerM)).toBeLessThan(standardUncertainty);
      expect(Math.abs(found.massRatio / ratio - 1)).toBeLessThan(0.03);
    }
  });

  it('holds the truth within two of its standard uncertainties in nearly every repeat', () => {
    const repeats = 60;
    let held = 0;
    for (let seed = 1; seed <= repeats; seed++) {
      const { value, standardUncertainty } = clipDensity(measured(0.00045, createRandom(seed)))!.linearDensityKgPerM;
      if (Math.abs(value - TRUTH.linearDensityKgPerM) < 2 * standardUncertainty) held++;
    }
    expect(held).toBeGreaterThanOrEqual(54);
  });

  it('has a budget that sums to the whole, and names the frequencies first for a light clip', () => {
    const { contributions, linearDensityKgPerM } = clipDensity(measured(0.0001))!;
    expect(Math.hypot(...contributions.map(({ standardUncertainty }) => standardUncertainty))).toBeCloseTo(
      linearDensityKgPerM.standardUncertainty,
      12,
    );
    const largest = contributions.toSorted((a, b) => b.standardUncertainty - a.standardUncertainty)[0]!;
    expect(largest.input).toMatch(/^frequency/);
  });

  it('is nothing where the clip did not lower the sound', () => {
    const told = measured(0.0004);
    expect(clipDensity({ ...told, clippedHz: told.bareHz })).toBeUndefined();
  });
});
