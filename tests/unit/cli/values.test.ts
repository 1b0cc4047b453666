import { describe, expect, it } from 'vitest';
import { cellFixity, cellValue, toldFixity, toldForceRange, toldQuantity, toldShare, type Value } from '../../../src/cli/values.ts';

const close = (value: number) => expect.closeTo(value, 12);
const why = <T>(value: Value<T>) => (value.ok ? undefined : value.fault.why);
const LENGTH = { kind: 'length', defaultUnit: 'mm' } as const;

describe('a quantity', () => {
  it('is told in SI, its uncertainty only where it was written', () => {
    expect(toldQuantity('150', LENGTH)).toEqual({ ok: true, value: { value: close(0.15) } });
    expect(toldQuantity('15cm+-1mm', LENGTH)).toEqual({ ok: true, value: { value: close(0.15), standardUncertainty: close(0.001) } });
    expect(toldQuantity('150+-0', LENGTH)).toEqual({ ok: true, value: { value: close(0.15), standardUncertainty: 0 } });
    expect(toldQuantity('75 teeth', { ...LENGTH, toothPitchM: 0.002 })).toEqual({ ok: true, value: { value: close(0.15) } });
  });

  it('says what is wrong, of which kind, and which unit was no unit', () => {
    expect(toldQuantity('150 N', LENGTH)).toEqual({ ok: false, fault: { why: 'unknown-unit', kind: 'length', unit: 'N' } });
    expect(toldQuantity('75 teeth', LENGTH)).toEqual({ ok: false, fault: { why: 'needs-tooth-pitch', kind: 'length', unit: 'teeth' } });
    expect(toldQuantity('', LENGTH)).toMatchObject({ fault: { why: 'empty' } });
    expect(toldQuantity('1,234', LENGTH)).toMatchObject({ fault: { why: 'ambiguous-number' } });
  });
});

describe('a share', () => {
  it.each(['10%', '10 %', '10'])('%s is a tenth', (text) => {
    expect(toldShare(text)).toEqual({ ok: true, value: close(0.1) });
  });

  it.each([
    ['10%+-1%', 'not-a-number'],
    ['0', 'not-positive'],
    ['-10%', 'not-positive'],
    ['10 mm', 'unknown-unit'],
    ['', 'empty'],
  ])('%o: %s', (text, expected) => {
    expect(why(toldShare(text))).toBe(expected);
  });
});

describe('two forces', () => {
  // A pound-force is 4.448 221 615 260 5 N exactly (NIST SP 811, appendix B.8).
  it.each([
    ['5N..40N', 5, 40],
    ['5 .. 40', 5, 40],
    ['5...40', 5, 40],
    ['0,5..1,5', 0.5, 1.5],
    ['1..2lbf', 4.4482216152605, 8.896443230521],
    ['1lbf..2', 4.4482216152605, 8.896443230521],
    ['1lbf..9N', 4.4482216152605, 9],
  ])('%s', (text, lowN, highN) => {
    expect(toldForceRange(text)).toEqual({ ok: true, value: { lowN: close(lowN), highN: close(highN) } });
  });

  it.each([
    ['5', 'not-a-range'],
    ['5-40', 'not-a-range'],
    ['5..', 'not-a-range'],
    ['..40', 'not-a-range'],
    ['..', 'not-a-range'],
    ['', 'not-a-range'],
    ['1..2..3', 'not-a-range'],
    ['5+-1..40', 'not-a-range'],
    ['5..40+-1', 'not-a-range'],
    ['40..5', 'range-upside-down'],
    ['5..5', 'range-upside-down'],
    ['500..0.6kN', 'range-upside-down'], // one unit named is the unit of both
    ['0..5', 'not-positive'],
    ['-5..5', 'not-positive'],
    ['x..5', 'not-a-number'],
    ['5..9kg', 'unknown-unit'],
  ])('%o is refused: %s', (text, expected) => {
    expect(why(toldForceRange(text))).toBe(expected);
  });
});

describe('fixity', () => {
  it('in one number holds for both ends, in two for each', () => {
    expect(toldFixity('0.5')).toEqual({ ok: true, value: [{ value: 0.5 }, { value: 0.5 }] });
    expect(toldFixity('0,1+-0.2')).toEqual({ ok: true, value: [{ value: 0 }, { value: 1, standardUncertainty: 0.2 }] });
    expect(toldFixity(' 0 , 1 ')).toEqual({ ok: true, value: [{ value: 0 }, { value: 1 }] });
  });

  it.each([
    ['1.01', 'not-a-fixity'],
    ['-0.1', 'not-a-fixity'],
    ['0,1,1', 'not-a-fixity'],
    ['0,', 'empty'],
    ['', 'empty'],
    ['half', 'not-a-number'],
  ])('%o is refused: %s', (text, expected) => {
    expect(why(toldFixity(text))).toBe(expected);
  });
});

describe('a cell', () => {
  const millimetres = { factor: 1e-3, zeroAllowed: false } as const;

  it('holds a plain number in the unit of its column', () => {
    expect(cellValue('150', { separator: ',', ...millimetres })).toEqual({ ok: true, value: close(0.15) });
    expect(cellValue('150.5', { separator: ',', ...millimetres })).toEqual({ ok: true, value: close(0.1505) });
    expect(cellValue('150,5', { separator: ';', ...millimetres })).toEqual({ ok: true, value: close(0.1505) });
  });

  it.each([
    ['150 mm', 'not-a-number'],
    ['', 'not-a-number'],
    ['0', 'not-positive'],
    ['-3', 'not-positive'],
  ])('%o is refused: %s', (text, expected) => {
    expect(why(cellValue(text, { separator: ',', ...millimetres }))).toBe(expected);
  });

  it('may be 0 where its column allows that', () => {
    expect(cellValue('0', { separator: ',', factor: 1e-3, zeroAllowed: true })).toEqual({ ok: true, value: 0 });
    expect(why(cellValue('-1', { separator: ',', factor: 1e-3, zeroAllowed: true }))).toBe('not-positive');
  });
});

describe('a cell of fixity', () => {
  const ends = (text: string, separator: ',' | ';') => {
    const told = cellFixity(text, separator);
    return told.ok ? told.value.map((end) => ('kind' in end ? end.kind : end.value)) : told.fault.why;
  };

  it('parts the ends by comma or semicolon where commas part the columns', () => {
    expect(ends('0.25', ',')).toEqual([0.25, 0.25]);
    expect(ends('0,1', ',')).toEqual([0, 1]);
    expect(ends('0.5;1', ',')).toEqual([0.5, 1]);
  });

  it('reads the comma as the decimal sign where semicolons part the columns', () => {
    expect(ends('0,25', ';')).toEqual([0.25, 0.25]);
    expect(ends('0,25;1', ';')).toEqual([0.25, 1]);
    expect(ends('0;1', ';')).toEqual([0, 1]);
  });

  it.each(['0,1', '1,0', ' 0,1 '])('%o there may be a number or two ends, and is asked about', (text) => {
    expect(ends(text, ';')).toBe('ends-or-decimal');
  });

  it('refuses what is beyond 0 and 1 with either sign', () => {
    expect(ends('1,5', ';')).toBe('not-a-fixity');
    expect(ends('0.2;2', ',')).toBe('not-a-fixity');
  });
});
