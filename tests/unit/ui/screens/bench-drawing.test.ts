import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../src/core/math/random.ts';
import { Figures } from '../../../../src/ui/format.ts';
import { benchLabels, benchScale } from '../../../../src/ui/parts/bench-places.ts';
import { overlaps } from '../../../../src/ui/parts/label-places.ts';
import { benchDrawing, benchTable } from '../../../../src/ui/screens/belts/bench-drawing.ts';
import { type BenchResult, benchResult } from '../../../../src/ui/screens/belts/bench-result.ts';
import { FULL_PLAN, readBench } from '../../../support/bench-belt.ts';

const BELT = { linearDensityKgPerM: 0.0082, bendingStiffnessNm2: 1.4e-4, fixity: 0.45 };
const figures = new Figures('en-GB');
const data = readBench(createRandom(5), BELT);
const result = benchResult(data, [], 26) as BenchResult;
const drawing = benchDrawing(result, figures);

describe('the drawing of a bench', () => {
  it('has a point for each partial, and curves that rise with the force to the fitted density', () => {
    expect(drawing.points).toHaveLength(FULL_PLAN.spansM.length * FULL_PLAN.forcesN.length * FULL_PLAN.partials);
    expect(drawing.curves).toHaveLength(FULL_PLAN.spansM.length * FULL_PLAN.partials);
    for (const { points } of drawing.curves) {
      for (const [i, { y }] of points.slice(1).entries()) expect(y).toBeGreaterThan(points[i]!.y);
      expect(points.at(-1)!.y).toBeLessThan(drawing.level.value);
    }
    // The string's law takes a stiff belt for a lighter one: the long span under the largest force errs least.
    const nearest = Math.min(...drawing.curves.map(({ points }) => drawing.level.value - points.at(-1)!.y));
    expect(nearest / drawing.level.value).toBeLessThan(0.02);
  });

  it('has what is left over of each partial within a few of its own doubts', () => {
    for (const { off, offDoubt } of drawing.points) expect(Math.abs(off)).toBeLessThan(2 * offDoubt);
  });

  it('says the same as a table', () => {
    const { rows, columns } = benchTable(result, figures);
    expect(rows).toHaveLength(drawing.points.length);
    expect(rows.every((row) => row.length === columns.length)).toBe(true);
    expect(rows[0]![2]).toBe('1');
  });

  it.each([300, 430, 800])('names curves where nothing is in the way, on %i px', (widthPx) => {
    const scale = benchScale(drawing, widthPx);
    const placed = benchLabels(drawing, scale, (text) => text.length * 7).filter((label) => label !== undefined);
    expect(placed.length).toBeGreaterThan(1);
    placed.forEach((label, i) => {
      for (const other of placed.slice(i + 1)) expect(overlaps(label, other)).toBe(false);
      for (const { forceN, y } of drawing.points) {
        expect(overlaps(label, { xPx: scale.x(forceN) - 2, yPx: scale.y(y) - 2, widthPx: 4, heightPx: 4 })).toBe(false);
      }
    });
  });
});
