import { describe, expect, it } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import type { EnteredSetup } from '../../../../src/ports.ts';
import { DEFAULT_BELT_ID, EMPTY_SETUP, OWN_BELT, understood } from '../../../../src/ui/state/span-setup.ts';

const setupOf = (change: Partial<EnteredSetup>) => understood({ ...EMPTY_SETUP, ...change });

describe('understood', () => {
  it('starts with a 2 mm pitch, 6 mm wide belt and no length', () => {
    const belt = belts.find(({ id }) => id === DEFAULT_BELT_ID)!;
    expect([belt.toothPitchM, belt.widthM]).toEqual([0.002, 0.006]);
    const { setup, faults } = understood(EMPTY_SETUP);
    expect(setup.spanLengthM).toBeUndefined();
    expect(setup.targetForceN).toBeUndefined();
    expect(faults).toEqual({});
  });

  it.each([
    ['150', 0.15],
    ['150 mm', 0.15],
    ['150,5', 0.1505],
    ['5.9 in', 0.14986], // an inch is 25.4 mm exactly
    ['75 teeth', 0.15], // of 2 mm
  ])('reads the span length %s', (spanLength, lengthM) => {
    expect(setupOf({ spanLength }).setup.spanLengthM?.value).toBeCloseTo(lengthM, 9);
  });

  it('takes ± on the page as half a 95 % interval', () => {
    expect(setupOf({ spanLength: '150', spanKnownTo: '1' }).setup.spanLengthM?.standardUncertainty).toBeCloseTo(0.0005, 12);
    expect(setupOf({ spanLength: '150 ± 0.4', spanKnownTo: '1' }).setup.spanLengthM?.standardUncertainty).toBeCloseTo(0.0002, 12);
  });

  it('assumes what a ruler gives where the uncertainty is not told', () => {
    expect(setupOf({ spanLength: '150', spanKnownTo: '' }).setup.spanLengthM?.standardUncertainty).toBe(0.0005);
  });

  it('takes the target in the unit chosen beside it, or in its own', () => {
    // NIST SP 811, B.8: 1 pound-force is 4.448222 N
    const pounds = setupOf({ targetFrom: '2', targetTo: '3', forceUnit: 'lbf' }).setup.targetForceN;
    expect(pounds?.lowN).toBeCloseTo(2 * 4.448222, 5);
    expect(setupOf({ targetFrom: '2 lbf', targetTo: '14' }).setup.targetForceN).toMatchObject({ highN: 14 });
    expect(setupOf({ targetFrom: '9', targetTo: '6' }).setup.targetForceN).toEqual({ lowN: 6, highN: 9 });
  });

  it('makes no target of one end, or of two that are the same', () => {
    expect(setupOf({ targetFrom: '6' }).setup.targetForceN).toBeUndefined();
    const same = setupOf({ targetFrom: '6', targetTo: '6 N' });
    expect(same.setup.targetForceN).toBeUndefined();
    expect(same.faults.targetTo).toEqual({ ok: false, why: 'same-as-other-end' });
  });

  it('knows the own belt by its density, and says nothing without one', () => {
    expect(setupOf({ beltId: OWN_BELT }).setup.belt).toBeUndefined();
    const belt = setupOf({ beltId: OWN_BELT, linearDensity: '8.4 g/m' }).setup.belt!;
    expect(belt.linearDensityKgPerM.value).toBeCloseTo(0.0084, 12);
    expect(belt.densityFrom).toBe('stated');
  });

  it('puts a told stiffness, tolerance and ends in the place of what is assumed', () => {
    const { setup } = setupOf({ bendingStiffness: '1e-4', tolerance: '10 %', ends: ['pulley', 'clip'] });
    expect(setup.belt?.bendingStiffnessNm2).toMatchObject({ kind: 'known', value: { value: 1e-4 } });
    expect(setup.toleranceRelative).toBeCloseTo(0.1, 12);
    expect(setup.ends).toEqual([
      { kind: 'between', low: 0, high: 0.5 },
      { kind: 'between', low: 0.7, high: 1 },
    ]);
  });

  it('knows a smooth idler from a toothed pulley, and how the belt lies', () => {
    const { setup } = setupOf({ ends: ['idler', 'unknown'], lie: 'flat' });
    expect(setup.ends).toEqual([{ kind: 'between', low: 0, high: 0.3 }, { kind: 'unknown' }]);
    expect(setup.lie).toBe('flat');
  });

  it.each([
    [{ spanLength: 'long' }, 'spanLength', 'not-a-number'],
    [{ spanLength: '-5' }, 'spanLength', 'not-positive'],
    [{ targetFrom: '3 parrots' }, 'targetFrom', 'unknown-unit'],
    [{ beltId: OWN_BELT, spanLength: '75 teeth' }, 'spanLength', 'needs-tooth-pitch'],
  ] as const)('says which field it cannot read: %o', (change, field, why) => {
    const { setup, faults } = setupOf(change);
    expect(faults[field]?.why).toBe(why);
    expect(setup.spanLengthM).toBeUndefined();
  });
});
