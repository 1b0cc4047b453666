import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatMeasured, inUnit, type ParsedQuantity, parseQuantity, type QuantityKind, unitsOf } from '../../../src/core/quantity.ts';

const length = (text: string, more: { toothPitchM?: number; decimalSign?: '.' | ',' | 'any' } = {}) =>
  parseQuantity(text, { kind: 'length', defaultUnit: 'mm', ...more });
const read = (text: string, kind: QuantityKind, defaultUnit: string) => parseQuantity(text, { kind, defaultUnit });

const siOf = (parsed: ParsedQuantity): number => {
  if (!parsed.ok) throw new Error(`not read: ${parsed.why}`);
  return parsed.value;
};
const doubtOf = (parsed: ParsedQuantity): number | undefined => (parsed.ok ? parsed.standardUncertainty : Number.NaN);
const whyOf = (parsed: ParsedQuantity) => (parsed.ok ? undefined : parsed.why);

describe('reading a quantity', () => {
  it.each([
    ['150', 0.15],
    ['150 mm', 0.15],
    ['150mm', 0.15],
    ['  150\u00a0mm ', 0.15],
    ['15 cm', 0.15],
    ['0.15 m', 0.15],
    ['0,15 m', 0.15],
    ['1,5 m', 1.5],
    ['.15m', 0.15],
    ['5.9 in', 0.14986],
    ['5.9"', 0.14986],
    ['5.9″', 0.14986],
    ['1 ft', 0.3048],
    ['1e3', 1],
    ['1.5E-1 m', 0.15],
    ['1 234,5', 1.2345],
    ['1\u202f234.5 mm', 1.2345],
    ["1'234.5", 1.2345],
    ['1,234.5', 1.2345],
    ['1.234,5', 1.2345],
    ['1,234,567', 1234.567],
    ['1.234', 0.001234],
    ['0,125', 0.000125],
  ])('%s is %d m', (text, metres) => {
    expect(siOf(length(text))).toBeCloseTo(metres, 12);
  });

  it('reads each kind in its own units', () => {
    expect(siOf(read('7.8', 'linear-density', 'g/m'))).toBeCloseTo(0.0078, 15);
    expect(siOf(read('0.0078 kg/m', 'linear-density', 'g/m'))).toBe(0.0078);
    expect(siOf(read('1.2e-4 N m2', 'stiffness', 'N m2'))).toBe(1.2e-4);
    expect(siOf(read('1.2e-4 N·m²', 'stiffness', 'N m2'))).toBe(1.2e-4);
    expect(siOf(read('50 Hz', 'frequency', 'Hz'))).toBe(50);
    expect(siOf(read('12 %', 'percent', '%'))).toBeCloseTo(0.12, 15);
    expect(siOf(read('500 mg', 'mass', 'g'))).toBeCloseTo(0.0005, 15);
    expect(siOf(read('0.5', 'number', ''))).toBe(0.5);
  });

  it('counts teeth of the belt in hand, and refuses them without one', () => {
    const parsed = length('75 teeth', { toothPitchM: 0.002 });
    expect(parsed).toEqual({ ok: true, value: 0.15, unit: 'teeth' });
    expect(length('75 teeth')).toEqual({ ok: false, why: 'needs-tooth-pitch', unit: 'teeth' });
    expect(whyOf(length('150 mm ± 1 tooth'))).toBe('needs-tooth-pitch');
  });

  it.each(['150 N', '150 Mm', '150 MM', '150 foo', '0x10', '150 mm 3', '150 %'])('%s: never guesses a unit', (text) => {
    expect(whyOf(length(text))).toBe('unknown-unit');
  });

  it('takes no mass for a force', () => {
    expect(read('2 kg', 'force', 'N')).toEqual({ ok: false, why: 'unknown-unit', unit: 'kg' });
    expect(whyOf(read('2 lb', 'force', 'N'))).toBe('unknown-unit');
  });

  it.each([
    'abc',
    'NaN',
    'Infinity',
    '-Infinity mm',
    '1e999',
    '1e',
    '1.2.3',
    '1,23,456',
    '12 34',
    '1 23',
    '--5',
    '1/2',
    '5½',
    ',',
    'mm',
    '1e5e5',
  ])('%s is no number', (text) => {
    expect(['not-a-number', 'unknown-unit']).toContain(whyOf(length(text)));
  });

  it('refuses digits that may be grouped or not, unless the decimal sign is known', () => {
    expect(whyOf(length('1,234'))).toBe('ambiguous-number');
    expect(whyOf(length('1,234', { decimalSign: '.' }))).toBe('ambiguous-number');
    expect(whyOf(length('1.234', { decimalSign: ',' }))).toBe('ambiguous-number');
    expect(siOf(length('1,234', { decimalSign: ',' }))).toBeCloseTo(0.001234, 12);
    expect(siOf(length('1,234', { decimalSign: 'any' }))).toBeCloseTo(0.001234, 12);
    expect(whyOf(length('1,234,567', { decimalSign: 'any' }))).toBe('not-a-number');
  });

  it('tells empty, zero and negative apart', () => {
    expect(whyOf(length(''))).toBe('empty');
    expect(whyOf(length(' \t\u00a0'))).toBe('empty');
    expect(whyOf(length('0'))).toBe('not-positive');
    expect(whyOf(length('-5 mm'))).toBe('not-positive');
    expect(whyOf(length('−5 mm'))).toBe('not-positive');
    expect(whyOf(length('1e-400'))).toBe('not-positive');
    expect(parseQuantity('0', { kind: 'force', defaultUnit: 'N', zeroAllowed: true })).toEqual({ ok: true, value: 0, unit: 'N' });
  });

  it.each([
    ['150mm+-0.5mm', 0.15, 0.0005],
    ['150 mm ± 0.5', 0.15, 0.0005],
    ['150 ± 0.5 mm', 0.15, 0.0005],
    ['(150 ± 0.5) mm', 0.15, 0.0005],
    ['150 mm +/- 0,5 mm', 0.15, 0.0005],
    ['5.9 ± 0.1 in', 0.14986, 0.00254],
    ['15 cm ± 1 mm', 0.15, 0.001],
    ['150mm+-1%', 0.15, 0.0015],
    ['150 ± 1 %', 0.15, 0.0015],
    ['150mm+-0', 0.15, 0],
  ])('%s carries its standard uncertainty', (text, value, u) => {
    expect(siOf(length(text))).toBeCloseTo(value, 12);
    expect(doubtOf(length(text))).toBeCloseTo(u, 12);
  });

  it('refuses a broken uncertainty rather than dropping it', () => {
    expect(whyOf(length('150mm+-'))).toBe('not-a-number');
    expect(whyOf(length('150mm+-x'))).toBe('not-a-number');
    expect(whyOf(length('150mm+--1mm'))).toBe('not-a-number');
    expect(whyOf(length('150mm+-1N'))).toBe('unknown-unit');
    expect(whyOf(length('150+-1+-1'))).toBe('not-a-number');
  });

  it('has no uncertainty where none was written', () => {
    expect(length('150')).toEqual({ ok: true, value: 0.15, unit: 'mm' });
  });

  it('survives any text, quickly and without throwing', () => {
    const nasty = fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[\d.,' e+\-±%()mN/]{0,60}$/u));
    fc.assert(
      fc.property(nasty, (text) => {
        const parsed = length(text);
        return parsed.ok ? Number.isFinite(parsed.value) && parsed.value > 0 : parsed.why.length > 0;
      }),
    );
    for (const text of ['1'.repeat(1e6), ','.repeat(1e5), `${'1,'.repeat(50)}x`, '('.repeat(1e5), `1${' '.repeat(1e5)}mm`]) {
      expect(length(text).ok).toBe(false);
    }
  });

  it('throws on a default unit of another kind: the caller is wrong, not the person', () => {
    expect(() => parseQuantity('1', { kind: 'length', defaultUnit: 'N' })).toThrow(RangeError);
  });
});

it('reads back what is printed, to half of the last digit, in any unit and with either sign', () => {
  const kinds = fc.constantFrom<QuantityKind>('length', 'linear-density', 'force', 'mass', 'stiffness', 'frequency');
  const amount = fc.double({ min: 0.5, max: 9000, noNaN: true });
  const share = fc.double({ min: 0.001, max: 0.4, noNaN: true });
  fc.assert(
    fc.property(kinds, fc.nat(), amount, share, fc.constantFrom('.', ','), (kind, pick, value, relative, decimalSign) => {
      const units = unitsOf(kind);
      const unit = units[pick % units.length]!;
      const format = { decimalSign, groupSign: '\u202f' };
      const text = formatMeasured({ value, u95: relative * value, unit, format });
      const parsed = parseQuantity(text, { kind, defaultUnit: units[0]!, toothPitchM: 0.003, decimalSign: decimalSign as '.' | ',' });
      if (!parsed.ok) throw new Error(`${text}: ${parsed.why}`);
      const back = inUnit(parsed.value, { kind, unit, toothPitchM: 0.003 });
      const u = inUnit(parsed.standardUncertainty!, { kind, unit, toothPitchM: 0.003 });
      expect(parsed.unit).toBe(unit);
      expect(Math.abs(back - value)).toBeLessThanOrEqual(0.5 * u * (1 + 1e-9));
      expect(u).toBeGreaterThanOrEqual(0.95 * relative * value * (1 - 1e-9));
    }),
  );
});

describe('a value in a unit of its kind', () => {
  it('is what reading undoes', () => {
    expect(inUnit(0.15, { kind: 'length', unit: 'mm' })).toBeCloseTo(150, 12);
    expect(inUnit(0.15, { kind: 'length', unit: 'teeth', toothPitchM: 0.002 })).toBeCloseTo(75, 12);
    expect(inUnit(0.1, { kind: 'percent', unit: '%' })).toBeCloseTo(10, 12);
  });

  it('throws on a unit of another kind, and on teeth of no belt: the caller is wrong, not the person', () => {
    expect(() => inUnit(0.15, { kind: 'length', unit: 'N' })).toThrow(RangeError);
    expect(() => inUnit(0.15, { kind: 'length', unit: 'teeth' })).toThrow(/teeth/u);
  });
});
