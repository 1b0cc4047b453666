/** Weighing from typed texts to the setup: readable texts give a density, the others say which field and why, and odd results are asked about. */

import { describe, expect, it } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import type { EnteredSetup } from '../../../../src/ports.ts';
import { DEFAULT_BELT_ID, EMPTY_SETUP, OWN_BELT, understood, weighingInUse } from '../../../../src/ui/state/span-setup.ts';
import { EMPTY_WEIGHING, understoodWeighing, type WeighingTexts, withWeighing } from '../../../../src/ui/state/weighing.ts';

const ABOUT = { beltId: DEFAULT_BELT_ID, toothPitchM: 0.002 };
const METRE: WeighingTexts = { kind: 'piece', length: '1 m', mass: '7.74', scaleStep: '0.01' };
const of = (change: Partial<WeighingTexts>, about: Parameters<typeof understoodWeighing>[1] = ABOUT) =>
  understoodWeighing({ ...METRE, ...change }, about);
const gramsPerMetre = (change: Partial<WeighingTexts>) => (of(change).linearDensityKgPerM?.value ?? Number.NaN) * 1000;

describe('a weighing', () => {
  it.each([
    [{}, 7.746],
    [{ length: '1000' }, 7.746],
    [{ length: '39.37 in', mass: '0.273 oz' }, 7.746], // an avoirdupois ounce is 28.349 523 g (NIST SP 811, B.8)
    [{ kind: 'loop', length: '500' }, 7.746], // teeth of 2 mm
    [{ kind: 'loop', length: '1000 mm' }, 7.746],
    [{ length: '0,5 m', mass: '3,87 g' }, 7.746],
  ] as const)('%o', (change, expected) => {
    expect(gramsPerMetre(change)).toBeCloseTo(expected, 2); // 0.08 % more than the scale says: air bears some of it
  });

  it('takes a typed ± as half a 95 % interval, and a ruler as ± 1 mm', () => {
    const u = (length: string, mass: string) =>
      of({ length, mass, scaleStep: '0.00001' }).linearDensityKgPerM!.standardUncertainty / 0.007746;
    expect(u('1000 ± 20', '7.74')).toBeCloseTo(0.01, 3);
    expect(u('100', '0.774')).toBeCloseTo(Math.hypot(0.005, 0.0041), 3); // ruler, and two cuts within ± 0.5 mm each
  });

  it.each([
    [{ length: 'long' }, 'length', 'not-a-number'],
    [{ mass: '3 m' }, 'mass', 'unknown-unit'],
    [{ scaleStep: '0' }, 'scaleStep', 'not-positive'],
    [{ kind: 'loop', length: '99.5' }, 'length', 'not-whole-teeth'],
  ] as const)('says which field it cannot read: %o', (change, field, why) => {
    const { faults, linearDensityKgPerM } = of(change);
    expect(faults[field]?.why).toBe(why);
    expect(linearDensityKgPerM).toBeUndefined();
  });

  it('needs a pitch for teeth, and says what is still missing', () => {
    expect(of({ kind: 'loop', length: '500' }, { beltId: OWN_BELT }).faults.length?.why).toBe('needs-tooth-pitch');
    expect(understoodWeighing(EMPTY_WEIGHING, ABOUT)).toMatchObject({ faults: {}, missing: ['length', 'mass', 'scaleStep'] });
  });
});

describe('a result beside the catalogue', () => {
  const row = belts.find(({ id }) => id === DEFAULT_BELT_ID)!.linearDensityKgPerM;

  it('is asked about where it lies outside twice the doubt of its row, and not inside', () => {
    const edge = (row.value + 2 * row.standardUncertainty) * 1000;
    expect(of({ mass: String(0.98 * edge) }).expected).toBeUndefined();
    expect(of({ mass: String(1.02 * edge) }).expected).toMatchObject({ high: edge / 1000 });
    expect(of({ mass: '4' }).expected).toBeDefined();
  });

  it('asks of an own belt by its pitch, or by them all', () => {
    const own = { beltId: OWN_BELT, toothPitchM: 0.002 };
    expect(of({ mass: '13' }, own).expected).toBeUndefined(); // wider ones of that pitch weigh so
    expect(of({ mass: '774' }, own).expected).toBeDefined();
    expect(of({ mass: '774' }, { beltId: OWN_BELT }).expected).toBeDefined();
  });
});

describe('a weighing in the setup', () => {
  const used = (entered: EnteredSetup): EnteredSetup => ({ ...entered, ...withWeighing(entered, METRE, of({}).linearDensityKgPerM!) });

  it('keeps what else is known of a belt of the catalogue', () => {
    const before = understood(EMPTY_SETUP).setup.belt!;
    const belt = understood(used(EMPTY_SETUP)).setup.belt!;
    expect(belt).toMatchObject({
      densityFrom: 'weighed',
      bendingStiffnessNm2: before.bendingStiffnessNm2,
      ratedForceN: before.ratedForceN,
    });
    const { value, standardUncertainty } = of({}).linearDensityKgPerM!;
    expect(belt.linearDensityKgPerM.value / value).toBeCloseTo(1, 3);
    expect(belt.linearDensityKgPerM.standardUncertainty / standardUncertainty).toBeCloseTo(1, 1);
  });

  it('says nothing of another belt, and comes back with its own', () => {
    const weighed = used(EMPTY_SETUP);
    const other = { ...weighed, beltId: belts[1]!.id };
    expect(understood(other).setup.belt?.densityFrom).toBe('catalogue');
    expect(understood({ ...other, beltId: DEFAULT_BELT_ID }).setup.belt?.densityFrom).toBe('weighed');
  });

  it('gives way to a density that is typed afterwards', () => {
    const own = used({ ...EMPTY_SETUP, beltId: OWN_BELT, toothPitch: '2' });
    expect(own.linearDensity).toMatch(/^7\.7\d+ g\/m ± 0\.0\d+ g\/m$/u);
    expect(understood(own).setup.belt?.densityFrom).toBe('weighed');
    const typed = { ...own, linearDensity: '9' };
    expect(understood(typed).setup.belt?.densityFrom).toBe('stated');
    expect(weighingInUse(typed)).toBeUndefined();
  });
});
