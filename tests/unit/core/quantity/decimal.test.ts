import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DecimalReading, readDecimal } from '../../../../src/core/quantity/decimal.ts';

const numberIn = (text: string, reading?: DecimalReading) => {
  const decimal = readDecimal(text, reading);
  return decimal.kind === 'decimal' ? decimal.value : decimal.why;
};

const finite = fc.double({ noNaN: true, noDefaultInfinity: true });

describe('what programs write is read to the last bit', () => {
  it('in the language’s own notation', () => {
    fc.assert(
      fc.property(finite, (value) => numberIn(String(value), { decimalSign: '.' }) === (value === 0 ? value : Number(String(value)))),
    );
  });

  it('with powers of ten, with a comma, with the true minus', () => {
    fc.assert(
      fc.property(finite, fc.constantFrom('-', '\u2212', '\u2013'), (value, minus) => {
        const text = value.toExponential().replace('.', ',').replaceAll('-', minus);
        return numberIn(text, { decimalSign: ',' }) === Number(value.toExponential());
      }),
    );
  });
});

describe('what people write in their languages, the decimal sign known', () => {
  // Grouping, signs and spaces are those of the language data of ECMA-402.
  it.each([
    ['en', '.'],
    ['de', ','],
    ['fr', ','],
    ['de-CH', '.'],
    ['sv', ','],
    ['es', ','],
  ] as const)('%s', (locale, decimalSign) => {
    const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 3, useGrouping: true });
    const thousandths = fc.integer({ min: -(10 ** 12), max: 10 ** 12 });
    fc.assert(
      fc.property(thousandths, (count) => {
        const value = count / 1000;
        return Object.is(numberIn(format.format(value), { decimalSign }), value);
      }),
    );
  });
});

// SI Brochure, 9th edition, 5.4.4: point or comma on the line, digits in threes by thin spaces, neither dots nor commas between them.
it('reads the digits of the SI Brochure, in groups of three', () => {
  for (const text of ['43\u2009279', '43\u00a0279', '43\u202f279', '43 279']) expect(numberIn(text)).toBe(43_279);
  expect(numberIn('43\u2009279,5')).toBe(43_279.5);
  expect(numberIn('-0.234')).toBe(-0.234);
});

describe('what could mean two numbers', () => {
  it.each(['1,234', '12,345', '999,000'])('%s is read by nobody who does not know the sign', (text) => {
    expect(numberIn(text)).toBe('ambiguous');
    expect(numberIn(text, { decimalSign: '.' })).toBe('ambiguous');
    expect(numberIn(text, { decimalSign: ',' })).toBe(Number(text.replace(',', '.')));
    expect(numberIn(text, { decimalSign: 'any' })).toBe(Number(text.replace(',', '.')));
  });

  it.each([
    ['0,234', 0.234],
    ['1,2345', 1.2345],
    ['1,23', 1.23],
    ['1234,567', 1234.567],
    ['0123,456', 123.456],
  ])('%s can mean only one', (text, value) => {
    expect(numberIn(text)).toBe(value);
  });

  it('keeps its sign and power', () => {
    expect(numberIn('-1,234', { decimalSign: ',' })).toBe(-1.234);
    expect(numberIn('-1,234')).toBe('ambiguous');
    expect(numberIn('1,5e3')).toBe(1500);
  });
});

describe('no number', () => {
  it.each([
    '',
    ' ',
    '.',
    ',',
    '-',
    '+-1',
    '1 2',
    '1,23,456',
    '1.234.56',
    '1,234.567,8',
    "1'23",
    '1e',
    'e5',
    '1e5.5',
    '1e99999',
    '1e999',
    'NaN',
    'Infinity',
    '0x1f',
    '0b1',
    '1_000',
    '1n',
    '½',
    'ten',
  ])('%o', (text) => {
    expect(numberIn(text)).toBe('not-a-number');
  });

  it('in a table a second sign is never a group', () => {
    expect(numberIn('1,234,567')).toBe(1_234_567);
    expect(numberIn('1,234,567', { decimalSign: 'any' })).toBe('not-a-number');
    expect(numberIn('1.234,5', { decimalSign: 'any' })).toBe('not-a-number');
  });
});

it('a digit of full width is a digit', () => {
  expect(numberIn('１５０')).toBe(150);
});
