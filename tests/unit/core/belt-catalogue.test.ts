import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beltById, belts } from '../../../shared/belts.ts';
import { beltKnowledge, ownBelt, stiffnessLike } from '../../../src/core/belt/catalogue.ts';

const like = (linearDensityKgPerM: number, toothPitchM?: number) => stiffnessLike({ linearDensityKgPerM, toothPitchM, catalogue: belts });

describe('beltKnowledge', () => {
  it('takes the row as it is, and says that nobody weighed the belt', () => {
    expect(beltKnowledge(beltById('curvilinear-2mm-6mm')!)).toEqual({
      linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00078 },
      densityFrom: 'catalogue',
      bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
      ratedForceN: 26.2,
      toothPitchM: 0.002,
    });
  });
});

describe('ownBelt', () => {
  it('keeps what its owner tells', () => {
    const stiffness = { value: 1.2e-4, standardUncertainty: 2e-5 };
    const belt = ownBelt({
      linearDensityKgPerM: { value: 0.0081, standardUncertainty: 0.0001 },
      densityFrom: 'weighed',
      bendingStiffnessNm2: stiffness,
      ratedForceN: 25,
      toothPitchM: 0.002,
      catalogue: belts,
    });
    expect(belt.bendingStiffnessNm2).toEqual({ kind: 'known', value: stiffness });
    expect(belt).toMatchObject({ densityFrom: 'weighed', ratedForceN: 25, toothPitchM: 0.002 });
  });

  it('is stated, not weighed, unless told', () => {
    expect(ownBelt({ linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0 }, catalogue: belts }).densityFrom).toBe('stated');
  });
});

describe('stiffness that follows from density', () => {
  it('is that of the commonest belt at its density', () => {
    const { low, high } = like(0.0078);
    expect(low).toBeCloseTo(5e-5, 10);
    expect(high).toBeCloseTo(3e-4, 10);
  });

  it('lies on a straight line in logarithms between two belts', () => {
    const [a, b] = [beltById('curvilinear-2mm-6mm')!, beltById('curvilinear-2mm-9mm')!];
    const middle = Math.sqrt(a.linearDensityKgPerM.value * b.linearDensityKgPerM.value);
    expect(like(middle).low).toBeCloseTo(Math.sqrt(a.bendingStiffnessNm2.low * b.bendingStiffnessNm2.low), 9);
    expect(like(middle).high).toBeCloseTo(Math.sqrt(a.bendingStiffnessNm2.high * b.bendingStiffnessNm2.high), 9);
  });

  it('holds the range of every belt of the catalogue at its own density', () => {
    for (const belt of belts) {
      const { low, high } = like(belt.linearDensityKgPerM.value);
      expect(low).toBeLessThanOrEqual(belt.bendingStiffnessNm2.low * (1 + 1e-12));
      expect(high).toBeGreaterThanOrEqual(belt.bendingStiffnessNm2.high * (1 - 1e-12));
    }
  });

  it('keeps to belts of the tooth pitch, where it is told and the catalogue has it', () => {
    const wideBelt = beltById('curvilinear-2mm-15mm')!;
    const known = like(wideBelt.linearDensityKgPerM.value, 0.002);
    expect(known.high).toBeCloseTo(wideBelt.bendingStiffnessNm2.high, 8);
    expect(like(wideBelt.linearDensityKgPerM.value).high).toBeGreaterThan(1.5 * known.high);
    expect(like(0.02, 0.014)).toEqual(like(0.02));
  });

  it('rises with density, everywhere, and stays a range', () => {
    const density = fc.double({ min: 1e-4, max: 1, noNaN: true });
    fc.assert(
      fc.property(density, density, (one, other) => {
        const [light, heavy] = [like(Math.min(one, other)), like(Math.max(one, other))];
        const slack = 1 + 1e-12;
        return light.low <= heavy.low * slack && light.high <= heavy.high * slack && light.low < light.high && light.low > 0;
      }),
    );
  });
});
