import { describe, expect, test } from 'vitest';
import { centralSpan, knownSpan } from '../../../../src/core/force/known-span.ts';
import { endsCells, fixityCells, stiffnessCells } from '../../../../src/core/force/prior.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

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

describe('the middle of what is known, for first-order propagation', () => {
  test('unknown ends: 0.5 ± 0.441 each, half alike', () => {
    const central = centralSpan(knownSpan(spanOf(0.15))!);
    // Variance of a third at 0, a third at 1, a third even between: 1/6 + 1/36.
    const variance = 1 / 6 + 1 / 36;
    expect(central.fixity).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.5, 12)]);
    expect(central.fixityU[0]).toBeCloseTo(Math.sqrt(variance), 12);
    expect(central.fixityU[1]).toBeCloseTo(Math.sqrt(variance), 12);
    expect(central.fixityCovariance).toBeCloseTo(variance / 2, 12);
  });

  test('ends that differ keep their own middle', () => {
    const ends = [
      { kind: 'between', low: 0.7, high: 1 },
      { kind: 'known', value: { value: 0.2, standardUncertainty: 0.05 } },
    ] as const;
    const central = centralSpan(knownSpan(spanOf(0.15, WEIGHED_BELT, { ends }))!);
    expect(central.fixity[0]).toBeCloseTo(0.85, 12);
    expect(central.fixity[1]).toBeCloseTo(0.2, 12);
    expect(central.fixityU[0]).toBeCloseTo(0.3 / Math.sqrt(12), 12);
    expect(central.fixityCovariance).toBeCloseTo(0, 12);
  });

  test('a range of stiffness: geometric middle, a little wider than even', () => {
    const central = centralSpan(knownSpan(spanOf(0.15))!);
    expect(central.bendingStiffnessNm2).toBeCloseTo(Math.sqrt(5e-5 * 3e-4), 12);
    expect(central.lnStiffnessU).toBeGreaterThan(Math.log(6) / Math.sqrt(12));
    expect(central.lnStiffnessU).toBeLessThan(0.65);
  });

  test('a belt without stiffness', () => {
    const belt = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: { value: 0, standardUncertainty: 0 } } } as const;
    const central = centralSpan(knownSpan(spanOf(0.15, belt))!);
    expect(central.bendingStiffnessNm2).toBe(0);
    expect(central.lnStiffnessU).toBe(0);
  });
});

test('without span or belt nothing is known', () => {
  expect(knownSpan({ ends: UNKNOWN_ENDS, belt: WEIGHED_BELT })).toBeUndefined();
  expect(knownSpan({ ends: UNKNOWN_ENDS, spanLengthM: { value: 0.1, standardUncertainty: 0.0005 } })).toBeUndefined();
});
