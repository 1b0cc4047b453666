/** The picture of a sound and the levels of its partials: marks stand at their places, each has a name and a sentence, and neither is wider than its page. */

import { describe, expect, it } from 'vitest';
import type { DecayPlot } from '../../../src/ui/parts/decay-plot.ts';
import '../../../src/ui/parts/decay-plot.ts';
import '../../../src/ui/parts/spectrogram-plot.ts';
import { objections } from './axe.ts';
import { all, figure, mounted, texts } from './mount.ts';

const COLUMNS = 100;
const BINS = 101;
/** One tone at 300 of 1000 Hz from column 40 on. */
const PICTURE = {
  fromS: -0.4,
  stepS: 0.01,
  columnCount: COLUMNS,
  binWidthHz: 10,
  binCount: BINS,
  levelsDbfs: Float32Array.from({ length: COLUMNS * BINS }, (_, i) => (i % BINS === 30 && i >= 40 * BINS ? -10 : -90)),
};
const SPECTROGRAM = {
  picture: PICTURE,
  window: { fromS: 0.012, toS: 0.5 },
  partials: [
    { frequencyHz: 300, label: '1: 300 Hz' },
    { frequencyHz: 305, label: '2: 305 Hz' },
  ],
  leftOut: [{ frequencyHz: 100, label: 'hum, left out' }],
  windowLabel: 'read from here',
  letGoLabel: 'let go',
  label: 'Sound over time and frequency. Partials followed: 1: 300 Hz.',
  table: { caption: 'Partials', columns: ['Partial', 'Frequency'], rows: [['1', '300 Hz']] },
};

describe('spectrogram-plot', () => {
  it.each([720, 288])('inks the tone where it is, with its marks on the same scale, %i px wide', async (width) => {
    const part = await mounted('spectrogram-plot', SPECTROGRAM, width);
    const canvas = all(part, 'canvas')[0] as unknown as HTMLCanvasElement;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    const inked = Array.from({ length: COLUMNS * BINS }, (_, i) => i).filter((i) => data[4 * i + 3]! > 200);
    expect(new Set(inked.map((i) => BINS - 1 - Math.floor(i / COLUMNS)))).toEqual(new Set([30]));
    expect(Math.min(...inked.map((i) => i % COLUMNS))).toBe(40);
    const [picture, frame] = [canvas.getBoundingClientRect(), all(part, '.frame')[0]!.getBoundingClientRect()];
    for (const side of ['left', 'right', 'top', 'bottom'] as const) expect(Math.abs(picture[side] - frame[side])).toBeLessThan(1);
    const disc = figure(all(part, '.found')[0]!, 'cy');
    const [top, bottom] = [
      figure(all(part, '.frame')[0]!, 'y'),
      figure(all(part, '.frame')[0]!, 'y') + figure(all(part, '.frame')[0]!, 'height'),
    ];
    expect((bottom - disc) / (bottom - top)).toBeCloseTo(0.3, 6);
    const names = all(part, 'text').filter((text) => /Hz$|left out$/u.test(text.textContent ?? ''));
    const heights = names.map((name) => figure(name, 'y')).sort((a, b) => a - b);
    for (let i = 1; i < heights.length; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThan(12);
    expect(part.getBoundingClientRect().width).toBeLessThanOrEqual(width);
    expect(part.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('has a name, a sentence and a table; nothing of no sound', async () => {
    const part = await mounted('spectrogram-plot', SPECTROGRAM);
    expect(all(part, 'svg[role=img]')[0]!.getAttribute('aria-label')).toBe(SPECTROGRAM.label);
    expect(texts(part, 'td')).toEqual(['300 Hz']);
    expect(await objections()).toEqual([]);
    const empty = await mounted('spectrogram-plot', {
      ...SPECTROGRAM,
      picture: { ...PICTURE, columnCount: 0, levelsDbfs: new Float32Array() },
    });
    expect(all(empty, 'svg')).toHaveLength(0);
  });
});

const DECAYS: Partial<DecayPlot> = {
  lines: [
    {
      label: 'partial 1',
      heard: Array.from({ length: 40 }, (_, i) => ({ atS: i / 80, levelDbfs: -10 - i / 2 })),
      fitted: [
        { atS: 0, levelDbfs: -10 },
        { atS: 0.5, levelDbfs: -30 },
      ],
    },
    {
      label: 'partial 2',
      heard: [{ atS: 0.1, levelDbfs: -200 }],
      fitted: [
        { atS: 0, levelDbfs: -12 },
        { atS: 0.5, levelDbfs: -140 },
      ],
    },
  ],
  residual: [
    { atS: 0.02, levelDbfs: -40 },
    { atS: 0.4, levelDbfs: -50 },
  ],
  roomDbfs: -60,
  untilS: 0.5,
  residualLabel: 'left over',
  roomLabel: 'room before',
  label: 'Level of each partial over time.',
};

describe('decay-plot', () => {
  it.each([720, 288])('puts dots on their line, ends a line that leaves the picture at its foot, %i px wide', async (width) => {
    const part = await mounted('decay-plot', DECAYS, width);
    const [first, second] = all(part, '.fitted').map((path) => [...path.getAttribute('d')!.matchAll(/-?[\d.]+/gu)].map(Number));
    const [x0, y0, x1, y1] = first!;
    for (const dot of all(part, '.heard')) {
      const share = (figure(dot, 'cx') - x0!) / (x1! - x0!);
      expect(Math.abs(figure(dot, 'cy') - (y0! + share * (y1! - y0!)))).toBeLessThan(1);
    }
    expect(all(part, '.heard').length).toBeGreaterThan(6);
    const foot = figure(all(part, '.room')[0]!, 'y') + figure(all(part, '.room')[0]!, 'height');
    expect(second![3]).toBeCloseTo(foot, 6);
    expect(second![2]).toBeLessThan(x1!);
    expect(texts(part, 'text')).toEqual(expect.arrayContaining(['partial 1', 'partial 2', 'left over', 'room before']));
    expect(part.scrollWidth).toBeLessThanOrEqual(width);
    expect(await objections()).toEqual([]);
  });
});
