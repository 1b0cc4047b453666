import { describe, expect, it } from 'vitest';
import { bandPath, curvePath, doubtTicks, planScale, spanTicksM, xOf, yOf } from '../../../../src/ui/parts/span-plan-scale.ts';

const REACH = { fromM: 0.04, toM: 0.18 };
const scale = planScale(700, REACH, { most: 0.55 });
const POINTS = [
  { spanM: 0.04, atLow: undefined, atHigh: 0.5 },
  { spanM: 0.08, atLow: 0.8, atHigh: 0.3 },
  { spanM: 0.12, atLow: 0.4, atHigh: 0.2 },
  { spanM: 0.18, atLow: 0.2, atHigh: 0.1 },
  { spanM: 0.3, atLow: 0.1, atHigh: 0.05 },
];

describe('planScale', () => {
  it('goes up to a whole tenth, and places lengths and doubts inside its edges', () => {
    expect(scale.most).toBeCloseTo(0.6, 12);
    expect(xOf(scale, 0.04)).toBe(scale.leftPx);
    expect(xOf(scale, 0.5)).toBe(scale.rightPx);
    expect(yOf(scale, 0)).toBe(scale.bottomPx);
    expect(yOf(scale, 2)).toBe(scale.topPx);
  });

  it('has ticks with room for their figures', () => {
    expect(spanTicksM(scale).map((m) => Math.round(1000 * m))).toEqual([40, 60, 80, 100, 120, 140, 160, 180]);
    expect(spanTicksM(planScale(300, REACH, { most: 0.6 })).length).toBeLessThan(6);
    expect(doubtTicks(scale).map((share) => Math.round(100 * share))).toEqual([0, 10, 20, 30, 40, 50, 60]);
    expect(doubtTicks(planScale(700, REACH, { most: 1 })).map((share) => Math.round(100 * share))).toEqual([0, 20, 40, 60, 80, 100]);
  });
});

describe('curves', () => {
  const places = (path: string) => path.slice(1).split(' L');

  it('begins where it comes down into the plot, and ends with the reach', () => {
    const low = places(curvePath(scale, POINTS, 'atLow'));
    expect(low).toHaveLength(3);
    expect(Number(low[0]!.split(',')[1])).toBeCloseTo(scale.topPx, 1);
    expect(Number(low.at(-1)!.split(',')[0])).toBeCloseTo(scale.rightPx, 1);
    expect(places(curvePath(scale, POINTS, 'atHigh'))).toHaveLength(4);
  });

  it('fills what lies between, cut off at the top', () => {
    const band = bandPath(scale, POINTS);
    expect(band.startsWith('M')).toBe(true);
    expect(band.endsWith('Z')).toBe(true);
    expect(band.split('L')).toHaveLength(8);
  });

  it('goes on to the right edge, towards the first length beyond it', () => {
    const near = planScale(700, { fromM: 0.04, toM: 0.15 }, { most: 0.55 });
    const [x, y] = places(curvePath(near, POINTS, 'atLow'))
      .at(-1)!
      .split(',')
      .map(Number);
    expect(x).toBeCloseTo(near.rightPx, 1);
    expect(y).toBeCloseTo(yOf(near, 0.3), 1);
  });

  it('is nothing where no doubt is on the plot', () => {
    expect(curvePath(scale, [{ spanM: 0.05 }], 'atLow')).toBe('');
  });
});
