import { describe, expect, it } from 'vitest';
import { belts } from '../../../../shared/belts.ts';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { benchEnd, knowledgeOf } from '../../../../src/ui/state/own-belts.ts';
import { EMPTY_SETUP, understood } from '../../../../src/ui/state/span-setup.ts';
import { initialState, reduce } from '../../../../src/ui/state/state.ts';

const got = { at: '2026-03-02T08:15:00.000Z', zone: 'Europe/Lisbon' };
const row = belts[0]!;
const belt = (change: Partial<KeptBelt> = {}): KeptBelt => ({
  id: 'roll-1',
  made: got,
  changedAt: got.at,
  name: 'The roll in the drawer',
  catalogueId: row.id,
  linearDensityKgPerM: [],
  bendingStiffnessNm2: [],
  axialStiffnessN: [],
  ratedForceN: [],
  ...change,
});
const value = (number: number, u: number, from: 'told' | 'weighed' | 'bench') => ({ value: number, standardUncertainty: u, from, got });

describe('knowledgeOf', () => {
  it('is the catalogue row until somebody measured something', () => {
    const known = knowledgeOf(belt())!;
    expect(known.densityFrom).toBe('catalogue');
    expect(known.linearDensityKgPerM.value).toBe(row.linearDensityKgPerM.value);
  });

  it('takes the last of each value, and leaves what nobody measured to the row', () => {
    const weighed = belt({ linearDensityKgPerM: [value(0.0075, 0.0004, 'told'), value(0.0082, 0.00004, 'weighed')] });
    const known = knowledgeOf(weighed)!;
    expect([known.linearDensityKgPerM.value, known.densityFrom]).toEqual([0.0082, 'weighed']);
    expect(known.bendingStiffnessNm2).toEqual({ kind: 'range', low: row.bendingStiffnessNm2.low, high: row.bendingStiffnessNm2.high });
    expect([known.ratedForceN, known.toothPitchM]).toEqual([row.ratedForceN.value, row.toothPitchM]);
    expect(known.provedOnWeights).toBeUndefined();
  });

  it('counts as proved once its stiffness came from plucks under weights', () => {
    const proved = belt({ linearDensityKgPerM: [value(0.0082, 0.00004, 'bench')], bendingStiffnessNm2: [value(1.2e-4, 4e-6, 'bench')] });
    expect(knowledgeOf(proved)).toMatchObject({ densityFrom: 'weighed', provedOnWeights: true, bendingStiffnessNm2: { kind: 'known' } });
  });

  it('brings a measured stretch stiffness along, with and without a measured density', () => {
    const stretched = { axialStiffnessN: [value(19_000, 400, 'told')] };
    const expected = { value: 19_000, standardUncertainty: 400 };
    expect(knowledgeOf(belt(stretched))?.axialStiffnessN).toEqual(expected);
    expect(knowledgeOf(belt({ ...stretched, linearDensityKgPerM: [value(0.0082, 4e-5, 'weighed')] }))?.axialStiffnessN).toEqual(expected);
  });

  it('of a belt that neither its owner nor the catalogue tells of knows nothing', () => {
    expect(knowledgeOf(belt({ catalogueId: undefined }))).toBeUndefined();
  });
});

describe('a kept belt in the setup', () => {
  const proved = belt({
    linearDensityKgPerM: [value(0.0082, 0.00004, 'bench')],
    bendingStiffnessNm2: [value(1.2e-4, 4e-6, 'bench')],
    endFixity: [value(0.5, 0.02, 'bench')],
  });
  const entered = { ...EMPTY_SETUP, beltId: 'roll-1', spanLength: '60', ends: ['bench', 'clip'] as const };

  it('gives its own values and the ends of its bench', () => {
    const { setup, beltFrom, keptName, hasBenchEnds } = understood(entered, [proved]);
    expect([beltFrom, keptName, hasBenchEnds]).toEqual(['kept', 'The roll in the drawer', true]);
    expect(setup.belt?.linearDensityKgPerM.value).toBe(0.0082);
    expect(setup.ends[0]).toEqual({ kind: 'known', value: { value: 0.5, standardUncertainty: 0.02 } });
    expect(setup.ends[1]).toEqual({ kind: 'between', low: 0.7, high: 1 });
  });

  it('takes ends as on the bench for not known where the belt was on none', () => {
    expect(benchEnd(belt())).toBeUndefined();
    expect(understood(entered, [belt()]).setup.ends[0]).toEqual({ kind: 'unknown' });
  });

  it('is understood anew when what is kept changes, and asks for a density once the belt is gone', () => {
    const before = initialState(entered);
    expect(before.understood.beltFrom).toBe('typed');
    const after = reduce(before, { kind: 'own-belts-known', belts: [proved] });
    expect(after.understood.setup.belt?.linearDensityKgPerM.value).toBe(0.0082);
    const gone = reduce(after, { kind: 'own-belts-known', belts: [] });
    expect(gone.understood.setup.belt).toBeUndefined();
  });

  it('lets a typed stiffness go before the measured one', () => {
    const typed = understood({ ...entered, bendingStiffness: '2e-4' }, [proved]).setup.belt?.bendingStiffnessNm2;
    expect(typed).toMatchObject({ kind: 'known', value: { value: 2e-4 } });
  });
});
