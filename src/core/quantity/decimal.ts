/** Numbers as people write them: point or comma, grouped digits, powers of ten. What could mean two numbers is not read. */

export type Decimal =
  | { readonly kind: 'decimal'; readonly value: number }
  /** `ambiguous`: the sign may part thousands or begin the decimals, as in 1,234. */
  | { readonly kind: 'no-decimal'; readonly why: 'not-a-number' | 'ambiguous' };

export interface DecimalReading {
  /**
   * The decimal sign that the writer is known to use. `.` and `,` are both read as it anyway; knowing it settles what 1,234 or
   * 1.234 means. `any`: digits are never grouped, as in tables, so that a sign is always the decimal sign.
   */
  readonly decimalSign?: '.' | ',' | 'any' | undefined;
}

const NOT_A_NUMBER: Decimal = { kind: 'no-decimal', why: 'not-a-number' };
const AMBIGUOUS: Decimal = { kind: 'no-decimal', why: 'ambiguous' };

const SHAPE = /^([+-]?)([\d.,' ]*\d[.,]?)(?:e([+-]?\d{1,4}))?$/iu;
const GROUPED = /^\d{1,3}(?:([.,' ])\d{3})(?:\1\d{3})*$/u;

/** Drops the group signs of a whole number; undefined where its digits are not groups of three. */
function wholeDigits(text: string): string | undefined {
  if (/^\d*$/u.test(text)) return text;
  return GROUPED.test(text) ? text.replace(/[.,' ]/gu, '') : undefined;
}

/**
 * Reads one number without its unit.
 *
 * @param text  white space around it is ignored; a minus may be the hyphen or the true minus
 */
export function readDecimal(text: string, { decimalSign }: DecimalReading = {}): Decimal {
  const shape = SHAPE.exec(text.trim().normalize('NFKC').replace(/\s/gu, ' ').replace(/[−–]/gu, '-').replace(/’/gu, "'"));
  if (!shape) return NOT_A_NUMBER;
  const [, sign = '', digits = '', exponent = '0'] = shape;
  const signs = digits.replace(/[\d' ]/gu, '');
  const last = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  const repeated = signs.length > 1 && signs.split('').every((one) => one === signs[0]); // 1,234,567 has no decimals
  const whole = wholeDigits(last < 0 || repeated ? digits : digits.slice(0, last));
  const decimals = last < 0 || repeated ? '' : digits.slice(last + 1);
  if (whole === undefined || !/^\d*$/u.test(decimals) || (decimalSign === 'any' && signs.length > 1)) return NOT_A_NUMBER;
  if (signs.length > 1 && !repeated && digits.slice(0, last).includes(digits[last]!)) return NOT_A_NUMBER;
  const looksGrouped = signs.length === 1 && /^[1-9]\d{0,2}[.,]\d{3}$/u.test(digits);
  if (looksGrouped && decimalSign !== 'any' && digits[last] !== (decimalSign ?? '.')) return AMBIGUOUS;
  const value = Number(`${sign}${whole || '0'}.${decimals || '0'}e${exponent}`);
  return Number.isFinite(value) ? { kind: 'decimal', value } : NOT_A_NUMBER;
}
