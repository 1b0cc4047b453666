import { describe, expect, it } from 'vitest';
import { type QuantityKind, STANDARD_GRAVITY_M_PER_S2, sizeOf, TEETH, unitSpelled, unitsOf } from '../../../../src/core/quantity/units.ts';

const KINDS: readonly QuantityKind[] = ['length', 'linear-density', 'force', 'mass', 'stiffness', 'frequency', 'percent', 'number'];
const size = (kind: QuantityKind, text: string) => sizeOf(unitSpelled(kind, text)!)!;

describe('sizes, from the definitions in other units', () => {
  // Definitions of the trade: 12 inches a foot, 16 ounces a pound; a pound-force is what standard gravity makes of a pound.
  it('of length, mass and force', () => {
    expect(size('length', 'ft') / size('length', 'in')).toBeCloseTo(12, 12);
    expect(size('mass', 'lb') / size('mass', 'oz')).toBeCloseTo(16, 12);
    expect(size('force', 'lbf') / size('force', 'ozf')).toBeCloseTo(16, 12);
    for (const [force, mass] of [
      ['lbf', 'lb'],
      ['ozf', 'oz'],
      ['kgf', 'kg'],
    ] as const) {
      expect(size('force', force) / size('mass', mass)).toBeCloseTo(STANDARD_GRAVITY_M_PER_S2, 12);
    }
  });

  it('of every prefix', () => {
    for (const [kind, prefixed, plain, factor] of [
      ['length', 'mm', 'm', 1e-3],
      ['length', 'cm', 'm', 1e-2],
      ['linear-density', 'g/m', 'kg/m', 1e-3],
      ['force', 'kN', 'N', 1e3],
      ['mass', 'mg', 'g', 1e-3],
      ['frequency', 'kHz', 'Hz', 1e3],
    ] as const) {
      expect(size(kind, prefixed) / size(kind, plain)).toBeCloseTo(factor, 12);
    }
    expect([size('length', 'm'), size('force', 'N'), size('mass', 'kg'), size('frequency', 'Hz')]).toEqual([1, 1, 1, 1]);
  });

  it('a tooth is as long as the belt’s pitch, and without one has no length', () => {
    const teeth = unitSpelled('length', TEETH)!;
    expect(sizeOf(teeth, 0.002)).toBe(0.002);
    expect(sizeOf(teeth)).toBeUndefined();
    expect(sizeOf(unitSpelled('length', 'mm')!, 0.002)).toBe(0.001);
  });
});

describe('spellings', () => {
  it.each(KINDS)('every unit of %s is found by its own symbol', (kind) => {
    for (const symbol of unitsOf(kind)) expect(unitSpelled(kind, symbol)!.symbol).toBe(symbol);
    expect(new Set(unitsOf(kind)).size).toBe(unitsOf(kind).length);
  });

  it.each([
    ['N m²', 'N·m²', 'N⋅m^2', 'Nm2', 'N m ²', 'N*m^2'],
    ['kg/m', 'kg / m'],
    ['in', '"', '″', '”', 'inch', 'inches', ' in '],
    ['teeth', 'tooth'],
  ])('%s', (symbol, ...spellings) => {
    const kind = KINDS.find((one) => unitsOf(one).includes(symbol))!;
    for (const spelling of spellings) expect(unitSpelled(kind, spelling)?.symbol).toBe(symbol);
  });

  it('capitals tell units apart: a millimetre is no megametre', () => {
    for (const text of ['MM', 'Mm', 'mM', 'M', 'IN']) expect(unitSpelled('length', text)).toBeUndefined();
    expect(unitSpelled('mass', 'Mg')).toBeUndefined();
    expect(unitSpelled('force', 'n')).toBeUndefined();
  });

  it('a unit of another kind is none', () => {
    for (const kind of KINDS) {
      const own = unitsOf(kind);
      const foreign = KINDS.flatMap(unitsOf).filter((symbol) => !own.includes(symbol));
      for (const symbol of foreign) expect(unitSpelled(kind, symbol)).toBeUndefined();
    }
  });

  it('names that every object has are no units', () => {
    for (const text of ['constructor', 'toString', '__proto__']) expect(unitSpelled('length', text)).toBeUndefined();
  });
});
