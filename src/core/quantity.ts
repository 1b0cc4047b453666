/** A number with its unit, read and printed: the one place where millimetres, grams and pounds become SI and back. */

import { type DecimalReading, readDecimal } from './quantity/decimal.ts';
import { type QuantityKind, sizeOf, type Unit, unitSpelled } from './quantity/units.ts';

export { readDecimal } from './quantity/decimal.ts';
export {
  ENGLISH,
  formatInterval,
  formatMeasured,
  formatNumber,
  formatPercent,
  formatQuantity,
  intervalTexts,
  measuredTexts,
  type NumberFormat,
  numberFormatOf,
} from './quantity/format.ts';
export { type QuantityKind, STANDARD_GRAVITY_M_PER_S2, unitsOf } from './quantity/units.ts';

export interface QuantityOptions extends DecimalReading {
  readonly kind: QuantityKind;
  /** Unit of a number that stands alone; one of `unitsOf(kind)`. */
  readonly defaultUnit: string;
  /** Tooth pitch of the belt, for lengths in teeth. */
  readonly toothPitchM?: number | undefined;
  /** Whether 0 is a value too; a negative one never is. */
  readonly zeroAllowed?: boolean | undefined;
}

export type ParsedQuantity =
  | {
      readonly ok: true;
      /** SI; of a percentage the fraction, 10 % is 0.1. */
      readonly value: number;
      /** Symbol of the unit it was written in. */
      readonly unit: string;
      /** SI, like `value`; only where one was written. */
      readonly standardUncertainty?: number | undefined;
    }
  | QuantityFault;

/** `unit`: the text that no unit of this kind spells. `ambiguous-number`: 1,234 may be twelve hundred or a bit more than one. */
export interface QuantityFault {
  readonly ok: false;
  readonly why: 'empty' | 'not-a-number' | 'ambiguous-number' | 'unknown-unit' | 'needs-tooth-pitch' | 'not-positive';
  readonly unit?: string | undefined;
}

/** No honest quantity is longer; more is not looked at. */
const LONGEST_TEXT = 120;

const fault = (why: QuantityFault['why'], unit?: string): QuantityFault =>
  unit === undefined ? { ok: false, why } : { ok: false, why, unit };

type Part = { readonly value: number; readonly unitText: string };

/** Splits '5.9 in' where the number ends; the exponent belongs to the number. */
function partOf(text: string, reading: DecimalReading): Part | QuantityFault {
  const trimmed = text.trim();
  const end = /[^\d.,'’\s+\-−–]/u;
  const exponent = /^[^a-z]*\de[+-]?\d/iu.exec(trimmed)?.[0].length ?? 0;
  const at = trimmed.slice(exponent).search(end);
  const split = at < 0 ? trimmed.length : exponent + at;
  const number = readDecimal(trimmed.slice(0, split), reading);
  if (number.kind === 'decimal') return { value: number.value, unitText: trimmed.slice(split).trim() };
  return fault(number.why === 'ambiguous' ? 'ambiguous-number' : 'not-a-number');
}

/** The text before and after the sign of uncertainty; brackets around both, as in '(150 ± 0.5) mm', are opened. */
function halvesOf(text: string): readonly string[] {
  const bracket = /^\(([^()]*)\)([^()]*)$/u.exec(text.trim());
  const open = bracket ? `${bracket[1]} ${bracket[2]}` : text;
  return open.split(/±|\+\/?[-−]/u);
}

/**
 * Reads a quantity as a person writes it: '150', '150 mm', '5,9 in', '75 teeth', '150mm+-0.5mm', '8.4 g/m ± 1 %'.
 *
 * A unit is never guessed: a unit of another kind or an unknown one is a fault. An uncertainty is a standard uncertainty, in the
 * value's unit, in one of its own, or in percent of the value; where only the uncertainty names a unit, it is the unit of both.
 *
 * @throws RangeError when `defaultUnit` is no unit of this kind
 */
export function parseQuantity(text: string, options: QuantityOptions): ParsedQuantity {
  const usual = unitSpelled(options.kind, options.defaultUnit);
  if (!usual) throw new RangeError(`parseQuantity needs a default unit of ${options.kind}, got ${options.defaultUnit}`);
  if (text.trim() === '') return fault('empty');
  if (text.length > LONGEST_TEXT) return fault('not-a-number');
  const halves = halvesOf(text);
  if (halves.length > 2) return fault('not-a-number');
  const main = partOf(halves[0]!, options);
  if ('ok' in main) return main;
  const doubt = halves[1] === undefined ? undefined : partOf(halves[1], options);
  if (doubt && 'ok' in doubt) return doubt;

  const relative = doubt?.unitText === '%' && options.kind !== 'percent';
  const doubtUnitText = doubt && !relative ? doubt.unitText : '';
  const unit = unitNamed(options.kind, main.unitText || doubtUnitText, usual);
  const doubtUnit = doubtUnitText === '' ? unit : unitNamed(options.kind, doubtUnitText, usual);
  if (!unit) return fault('unknown-unit', main.unitText || doubtUnitText);
  if (!doubtUnit) return fault('unknown-unit', doubtUnitText);
  const size = sizeOf(unit, options.toothPitchM);
  const doubtSize = sizeOf(doubtUnit, options.toothPitchM);
  if (size === undefined || doubtSize === undefined) return fault('needs-tooth-pitch', size === undefined ? unit.symbol : doubtUnit.symbol);

  const value = main.value * size;
  if (!Number.isFinite(value)) return fault('not-a-number');
  if (value < 0 || (value === 0 && !options.zeroAllowed)) return fault('not-positive');
  if (!doubt) return { ok: true, value, unit: unit.symbol };
  const standardUncertainty = relative ? (doubt.value / 100) * value : doubt.value * doubtSize;
  if (!(standardUncertainty >= 0 && standardUncertainty < Number.POSITIVE_INFINITY)) return fault('not-a-number');
  return { ok: true, value, unit: unit.symbol, standardUncertainty };
}

const unitNamed = (kind: QuantityKind, text: string, usual: Unit): Unit | undefined => (text === '' ? usual : unitSpelled(kind, text));

/**
 * An SI value in a unit of its kind, for printing: 0.15 m is 150 in 'mm'.
 *
 * @throws RangeError when the unit is none of this kind, or teeth of a belt without tooth pitch
 */
export function inUnit(
  value: number,
  { kind, unit, toothPitchM }: { kind: QuantityKind; unit: string; toothPitchM?: number | undefined },
): number {
  const known = unitSpelled(kind, unit);
  const size = known && sizeOf(known, toothPitchM);
  if (!size) throw new RangeError(`inUnit needs a unit of ${kind} that has a size, got ${unit}`);
  return value / size;
}
