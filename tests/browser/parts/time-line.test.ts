/** Both plots over time: readings, target, flags and forecast stand where their values and days say, at any width, and are told as tables. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/match-line.ts';
import '../../../src/ui/parts/time-line.ts';
import { timeTicks } from '../../../src/ui/parts/time-axis.ts';
import { objections } from './axe.ts';
import { all, figure, mounted, one, texts } from './mount.ts';

const DAY_S = 86_400;
const START_S = new Date(2027, 8, 1).getTime() / 1000;
const at = (day: number) => START_S + day * DAY_S;
const table = { caption: 'Forces over time', columns: ['Time', 'Force'], rows: [['1 Sep', '8 N']] };

const LINE = {
  lanes: [
    {
      name: 'A',
      readings: [0, 20, 40, 60].map((day) => ({ atS: at(day), value: 8, low: 7.8, high: 8.2 })),
      course: () => 8,
      courseFromS: at(0),
    },
    { name: 'B', readings: [0, 20, 40, 60].map((day) => ({ atS: at(day), value: 7, low: 6.8, high: 7.2 })) },
  ],
  target: { lowN: 6, highN: 9 },
  targetLabel: 'target 6 to 9 N',
  flags: [
    { atS: at(10), text: 'New belt' },
    { atS: at(11), text: 'Moved to the window' },
  ],
  range: { fromS: at(-2), toS: at(90) },
  nowS: at(61),
  todayLabel: 'today',
  label: 'Forces of A and B.',
  table,
  locale: 'en-GB',
};

const MATCH = {
  points: [0, 20, 40, 60].map((day) => ({ atS: at(day), value: -0.0005 * day, low: -0.0005 * day - 0.01, high: -0.0005 * day + 0.01 })),
  toleranceRelative: 0.05,
  bandLabel: 'within 5 %',
  course: {
    fromS: at(0),
    at: (atS: number) => {
      const value = (-0.0005 * (atS - START_S)) / DAY_S;
      return { value, low: value - 0.005, high: value + 0.005 };
    },
  },
  leaves: { earliestS: at(80), atS: at(84), latestS: at(88), text: '20 Nov to 28 Nov' },
  flagsS: [at(10)],
  range: LINE.range,
  nowS: LINE.nowS,
  label: 'How far B stands from A.',
  table,
  locale: 'en-GB',
};

describe('time-line', () => {
  it.each([900, 360])('draws each reading at its day and over its interval, %i px wide', async (width) => {
    const part = await mounted('time-line', LINE, width);
    const bars = all(part, 'rect.bar');
    expect(bars.length).toBe(8);
    const [first, second, third] = bars.map((bar) => figure(bar, 'x'));
    expect(second! - first!).toBeCloseTo(third! - second!, 6);
    const wash = one(part, 'rect.wash');
    const perN = figure(wash, 'height') / 3;
    expect(figure(bars[0]!, 'height')).toBeCloseTo(0.4 * perN, 6);
    expect(figure(bars[0]!, 'y') - figure(wash, 'y')).toBeCloseTo(0.8 * perN, 6);
    expect(figure(bars[4]!, 'y') - figure(bars[0]!, 'y')).toBeCloseTo(perN, 6);
    expect(texts(part)).toContain('today');
    expect(part.getBoundingClientRect().width).toBeLessThanOrEqual(width);
  });

  it('keeps the words of a flag only where they have room, its flag always', async () => {
    const part = await mounted('time-line', LINE, 360);
    expect(all(part, 'path.flag').length).toBe(2);
    expect(texts(part)).toContain('New belt');
    expect(texts(part)).not.toContain('Moved to the window');
    expect(all(part, 'path.flag title').map((title) => title.textContent)).toEqual(['New belt', 'Moved to the window']);
  });

  it('tells belts apart without colour, has a name and a table', async () => {
    const part = await mounted('time-line', LINE);
    expect(all(part, 'rect.bar.hollow').length).toBe(4);
    expect(texts(part, 'text.on-tile')).toEqual(['A', 'B']);
    expect(one(part, 'svg[role=img]').getAttribute('aria-label')).toBe(LINE.label);
    expect(one(part, 'caption').textContent?.trim()).toBe(table.caption);
    expect(await objections()).toEqual([]);
  });
});

describe('match-line', () => {
  it('draws the differences, the band, and when it is left', async () => {
    const part = await mounted('match-line', MATCH, 900);
    expect(all(part, 'path.whisker').length).toBe(4);
    const when = one(part, 'rect.when');
    const perDay = figure(when, 'width') / 8;
    const today = Number(/^M([\d.]+)/u.exec(one(part, 'path.today').getAttribute('d')!)![1]);
    expect(figure(when, 'x') - today).toBeCloseTo(19 * perDay, 3);
    expect(texts(part)).toContain('20 Nov to 28 Nov');
    expect(all(part, 'path.forecast').length).toBe(3);
    expect(await objections()).toEqual([]);
  });

  it('leaves out what is not known', async () => {
    const part = await mounted('match-line', { ...MATCH, course: undefined, leaves: undefined, points: MATCH.points.slice(0, 1) }, 360);
    expect(all(part, 'rect.when, path.forecast').length).toBe(0);
    expect(all(part, 'path.whisker').length).toBe(1);
  });
});

describe('days along an axis', () => {
  it.each([
    [10, 7],
    [60, 6],
    [400, 8],
    [4000, 6],
  ])('over %i days are at most %i, in order, inside', (days, atMost) => {
    const range = { fromS: at(0), toS: at(days) };
    const ticks = timeTicks(range, { atMost, locale: 'en-GB', short: false });
    expect(ticks.length).toBeGreaterThan(1);
    expect(ticks.length).toBeLessThanOrEqual(atMost + 1);
    expect(ticks.map(({ atS }) => atS)).toEqual(ticks.map(({ atS }) => atS).sort((a, b) => a - b));
    for (const { atS } of ticks) expect(atS >= range.fromS && atS <= range.toS).toBe(true);
    expect(new Set(ticks.map(({ text }) => text)).size).toBe(ticks.length);
  });
});
