import { describe, expect, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import { type MeasureOptions, measureOptions } from '../../../src/cli/measure-options.ts';
import { setupTold } from '../../../src/cli/told.ts';
import { UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { usageFaultText } from '../../../src/words/cli-en.ts';

const options = (...words: string[]): MeasureOptions => {
  const result = measureOptions([...words, 'a.wav'], belts);
  if (result.kind === 'usage') throw new Error(result.faults.map(usageFaultText).join('\n'));
  return result;
};
const setup = (...words: string[]) => setupTold(options(...words).told, belts);
const complaints = (...words: string[]) => {
  const result = measureOptions([...words, 'a.wav'], belts);
  return result.kind === 'usage' ? result.faults.map(usageFaultText) : [];
};
const BELT = ['--belt', 'curvilinear-2mm-6mm'];

describe('what the options tell of the span', () => {
  it('is nothing where nothing is told', () => {
    expect(setup()).toEqual({
      spanLengthM: undefined,
      belt: undefined,
      ends: UNKNOWN_ENDS,
      toleranceRelative: undefined,
      expectedForceN: undefined,
    });
  });

  it('reads every option in SI', () => {
    const told = setup('--span', '150mm+-0.4mm', '--density', '8.4 g/m+-1%', '--stiffness', '1.2e-4+-2e-5', '--fixity', '0,1+-0.2');
    expect(told.spanLengthM!.value).toBeCloseTo(0.15, 12);
    expect(told.spanLengthM!.standardUncertainty).toBeCloseTo(0.0004, 12);
    expect(told.belt!.densityFrom).toBe('stated');
    expect(told.belt!.linearDensityKgPerM.value).toBeCloseTo(0.0084, 12);
    expect(told.belt!.linearDensityKgPerM.standardUncertainty).toBeCloseTo(0.000084, 12);
    expect(told.belt!.bendingStiffnessNm2).toEqual({ kind: 'known', value: { value: 1.2e-4, standardUncertainty: 2e-5 } });
    expect(told.ends).toEqual([
      { kind: 'known', value: { value: 0, standardUncertainty: 0.1 } },
      { kind: 'known', value: { value: 1, standardUncertainty: 0.2 } },
    ]);
    expect(setup('--tolerance', '10%').toleranceRelative).toBeCloseTo(0.1, 12);
    expect(setup('--tolerance', '10').toleranceRelative).toBeCloseTo(0.1, 12);
  });

  it('assumes the documented uncertainty where none is told', () => {
    const told = setup('--span', '150', '--density', '10', '--stiffness', '1e-4', '--fixity', '0.5');
    expect(told.spanLengthM!.standardUncertainty).toBeCloseTo(0.0005, 12);
    expect(told.belt!.linearDensityKgPerM.standardUncertainty).toBeCloseTo(0.0002, 12);
    expect(told.belt!.bendingStiffnessNm2).toMatchObject({ value: { standardUncertainty: 2e-5 } });
    expect(told.ends[0]).toEqual(told.ends[1]);
    expect(setup('--span', '150+-0').spanLengthM!.standardUncertainty).toBe(0);
  });

  it('keeps of the belt what is not told otherwise', () => {
    const whole = setup(...BELT).belt!;
    expect(whole).toMatchObject({ densityFrom: 'catalogue', toothPitchM: 0.002, bendingStiffnessNm2: { kind: 'range' } });
    const weighed = setup(...BELT, '--density', '8.1').belt!;
    expect(weighed).toEqual({ ...whole, densityFrom: 'stated', linearDensityKgPerM: weighed.linearDensityKgPerM });
    expect(weighed.linearDensityKgPerM.value).toBeCloseTo(0.0081, 12);
    const stiff = setup('--stiffness', '1e-4', ...BELT).belt!;
    expect(stiff).toMatchObject({ densityFrom: 'catalogue', bendingStiffnessNm2: { kind: 'known' } });
  });

  it('has no belt from a stiffness alone, and the usual stiffness from a density alone', () => {
    expect(setup('--stiffness', '1e-4').belt).toBeUndefined();
    const range = setup('--density', '7.8').belt!.bendingStiffnessNm2;
    expect(range).toMatchObject({ kind: 'range' });
    expect((range as { low: number }).low).toBeCloseTo(5e-5, 9);
  });

  it('counts teeth of the belt, wherever the belt stands', () => {
    expect(setup('--span', '75 teeth', ...BELT).spanLengthM!.value).toBeCloseTo(0.15, 12);
    expect(complaints('--span', '75 teeth')).toEqual(["--span: '75 teeth' is in teeth, which have a length only with --belt."]);
  });

  it.each([
    ['5N..40N', 5, 40],
    ['5..40', 5, 40],
    ['0.5..40N', 0.5, 40],
    ['1..2lbf', 4.4482216152605, 8.896443230521],
    ['1lbf..2', 4.4482216152605, 8.896443230521],
    ['500..900ozf', 139.0069, 250.2125],
    ['5N...0.04kN', 5, 40],
  ])('expects %s', (text, lowN, highN) => {
    const range = setup('--expect', text).expectedForceN!;
    expect(range.lowN).toBeCloseTo(lowN, 4);
    expect(range.highN).toBeCloseTo(highN, 4);
  });
});

describe('what is refused', () => {
  it.each([
    ['--span', '150 N', /the unit 'N' is not one of mm, cm, m, in, ft, teeth/],
    ['--span', '0', /not above 0/],
    ['--span', '-5mm', /not above 0/],
    ['--span', 'abc', /not a length\. Write one such as/],
    ['--span', '1,234', /thousands or decimals/],
    ['--span', '150mm+-', /not a length/],
    ['--density', '8.4 g', /the unit 'g' is not one of g\/m, kg\/m/],
    ['--stiffness', '1e-4 Nm', /the unit 'Nm' is not one of N m²/],
    ['--fixity', '1.2', /not a fixity/],
    ['--fixity', '-0.5', /not a fixity/],
    ['--fixity', '0,5', /not a fixity/],
    ['--fixity', '0,1,1', /not a fixity/],
    ['--fixity', '0,', /empty|not a fixity/],
    ['--tolerance', '0%', /not above 0/],
    ['--tolerance', '10%+-1%', /not a share/],
    ['--expect', '40N..5N', /not a range from low to high/],
    ['--expect', '5N..5N', /not a range from low to high/],
    ['--expect', '5N', /not two forces/],
    ['--expect', '5N-40N', /not two forces/],
    ['--expect', '..40N', /not two forces/],
    ['--expect', '2kg..3kg', /the unit 'kg' is not one of/],
    ['--expect', '0..40N', /not above 0/],
    ['--belt', 'no-such', /There are: curvilinear-2mm-6mm, /],
  ])('%s %s', (option, text, message) => {
    const told = complaints(`${option}=${text}`);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(message);
    expect(told[0]).toContain(option);
  });

  it('tells all bad values at once', () => {
    expect(complaints('--span=x', '--density=y', '--belt=z')).toHaveLength(3);
  });

  it('asks for a file', () => {
    const result = measureOptions(['--json'], belts);
    expect(result).toMatchObject({ kind: 'usage', faults: [{ what: 'no-files' }] });
    expect(measureOptions(['--help'], belts)).toMatchObject({ kind: 'options', help: true });
    expect(measureOptions(['--batch', 't.csv'], belts)).toMatchObject({ kind: 'options', batch: 't.csv', files: [] });
  });
});
