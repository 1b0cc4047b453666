/** The plots of gauges: marks stand at their readings and forces, what is refused is hatched on its own side, tables say the same. Invented figures. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/calibration-plot.ts';
import type { CalibrationView } from '../../../src/ui/parts/calibration-plot.ts';
import '../../../src/ui/parts/error-lanes.ts';
import '../../../src/ui/parts/spread-plot.ts';
import { objections } from './axe.ts';
import { all, figure, mounted, texts } from './mount.ts';

const CURVE = [4, 8, 12].map((forceN) => ({ forceN, reading: forceN / 4, halfN: 0.4 }));
const VIEW: CalibrationView = {
  points: [
    { row: 1, reading: 1, forceN: 4, way: 'up', offN: 0 },
    { row: 2, reading: 2, forceN: 8, way: 'down', offN: 0.1 },
    { row: 3, reading: 2.6, forceN: 12, way: 'plain', offN: 1.6, odd: 'row 3?' },
  ],
  curve: CURVE,
  verified: { readingLow: 1, readingHigh: 3 },
  target: { lowN: 6, highN: 9, text: 'target 6 to 9 N' },
  refused: { reading: 3.2, text: 'at its stop', side: 'above' },
  maker: [
    { reading: 2, forceN: 8, refused: false },
    { reading: 4, forceN: 16, refused: true },
  ],
};
const WORDS = {
  title: 'Readings',
  residuals: 'Off the curve',
  up: 'up',
  down: 'down',
  plain: 'put on',
  forceHung: 'force hung',
  axis: 'reading',
  verified: 'verified range',
  maker: 'its chart',
  fit: 'fit',
  label: 'Three readings against the force.',
  residualLabel: 'Distance from the curve.',
};
const TABLE = { caption: 'Readings', columns: ['row', 'reading'], rows: [['1', '1']] };
const startOf = (path: Element): readonly [number, number] => {
  const [, x, y] = /^M([\d.]+),([\d.]+)/u.exec(path.getAttribute('d')!)!;
  return [Number(x), Number(y)];
};

describe('calibration-plot', () => {
  it.each([700, 320])('marks each reading at its force, %i px wide', async (width) => {
    const part = await mounted('calibration-plot', { view: VIEW, words: WORDS, table: TABLE }, width);
    const upper = all(part, 'svg[role=img]')[0]!;
    const [x1, y1] = startOf(upper.querySelector('path.up')!);
    const [x2, y2] = startOf(upper.querySelector('path.down')!);
    const disc = upper.querySelector('circle.plain')!;
    const perReading = x2 - x1;
    expect(figure(disc, 'cx') - x1).toBeCloseTo(1.6 * perReading, 1);
    expect(y1 + 5 - figure(disc, 'cy')).toBeCloseTo(2 * (y1 + 5 - (y2 - 5)), 1);
    expect(figure(upper.querySelector('circle.odd')!, 'cx')).toBe(figure(disc, 'cx'));
    expect(part.getBoundingClientRect().width).toBeLessThanOrEqual(width);
  });

  it('hatches beyond the stop, on the side where readings would go on', async () => {
    const hatchOf = async (side: 'above' | 'below') => {
      const part = await mounted('calibration-plot', { view: { ...VIEW, refused: { ...VIEW.refused!, side } }, words: WORDS }, 700);
      const wall = startOf(all(part, 'path.refused').at(-1)!)[0];
      const starts = [
        ...all(part, 'path.hatch')[0]!
          .getAttribute('d')!
          .matchAll(/M([\d.]+)/gu),
      ].map(([, x]) => Number(x));
      return { wall, low: Math.min(...starts), high: Math.max(...starts) };
    };
    const above = await hatchOf('above');
    expect(above.low).toBeGreaterThanOrEqual(above.wall - 0.1);
    const below = await hatchOf('below');
    expect(below.high).toBeLessThanOrEqual(below.wall + 0.1);
  });

  it('has names, sentences and a table, and says what is odd, verified and refused', async () => {
    const part = await mounted('calibration-plot', { view: VIEW, words: WORDS, table: TABLE }, 700);
    expect(all(part, 'svg[role=img]').map((svg) => svg.getAttribute('aria-label'))).toEqual([WORDS.label, WORDS.residualLabel]);
    expect(texts(part)).toEqual(expect.arrayContaining(['row 3?', 'verified range', 'at its stop', 'target 6 to 9 N', 'its chart']));
    expect(await objections()).toEqual([]);
  });
});

describe('error-lanes', () => {
  const lane = (name: string, grade: 'trusted' | 'unusable') => ({
    name,
    grade,
    gradeWord: grade,
    figure: grade === 'trusted' ? '± 3 %' : '',
    notes: ['best in the target'],
    points: [4, 8, 12].map((forceN) => ({ forceN, error: 0, low: -0.03, high: 0.03 })),
    ends: grade === 'unusable' ? 'stop at 12 N' : undefined,
  });
  const view = {
    lanes: [lane('Fork', 'trusted'), lane('Clip', 'unusable')],
    target: { lowN: 6, highN: 9, text: 'target 6 to 9 N' },
    tolerance: 0.2,
  };

  it.each([900, 360])('draws all lanes on one axis of force, %i px wide', async (width) => {
    const part = await mounted('error-lanes', { view, laneLabel: ({ name }) => name }, width);
    const lanes = all(part, 'svg[role=img]');
    expect(lanes.map((svg) => svg.getAttribute('aria-label'))).toEqual(['Fork', 'Clip']);
    const washes = lanes.map((svg) => figure(svg.querySelector('rect.wash')!, 'x'));
    expect(washes[0]).toBe(washes[1]);
    expect(texts(part)).toContain('stop at 12 N');
    expect(part.getBoundingClientRect().width).toBeLessThanOrEqual(width);
    expect(await objections()).toEqual([]);
  });
});

describe('spread-plot', () => {
  it('stands points between their lines, and rings what is odd', async () => {
    const view = {
      points: [
        { x: 5, y: 0.2 },
        { x: 9, y: 1.4, odd: true },
      ],
      lines: [
        { at: 0, text: 'bias 0', weight: 'middle' as const, low: -0.2, high: 0.2 },
        { at: 1, text: '', weight: 'outer' as const },
      ],
      xUnit: 'N',
      yUnit: 'N',
      hasX: true,
    };
    const part = await mounted('spread-plot', { view, label: 'Differences', table: TABLE }, 600);
    const [low, high] = all(part, 'circle.point').map((circle) => figure(circle, 'cy'));
    const outer = Number(/,([\d.]+)/u.exec(all(part, 'path.outer')[0]!.getAttribute('d')!)![1]);
    expect(high).toBeLessThan(outer);
    expect(outer).toBeLessThan(low!);
    expect(figure(all(part, 'circle.odd')[0]!, 'cy')).toBe(high);
    expect(await objections()).toEqual([]);
  });
});
