/** Units against NIST Special Publication 811 (2008), Appendix B.8, "Factors for units listed alphabetically", and its exact relations. */
import { describe, expect, it } from 'vitest';
import { inUnit, parseQuantity, type QuantityKind } from '../../src/core/quantity.ts';

const si = (text: string, kind: QuantityKind): number => {
  const parsed = parseQuantity(text, { kind, defaultUnit: { length: 'm', force: 'N', mass: 'kg' }[kind as 'length' | 'force' | 'mass'] });
  if (!parsed.ok) throw new Error(`${text}: ${parsed.why}`);
  return parsed.value;
};

describe('NIST SP 811, Appendix B.8', () => {
  // Printed factor and how many of its digits are printed; factors in bold there are exact.
  it.each([
    ['1 in', 'length', 2.54e-2, 'exact'],
    ['1 ft', 'length', 3.048e-1, 'exact'],
    ['1 kgf', 'force', 9.80665, 'exact'],
    ['1 lbf', 'force', 4.448222, 0.5e-6],
    ['1 ozf', 'force', 2.780139e-1, 0.5e-7],
    ['1 lb', 'mass', 4.535924e-1, 0.5e-7],
    ['1 oz', 'mass', 2.834952e-2, 0.5e-8],
  ] as const)('%s of %s', (text, kind, printed, halfDigit) => {
    const tolerance = halfDigit === 'exact' ? 4 * Number.EPSILON * printed : halfDigit;
    expect(Math.abs(si(text, kind) - printed)).toBeLessThanOrEqual(tolerance);
  });

  // Products of the exact relations: 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s².
  it.each([
    ['1 lbf', 4.4482216152605],
    ['1 ozf', 0.2780138509537812],
    ['2.5 lbf', 11.12055403815125],
  ])('%s to all digits', (text, newtons) => {
    expect(si(text, 'force')).toBeCloseTo(newtons, 14);
  });

  it('turns back', () => {
    expect(inUnit(0.0254, { kind: 'length', unit: 'in' })).toBeCloseTo(1, 14);
    expect(inUnit(4.4482216152605, { kind: 'force', unit: 'lbf' })).toBeCloseTo(1, 14);
  });
});
