import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ENGLISH,
  formatInterval,
  formatMeasured,
  formatNumber,
  formatPercent,
  formatQuantity,
  intervalTexts,
  measuredTexts,
  numberFormatOf,
} from '../../../../src/core/quantity/format.ts';

const PLAIN = { decimalSign: '.', groupSign: '' };

describe('printing', () => {
  // The rule: one significant digit of U, two where the first is 1 or 2, up where nearest would lower it by more than a twentieth.
  it.each([
    [9.687, 0.52, '9.7 N ± 0.5 N'],
    [9.687, 0.53, '9.7 N ± 0.6 N'],
    [9.687, 0.44, '9.7 N ± 0.5 N'],
    [9.687, 2.0, '9.7 N ± 2.0 N'],
    [9.687, 1.04, '9.7 N ± 1.0 N'],
    [9.687, 0.96, '9.7 N ± 1.0 N'],
    [9.687, 0.3, '9.7 N ± 0.3 N'],
    [116.349, 0.29, '116.35 N ± 0.29 N'],
    [116.349, 34, '120 N ± 40 N'],
    [-0.04, 0.5, '0.0 N ± 0.5 N'],
    [-3.26, 0.5, '−3.3 N ± 0.5 N'],
    [150, 0, '150 N ± 0 N'],
  ])('%d with U %d', (value, u95, text) => {
    expect(formatMeasured({ value, u95, unit: 'N' })).toBe(text.replaceAll(' ', '\u00a0'));
  });

  it('prints bounds to the place of their half width', () => {
    expect(formatInterval({ low: 2.31, high: 5.69, unit: 'N' })).toBe('2.3 to 5.7\u00a0N');
    expect(formatInterval({ low: 112.4, high: 138.6, unit: 'Hz', between: '–' })).toBe('112–139\u00a0Hz');
    expect(formatInterval({ low: 6, high: 6, unit: 'N' })).toBe('6 to 6\u00a0N');
  });

  it('prints numbers by the locale', () => {
    const german = numberFormatOf('de');
    expect(german).toEqual({ decimalSign: ',', groupSign: '.' });
    expect(formatMeasured({ value: 9.687, u95: 0.52, unit: 'N', format: german })).toBe('9,7\u00a0N\u00a0±\u00a00,5\u00a0N');
    expect(formatNumber(48000, { decimals: 0 })).toBe('48,000');
    expect(formatNumber(48000, { decimals: 0, format: german })).toBe('48.000');
    expect(formatNumber(1234.5, { decimals: 1 })).toBe('1234.5');
    expect(formatNumber(Number.MAX_VALUE, { significantDigits: 3 })).toMatch(/^1\.79/);
    expect(formatNumber(9.96, { significantDigits: 2 })).toBe('10');
    expect(formatNumber(0.000123456, { significantDigits: 3 })).toBe('0.000123');
    expect(formatQuantity(150, 'mm', { atMostDigits: 6 })).toBe('150\u00a0mm');
    expect(formatQuantity(0.1 + 0.2, 'N', { atMostDigits: 6 })).toBe('0.3\u00a0N');
    expect(formatPercent(0.1249)).toBe('12\u00a0%');
    expect(formatPercent(-0.0421, { decimals: 1 })).toBe('−4.2\u00a0%');
  });

  it('never understates an uncertainty by more than a twentieth, nor overstates it by more than a third', () => {
    const magnitude = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(magnitude, (u) => {
        const printed = Number(measuredTexts({ value: 0, u95: u, format: PLAIN }).u95);
        return printed >= 0.95 * u * (1 - 1e-12) && printed <= 1.34 * u;
      }),
    );
  });
});

// JCGM 100:2008, 7.2.6: y = 10,057 62 Ω with a combined standard uncertainty of 27 mΩ is to be rounded to 10,058 Ω.
it('rounds a result to its uncertainty as the GUM’s example does', () => {
  expect(measuredTexts({ value: 10.05762, u95: 0.027, format: { decimalSign: ',', groupSign: ' ' } })).toEqual({
    value: '10,058',
    u95: '0,027',
  });
});

describe('languages', () => {
  // The signs that the language data of ECMA-402 itself puts into such a number.
  it.each(['en', 'de', 'fr', 'de-CH', 'sv', 'pl', 'en-IN'])('%s', (locale) => {
    const format = numberFormatOf(locale);
    const options = { minimumFractionDigits: 1, useGrouping: true, numberingSystem: 'latn' } as const;
    expect(formatNumber(48123.5, { decimals: 1, format })).toBe(new Intl.NumberFormat(locale, options).format(48123.5));
  });

  it.each(['ar-EG', 'fa', 'bn'])('%s keeps the digits 0 to 9', (locale) => {
    expect(formatNumber(150, { decimals: 0, format: numberFormatOf(locale) })).toBe('150');
  });

  it('refuses a tag that is none', () => {
    expect(() => numberFormatOf('not a tag')).toThrow(RangeError);
  });
});

describe('both ends of an interval', () => {
  it('never swap, and keep within half of the last digit of where they were', () => {
    const end = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    const width = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(end, width, (low, extent) => {
        const texts = intervalTexts({ low, high: low + extent, format: PLAIN });
        const [from, to] = [texts.low, texts.high].map((text) => Number(text.replace('\u2212', '-'))) as [number, number];
        // The place is that of half the width to one or two digits: half a step of it is at most a sixth of that, and the tolerance a quarter.
        const nearBy = (extent / 2) * 0.25 * (1 + 1e-9);
        return from <= to && Math.abs(from - low) <= nearBy && Math.abs(to - low - extent) <= nearBy;
      }),
    );
  });

  it('that meet are one number, to six digits', () => {
    expect(intervalTexts({ low: 1 / 3, high: 1 / 3 })).toEqual({ low: '0.333333', high: '0.333333' });
  });
});

describe('a number alone', () => {
  it.each([
    [0, { significantDigits: 3 }, '0'],
    [0, { decimals: 2 }, '0.00'],
    [-0.004, { decimals: 2 }, '0.00'],
    [0.05, { atMostDigits: 6 }, '0.05'],
    [1200, { atMostDigits: 2 }, '1200'],
    [123456, { significantDigits: 2 }, '120,000'],
    [1e20, { significantDigits: 1 }, '100,000,000,000,000,000,000'],
  ] as const)('%d with %o', (value, digits, text) => {
    expect(formatNumber(value, digits)).toBe(text);
  });

  it('is none where it is not finite: the caller is wrong', () => {
    expect(() => formatNumber(Number.NaN, { decimals: 1 })).toThrow(RangeError);
    expect(() => formatMeasured({ value: 1, u95: Number.POSITIVE_INFINITY, unit: 'N' })).toThrow(RangeError);
    expect(() => formatMeasured({ value: 1, u95: -0.1, unit: 'N' })).toThrow(RangeError);
  });

  it('without a unit has no space behind it', () => {
    expect(formatQuantity(0.5, '', { decimals: 1 })).toBe('0.5');
    expect(formatMeasured({ value: 0.5, u95: 0.1, unit: '', format: ENGLISH })).toBe('0.50\u00a0±\u00a00.10');
    expect(formatInterval({ low: 0.1, high: 0.9, unit: '' })).toBe('0.1 to 0.9');
  });
});
