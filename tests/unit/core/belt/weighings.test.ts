import { describe, expect, it } from 'vitest';
import { beltById, belts } from '../../../../shared/belts.ts';
import type { Weighing } from '../../../../src/core/belt/density.ts';
import { combinedWeighings, unexpectedDensity } from '../../../../src/core/belt/weighings.ts';

const cut = (lengthM: number, massKg: number): Weighing => ({
  kind: 'piece',
  lengthM: { value: lengthM, standardUncertainty: 0.0005 },
  massKg,
  scaleStepKg: 1e-4,
});
const density = (value: number) => ({ value, standardUncertainty: value * 0.005 });

describe('combinedWeighings', () => {
  it('leans on the surest and is surer than each', () => {
    const { linearDensityKgPerM, single, agree } = combinedWeighings([cut(1, 0.0079), cut(0.5, 0.0039), cut(0.25, 0.002)]);
    expect(agree).toBe(true);
    expect(linearDensityKgPerM.value).toBeGreaterThan(0.0078);
    expect(linearDensityKgPerM.value).toBeLessThan(0.008);
    for (const one of single) expect(linearDensityKgPerM.standardUncertainty).toBeLessThan(one.linearDensityKgPerM.standardUncertainty);
  });

  it('never gets below what the scale and the air do to all of them', () => {
    const { linearDensityKgPerM } = combinedWeighings(Array.from({ length: 50 }, () => cut(2, 0.0158)));
    expect(linearDensityKgPerM.standardUncertainty / linearDensityKgPerM.value).toBeGreaterThanOrEqual(0.001);
  });

  it('widens and says so where the cuts do not agree', () => {
    const apart = combinedWeighings([cut(1, 0.0079), cut(1, 0.0087)]);
    expect(apart.agree).toBe(false);
    expect(apart.linearDensityKgPerM.standardUncertainty).toBeGreaterThan(0.0003);
  });

  it('takes one as it is, and asks for one', () => {
    const one = combinedWeighings([cut(1, 0.0079)]);
    expect(one.linearDensityKgPerM).toEqual(one.single[0]!.linearDensityKgPerM);
    expect(() => combinedWeighings([])).toThrow('at least one');
  });
});

describe('unexpectedDensity', () => {
  const row = beltById('curvilinear-2mm-6mm')!;

  it('has no question about a density of its row', () => {
    expect(unexpectedDensity(density(0.0084), { row, toothPitchM: 0.002, catalogue: belts })).toBeUndefined();
  });

  it('names the wider belt that weighs as much', () => {
    const found = unexpectedDensity(density(0.0118), { row, toothPitchM: 0.002, catalogue: belts })!;
    expect(found.high).toBeCloseTo(0.00936, 5);
    expect(found.looksLike[0]!.id).toBe('curvilinear-2mm-9mm');
  });

  it('without a row asks only beyond every belt of the pitch', () => {
    expect(unexpectedDensity(density(0.0118), { toothPitchM: 0.002, catalogue: belts })).toBeUndefined();
    expect(unexpectedDensity(density(0.05), { toothPitchM: 0.002, catalogue: belts })).toBeDefined();
  });
});
