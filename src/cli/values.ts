/** Text of options and cells to SI values. Every reader gives the value or says what is wrong with the text. */

import { type ParsedQuantity, parseQuantity, type QuantityKind } from '../core/quantity.ts';
import { type EndKind, FIXITY_OF_END, type ForceRange, type SpanSetup } from '../core/setup.ts';
import { cellNumber, type Separator } from '../core/table.ts';
import type { ValueFault } from '../words/cli-en.ts';
import type { Told, ToldEnd, ToldEnds } from './told.ts';

export type Value<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: ValueFault };

const ok = <T>(value: T): Value<T> => ({ ok: true, value });
const no = <T>(fault: ValueFault): Value<T> => ({ ok: false, fault });

/** A quantity with its unit and, where told, its standard uncertainty: '150mm+-0.5mm'. */
export function toldQuantity(
  text: string,
  options: { kind: QuantityKind; defaultUnit: string; toothPitchM?: number | undefined },
): Value<Told> {
  const parsed = parseQuantity(text, options);
  return parsed.ok ? ok(toldOf(parsed)) : no({ why: parsed.why, kind: options.kind, unit: parsed.unit });
}

const toldOf = ({ value, standardUncertainty }: ParsedQuantity & { ok: true }): Told =>
  standardUncertainty === undefined ? { value } : { value, standardUncertainty };

/** A share without uncertainty: '10%'. */
export function toldShare(text: string): Value<number> {
  const parsed = parseQuantity(text, { kind: 'percent', defaultUnit: '%' });
  if (!parsed.ok) return no({ why: parsed.why, kind: 'percent', unit: parsed.unit });
  return parsed.standardUncertainty === undefined ? ok(parsed.value) : no({ why: 'not-a-number', kind: 'percent' });
}

/** Two forces: '5N..40N'; where only one names its unit, it is the unit of both. */
export function toldForceRange(text: string): Value<ForceRange> {
  const ends = text.split(/\.{2,3}/u);
  const [low, high] = ends;
  if (ends.length !== 2 || low === undefined || high === undefined || low === '' || high === '') return no({ why: 'not-a-range' });
  const named = [high, low].map((end) => parseQuantity(end, { kind: 'force', defaultUnit: 'N' }));
  const unitOf = (parsed: ParsedQuantity | undefined, end: string) => (parsed?.ok && /\p{L}/u.test(end) ? parsed.unit : undefined);
  const defaultUnit = unitOf(named[0], high) ?? unitOf(named[1], low) ?? 'N';
  const [lowParsed, highParsed] = [low, high].map((end) => parseQuantity(end, { kind: 'force', defaultUnit }));
  for (const parsed of [lowParsed!, highParsed!]) {
    if (!parsed.ok) return no({ why: parsed.why, kind: 'force', unit: parsed.unit });
    if (parsed.standardUncertainty !== undefined) return no({ why: 'not-a-range' });
  }
  const range = { lowN: (lowParsed as { value: number }).value, highN: (highParsed as { value: number }).value };
  return range.lowN < range.highN ? ok(range) : no({ why: 'range-upside-down' });
}

/** A range of forces, or one force, which is its own range. */
export function toldForces(text: string): Value<ForceRange> {
  if (text.includes('..')) return toldForceRange(text);
  const parsed = parseQuantity(text, { kind: 'force', defaultUnit: 'N' });
  if (!parsed.ok) return no({ why: parsed.why, kind: 'force', unit: parsed.unit });
  return parsed.standardUncertainty === undefined ? ok({ lowN: parsed.value, highN: parsed.value }) : no({ why: 'not-a-range' });
}

/** Kinds of end by the word that names them on a command line. */
const END_WORDS: Readonly<Record<string, EndKind>> = {
  pulley: 'toothed pulley',
  idler: 'smooth idler',
  clamp: 'clamp',
  unknown: 'unknown',
};

/** Fixity of both ends in one number or word, or of each end in two: '0.5', '0,1+-0.2', 'clamp,pulley'. */
export function toldFixity(text: string): Value<ToldEnds> {
  const ends: ToldEnd[] = [];
  for (const end of text.split(',')) {
    const word = end.trim().toLowerCase();
    if (Object.hasOwn(END_WORDS, word)) {
      const fixity = FIXITY_OF_END[END_WORDS[word]!];
      if (fixity.kind !== 'known') ends.push(fixity);
      continue;
    }
    const parsed = parseQuantity(end, { kind: 'number', defaultUnit: '', zeroAllowed: true });
    if (!parsed.ok) return no({ why: parsed.why === 'not-positive' ? 'not-a-fixity' : parsed.why, kind: 'number', unit: parsed.unit });
    if (parsed.value > 1) return no({ why: 'not-a-fixity' });
    ends.push(toldOf(parsed));
  }
  const [first, second = first] = ends;
  return first && second && ends.length <= 2 ? ok([first, second]) : no({ why: 'not-a-fixity' });
}

/** How the belt's wide face lies: 'edge' or 'flat'. */
export function toldLie(text: string): Value<NonNullable<SpanSetup['lie']>> {
  return text === 'edge' || text === 'flat' ? ok(text) : no({ why: 'not-a-lie' });
}

/** A plain number in a cell, in the unit that its column names. */
export function cellValue(
  text: string,
  { separator, factor, zeroAllowed }: { separator: Separator; factor: number; zeroAllowed: boolean },
): Value<number> {
  const decimal = cellNumber(text, separator);
  if (decimal.kind === 'no-decimal') {
    return no({ why: decimal.why === 'ambiguous' ? 'ambiguous-number' : 'not-a-number', kind: 'number' });
  }
  const isAllowed = decimal.value > 0 || (zeroAllowed && decimal.value === 0);
  return isAllowed ? ok(decimal.value * factor) : no({ why: 'not-positive', kind: 'number' });
}

/**
 * Fixity in a cell. Where the semicolon parts the columns, the comma is the decimal sign and a semicolon in quotes parts the ends;
 * '0,1' and '1,0' would be a number and two ends alike, and are refused there.
 */
export function cellFixity(text: string, separator: Separator): Value<ToldEnds> {
  if (separator === ',') return toldFixity(text.replaceAll(';', ','));
  if (/^\s*(?:0,1|1,0)\s*$/u.test(text)) return no({ why: 'ends-or-decimal' });
  return toldFixity(text.replaceAll(',', '.').replaceAll(';', ','));
}
