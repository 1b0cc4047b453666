import { describe, expect, expectTypeOf, it } from 'vitest';
import { beltById, belts, catalogueSchema } from '../../../shared/belts.ts';
import type { CatalogueBelt } from '../../../src/core/belt/catalogue.ts';

describe('the belt catalogue', () => {
  it('has the type that the core knows', () => {
    expectTypeOf<(typeof belts)[number]>().toExtend<CatalogueBelt>();
    expectTypeOf<CatalogueBelt>().toExtend<(typeof belts)[number]>();
    expectTypeOf<keyof CatalogueBelt>().toEqualTypeOf<keyof (typeof belts)[number]>();
  });

  it('finds a belt by its id, the commonest first', () => {
    expect(belts[0]!.id).toBe('curvilinear-2mm-6mm');
    expect(beltById('curvilinear-2mm-6mm')).toBe(belts[0]);
    expect(beltById('no-such-belt')).toBeUndefined();
  });

  it('holds the pitches and forms that people meet', () => {
    const kinds = new Set(belts.map(({ toothForm, system, toothPitchM }) => `${toothForm} ${system ?? ''} ${toothPitchM}`));
    for (const kind of [
      'curvilinear G 0.002',
      'curvilinear G 0.003',
      'curvilinear H 0.003',
      'curvilinear G 0.005',
      'curvilinear H 0.005',
    ]) {
      expect(kinds).toContain(kind);
    }
    // ISO 5296 trapezoidal inch pitch of 2/25 in: 0.080 × 25.4 mm = 2.032 mm.
    for (const kind of ['trapezoidal  0.002032', 'trapezoidal  0.0025', 'trapezoidal  0.005']) expect(kinds).toContain(kind);
  });

  it('carries about 10 % of doubt in every density, since nobody weighed these belts', () => {
    for (const { linearDensityKgPerM } of belts) {
      const relative = linearDensityKgPerM.standardUncertainty / linearDensityKgPerM.value;
      expect(relative).toBeGreaterThan(0.095);
      expect(relative).toBeLessThan(0.16);
    }
  });

  // Allowable tension for 25.4 mm of width, SDP/SI handbook D265, page T-15, table 3, printed in newtons.
  it.each([
    ['curvilinear-2mm-6mm', 111],
    ['curvilinear-g-3mm-9mm', 507],
    ['curvilinear-h-3mm-9mm', 285],
    ['curvilinear-h-5mm-15mm', 454],
    ['curvilinear-g-5mm-15mm', 712],
    ['trapezoidal-2.5mm-6mm', 312],
    ['trapezoidal-5mm-10mm', 930],
  ])('%s is rated in proportion to %d N for an inch', (id, newtonsPerInch) => {
    const belt = beltById(id)!;
    expect(belt.ratedForceN.value / (newtonsPerInch * (belt.widthM / 0.0254))).toBeCloseTo(1, 2);
  });

  // Sheet of a manufacturer, polyurethane with steel cord, 5 mm trapezoidal: 0.021 kg/m at 10 mm, 0.034 kg/m at 16 mm width.
  it.each([
    ['trapezoidal-5mm-10mm', 0.021],
    ['trapezoidal-5mm-16mm', 0.034],
  ])('%s weighs what is printed', (id, kgPerM) => {
    expect(Math.abs(beltById(id)!.linearDensityKgPerM.value - kgPerM)).toBeLessThanOrEqual(0.0005);
  });

  it('weighs the same for each millimetre of width within a family', () => {
    const families = new Map<string, number>();
    for (const { toothForm, system, toothPitchM, widthM, linearDensityKgPerM } of belts) {
      const family = `${toothForm} ${system} ${toothPitchM}`;
      const perWidth = linearDensityKgPerM.value / widthM;
      expect(perWidth / (families.get(family) ?? perWidth)).toBeCloseTo(1, 2);
      families.set(family, perWidth);
    }
    expect(families.size).toBe(8);
  });

  it('refuses a broken row', () => {
    const row = belts[0]!;
    const broken = [
      [{ ...row, label: undefined }],
      [{ ...row, widthM: -1 }],
      [{ ...row, brand: 'x' }],
      [row, row],
      [{ ...row, bendingStiffnessNm2: { ...row.bendingStiffnessNm2, low: 1, high: 0.5 } }],
      [{ ...row, linearDensityKgPerM: { ...row.linearDensityKgPerM, source: '' } }],
      [],
    ];
    expect(catalogueSchema.safeParse([row]).success).toBe(true);
    for (const rows of broken) expect(catalogueSchema.safeParse(rows).success).toBe(false);
  });
});
