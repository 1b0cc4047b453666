/** The units that people may write, and how many SI units each is. Exact factors; leaf of the reading and printing of quantities. */

export type QuantityKind = 'length' | 'linear-density' | 'force' | 'mass' | 'stiffness' | 'frequency' | 'percent' | 'number';

/** One unit as it is printed; `factor` is its size in SI units, `spellings` are further ways to write it. */
export interface Unit {
  readonly symbol: string;
  readonly factor: number;
  readonly spellings?: readonly string[] | undefined;
}

/** Standard acceleration of gravity, m/s², exact: what makes a kilogram-force. CGPM 1901. */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
const POUND_KG = 0.45359237; // avoirdupois, exact by the agreement of 1959
const OUNCE_KG = POUND_KG / 16;
const INCH_M = 0.0254;

/** The unit that counts tooth pitches of a belt; its size is the belt's own. */
export const TEETH = 'teeth';

const UNITS: Readonly<Record<QuantityKind, readonly Unit[]>> = {
  length: [
    { symbol: 'mm', factor: 1e-3 },
    { symbol: 'cm', factor: 1e-2 },
    { symbol: 'm', factor: 1 },
    { symbol: 'in', factor: INCH_M, spellings: ['"', '″', '”', 'inch', 'inches'] },
    { symbol: 'ft', factor: 12 * INCH_M },
    { symbol: TEETH, factor: Number.NaN, spellings: ['tooth'] },
  ],
  'linear-density': [
    { symbol: 'g/m', factor: 1e-3 },
    { symbol: 'kg/m', factor: 1 },
  ],
  force: [
    { symbol: 'N', factor: 1 },
    { symbol: 'kN', factor: 1e3 },
    { symbol: 'lbf', factor: POUND_KG * STANDARD_GRAVITY_M_PER_S2 },
    { symbol: 'kgf', factor: STANDARD_GRAVITY_M_PER_S2 },
    { symbol: 'ozf', factor: OUNCE_KG * STANDARD_GRAVITY_M_PER_S2 },
  ],
  mass: [
    { symbol: 'g', factor: 1e-3 },
    { symbol: 'kg', factor: 1 },
    { symbol: 'mg', factor: 1e-6 },
    { symbol: 'oz', factor: OUNCE_KG },
    { symbol: 'lb', factor: POUND_KG },
  ],
  stiffness: [{ symbol: 'N m²', factor: 1 }],
  frequency: [
    { symbol: 'Hz', factor: 1 },
    { symbol: 'kHz', factor: 1e3 },
  ],
  percent: [{ symbol: '%', factor: 0.01 }],
  number: [{ symbol: '', factor: 1 }],
};

/** Symbols that a quantity of this kind may carry, the usual one first. */
export const unitsOf = (kind: QuantityKind): readonly string[] => UNITS[kind].map(({ symbol }) => symbol);

/** Spaces, multiplication signs and powers do not tell units apart: 'N·m^2' is 'N m²'. */
const plain = (text: string): string => text.normalize('NFKC').replace(/[\s·⋅*^]/gu, '');

/** The unit of this kind that `text` spells, capitals as they stand; undefined where there is none. */
export const unitSpelled = (kind: QuantityKind, text: string): Unit | undefined =>
  UNITS[kind].find(({ symbol, spellings = [] }) => [symbol, ...spellings].some((spelling) => plain(spelling) === plain(text)));

/**
 * Size of a unit in SI units.
 *
 * @param toothPitchM  needed for teeth only, > 0
 * @returns undefined for teeth of an unknown belt
 */
export function sizeOf(unit: Unit, toothPitchM?: number | undefined): number | undefined {
  return unit.symbol === TEETH ? toothPitchM : unit.factor;
}
