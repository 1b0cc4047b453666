import { describe, expect, test } from 'vitest';
import { endsCells, fixityCells, stiffnessCells } from '../../../../src/core/force/prior.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';

const total = (cells: readonly { readonly weight: number }[]) => cells.reduce((sum, cell) => sum + cell.weight, 0);

describe('weights sum to 1', () => {
  test.each([
    [stiffnessCells({ kind: 'range', low: 5e-5, high: 3e-4 })],
    [stiffnessCells({ kind: 'range', low: 1e-4, high: 1e-4 })],
    [stiffnessCells({ kind: 'known', value: { value: 1.2e-4, standardUncertainty: 2.4e-5 } })],
    [stiffnessCells({ kind: 'known', value: { value: 0, standardUncertainty: 0 } })],
    [fixityCells({ kind: 'unknown' })],
    [fixityCells({ kind: 'between', low: 0, high: 0.5 })],
    [endsCells(UNKNOWN_ENDS)],
    [endsCells([{ kind: 'unknown' }, { kind: 'between', low: 0.7, high: 1 }])],
    [endsCells([{ kind: 'known', value: { value: 0.5, standardUncertainty: 0.1 } }, { kind: 'unknown' }])],
  ])('%#', (cells) => {
    expect(total(cells)).toBeCloseTo(1, 12);
  });
});

test('a range holds 95 % of the weight, its tails the rest, a factor 3 beyond', () => {
  const cells = stiffnessCells({ kind: 'range', low: 5e-5, high: 3e-4 });
  const inside = cells.filter(({ lnStiffness }) => lnStiffness > Math.log(5e-5) && lnStiffness < Math.log(3e-4));
  const first = cells[0]!;
  expect(total(inside)).toBeGreaterThan(0.9);
  expect(total(inside)).toBeLessThan(0.96);
  expect(Math.exp(first.lnStiffness - first.widthLn / 2)).toBeCloseTo(5e-5 / 3, 12);
});

test('a known fixity never leaves 0 to 1', () => {
  const cells = fixityCells({ kind: 'known', value: { value: 0.05, standardUncertainty: 0.1 } });
  for (const { at } of cells) expect(at).toBeGreaterThanOrEqual(0);
});
