import { describe, expect, it } from 'vitest';
import { axisFigures } from '../../../../src/ui/parts/draw-axis.ts';

describe('axisFigures', () => {
  it.each([
    [10.4, 12.1, [10.5, 11, 11.5, 12], 1],
    [0, 60, [0, 10, 20, 30, 40, 50, 60], 0],
    [0.98, 1.02, [0.98, 0.99, 1, 1.01, 1.02], 2],
  ])('%d to %d', (from, to, values, decimals) => {
    const figures = axisFigures(from, to);
    expect(figures.decimals).toBe(decimals);
    expect(figures.values).toHaveLength(values.length);
    for (const [index, value] of values.entries()) expect(figures.values[index]).toBeCloseTo(value, 9);
  });

  it('gives one figure where all draws are the same', () => {
    expect(axisFigures(5, 5).values).toEqual([5]);
  });
});
