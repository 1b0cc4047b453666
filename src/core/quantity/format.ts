/** Numbers to text: the digits follow the uncertainty. Rounding happens here, last, and nowhere else. */

/** How a language writes numbers. */
export interface NumberFormat {
  readonly decimalSign: string;
  /** Parts thousands from five digits on. */
  readonly groupSign: string;
}

export const ENGLISH: NumberFormat = { decimalSign: '.', groupSign: ',' };

const NO_BREAK_SPACE = '\u00a0';
const TRUE_MINUS = '\u2212';
/** A double carries no more. */
const MOST_DIGITS = 15;
const FROM_THIS_MANY_DIGITS_GROUPED = 5;

/**
 * Decimal and group sign of a locale such as 'de' or 'en-GB'. Digits are always 0 to 9.
 *
 * @throws RangeError when the tag is malformed
 */
export function numberFormatOf(locale: string): NumberFormat {
  const parts = new Intl.NumberFormat(locale, { numberingSystem: 'latn', useGrouping: true }).formatToParts(123456.5);
  const sign = (type: 'decimal' | 'group') => parts.find((part) => part.type === type)?.value;
  return { decimalSign: sign('decimal') ?? ENGLISH.decimalSign, groupSign: sign('group') ?? ENGLISH.groupSign };
}

/** Exponent of the first significant digit: 0.052 gives −2. */
const exponentOf = (value: number): number => Number(Math.abs(value).toExponential().split('e')[1]);

/** Place of the last digit that is not 0: 0.052 gives −3, 150 gives 1. */
function lastPlaceOf(value: number): number {
  const [mantissa = '', exponent] = Math.abs(value).toExponential().split('e');
  return Number(exponent) - (mantissa.split('.')[1]?.length ?? 0);
}

/** Writes a value down to the digit that counts 10^place; places above the units are filled with zeros. */
function written(value: number, place: number, { decimalSign, groupSign }: NumberFormat): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number is printed only when finite, got ${value}`);
  const step = 10 ** Math.max(0, place);
  const rounded = Math.round(Math.abs(value) / step) * step;
  const text = (Number.isFinite(rounded) ? rounded : Math.abs(value)).toFixed(0); // the largest doubles have no room to round up
  const digits = place < 0 ? Math.abs(value).toFixed(Math.min(100, -place)) : text;
  const [whole = '', decimals] = digits.split('.');
  const grouped = whole.length < FROM_THIS_MANY_DIGITS_GROUPED ? whole : whole.replace(/\B(?=(?:\d{3})+$)/gu, groupSign);
  const sign = value < 0 && /[1-9]/u.test(digits) ? TRUE_MINUS : '';
  return `${sign}${grouped}${decimals === undefined ? '' : `${decimalSign}${decimals}`}`;
}

/**
 * An uncertainty as it is printed: one significant digit, two where the first is 1 or 2; nearest, or up where nearest would lower
 * it by more than a twentieth.
 */
function roundedUncertainty(uncertainty: number): { readonly value: number; readonly place: number } {
  const firstDigit = Number(uncertainty.toExponential()[0]);
  const more = firstDigit <= 2 ? 1 : 0;
  const place = exponentOf(uncertainty) - more;
  const nearest = Number(uncertainty.toExponential(more));
  return { value: nearest < 0.95 * uncertainty ? nearest + 10 ** place : nearest, place };
}

/** The place that a value may show, no finer than a double can hold. */
const placeFor = (value: number, place: number): number => (value === 0 ? place : Math.max(place, exponentOf(value) - (MOST_DIGITS - 1)));

interface Options {
  readonly format?: NumberFormat | undefined;
}

/** Value and uncertainty, each as text to the same place. Both in the unit to be shown; `u95` >= 0, and 0 shows six digits of the value. */
export function measuredTexts({ value, u95, format = ENGLISH }: { value: number; u95: number } & Options): { value: string; u95: string } {
  if (!(u95 >= 0 && u95 < Number.POSITIVE_INFINITY)) throw new RangeError(`formatMeasured needs a finite uncertainty >= 0, got ${u95}`);
  if (u95 === 0) return { value: formatNumber(value, { atMostDigits: 6, format }), u95: '0' };
  const rounded = roundedUncertainty(u95);
  const place = placeFor(value, rounded.place);
  return { value: written(value, place, format), u95: written(rounded.value, place, format) };
}

/** @example value 9.687, u95 0.52, unit 'N' gives '9.7 N ± 0.5 N', held together by no-break spaces */
export function formatMeasured({ unit, ...measured }: { value: number; u95: number; unit: string } & Options): string {
  const texts = measuredTexts(measured);
  return [texts.value, unit, '±', texts.u95, unit].filter((part) => part !== '').join(NO_BREAK_SPACE);
}

/** Both ends of an interval to the place of its half width, in the unit to be shown. */
export function intervalTexts({ low, high, format = ENGLISH }: { low: number; high: number } & Options): { low: string; high: string } {
  const half = (high - low) / 2;
  if (!(half > 0)) {
    const text = formatNumber(low, { atMostDigits: 6, format });
    return { low: text, high: text };
  }
  const place = placeFor(Math.max(Math.abs(low), Math.abs(high)), roundedUncertainty(half).place);
  return { low: written(low, place, format), high: written(high, place, format) };
}

/**
 * @param interval.between  the word between the ends, or an en dash for tables
 * @example 2.31 and 5.69, unit 'N' gives '2.3 to 5.7 N'
 */
export function formatInterval({
  unit,
  between = 'to',
  ...interval
}: { low: number; high: number; unit: string; between?: string | undefined } & Options): string {
  const { low, high } = intervalTexts(interval);
  const joint = between === '–' ? between : ` ${between} `;
  return `${low}${joint}${high}${unit === '' ? '' : NO_BREAK_SPACE}${unit}`;
}

/** `atMostDigits`: significant digits without the zeros that end the decimals, for what people typed in: 150, not 150.000. */
export type Digits = { readonly decimals: number } | { readonly significantDigits: number } | { readonly atMostDigits: number };

/** A number alone, to a fixed count of decimals or of significant digits. */
export function formatNumber(value: number, options: Digits & Options): string {
  const { format = ENGLISH } = options;
  if ('decimals' in options) return written(value, -options.decimals, format);
  if (value === 0) return '0';
  const digits = 'atMostDigits' in options ? options.atMostDigits : options.significantDigits;
  const nearest = Number(value.toPrecision(digits)); // 9.96 to two digits is 10, one place up
  const rounded = Number.isFinite(nearest) ? nearest : value;
  const place = exponentOf(rounded) - digits + 1;
  return written(value, 'atMostDigits' in options ? Math.max(place, lastPlaceOf(rounded)) : place, format);
}

/** A number with its unit, held together: '150 mm'. */
export const formatQuantity = (value: number, unit: string, options: Digits & Options): string =>
  `${formatNumber(value, options)}${unit === '' ? '' : NO_BREAK_SPACE}${unit}`;

/** A fraction in percent, whole unless told otherwise: 0.123 gives '12 %'. */
export const formatPercent = (
  fraction: number,
  { decimals = 0, format = ENGLISH }: { decimals?: number | undefined } & Options = {},
): string => formatQuantity(100 * fraction, '%', { decimals, format });
