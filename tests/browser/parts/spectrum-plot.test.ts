/** The spectrum stands its peaks on the line and its places on the axis, follows the sound cheaply, and speaks as a table. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/spectrum-plot.ts';
import { objections } from './axe.ts';
import { all, boxIn, figure, mounted, one, settled, texts, textsOutside } from './mount.ts';
import { expected, humHz, peaks, spectrum } from './samples.ts';

const full = () => ({
  spectrum: spectrum(),
  expected,
  peaks,
  leftOut: [{ frequencyHz: humHz, label: 'hum, left out' }],
  floorLabel: 'the room before the pluck',
  label: 'Spectrum of pluck 3. Four partials found where they are expected.',
  table: { caption: 'Partials', columns: ['Partial', 'Frequency'], rows: peaks.map(({ label }, index) => [String(index + 1), label]) },
});
type Plot = HTMLElementTagNameMap['spectrum-plot'];

/** Place of a frequency as the figures of the axis have it. */
const placeOf = (plot: Plot, hz: number): number => {
  const byText = (text: string) => figure(all(plot, 'text').find((element) => element.textContent === text)!, 'x');
  return byText('0') + ((byText('100') - byText('0')) * hz) / 100;
};

const overlapping = (plot: Plot): string[] => {
  const boxes = all(plot, 'svg text').map((element) => ({ text: element.textContent ?? '', box: boxIn(plot, element) }));
  return boxes.flatMap(({ text, box }, index) =>
    boxes
      .slice(index + 1)
      .filter(
        ({ box: other }) =>
          box.left < other.right - 1 && other.left < box.right - 1 && box.top < other.bottom - 4 && other.top < box.bottom - 4,
      )
      .map((other) => `${text} / ${other.text}`),
  );
};

describe('spectrum-plot', () => {
  it('stands expected places and found peaks at their frequencies', async () => {
    const plot = await mounted('spectrum-plot', full(), 640);
    const discs = all(plot, '.disc');
    expect(discs.length).toBeGreaterThanOrEqual(4);
    peaks.slice(0, discs.length).forEach(({ frequencyHz }, index) => {
      expect(figure(discs[index]!, 'cx')).toBeCloseTo(placeOf(plot, frequencyHz), 3);
    });
    const band = all(plot, '.expected')[0]!;
    expect(figure(band, 'x')).toBeCloseTo(placeOf(plot, expected[0]!.lowHz), 3);
    expect(figure(band, 'x') + figure(band, 'width')).toBeCloseTo(placeOf(plot, expected[0]!.highHz), 3);
    expect(all(plot, '.expected-top')).toHaveLength(all(plot, '.expected').length);
  });

  it('puts each disc on the line', async () => {
    const plot = await mounted('spectrum-plot', full(), 640);
    const line = one(plot, '.line')
      .getAttribute('d')!
      .slice(1)
      .split('L')
      .map((point) => point.split(',').map(Number));
    for (const disc of all(plot, '.disc')) {
      const near = line.filter(([x]) => Math.abs(x! - figure(disc, 'cx')) < 4).map(([, y]) => y!);
      expect(Math.abs(Math.min(...near) - figure(disc, 'cy'))).toBeLessThan(0.6);
    }
  });

  it.each([288, 358, 460, 640, 960])('labels stand clear of one another on %i px', async (width) => {
    const plot = await mounted('spectrum-plot', full(), width);
    expect(texts(plot)).toEqual(expect.arrayContaining(['81.5 Hz', 'partial 1', 'hum,', 'left out', 'the room before the pluck']));
    expect(overlapping(plot)).toEqual([]);
    expect(textsOutside(plot)).toEqual([]);
    expect(plot.scrollWidth).toBeLessThanOrEqual(width);
  });

  it.each([288, 460, 640])('labels of the room and of what was left out stand clear of the line on %i px', async (width) => {
    const plot = await mounted('spectrum-plot', full(), width);
    const points = one(plot, '.line')
      .getAttribute('d')!
      .slice(1)
      .split('L')
      .map((point) => point.split(',').map(Number) as [number, number]);
    const named = all(plot, 'text.second').filter((text) => /room|pluck|hum|left/u.test(text.textContent ?? ''));
    expect(named.length).toBeGreaterThanOrEqual(3);
    for (const text of named) {
      const { left, right, top, bottom } = boxIn(plot, text);
      const inside = points.filter(([x, y]) => x > left && x < right && y > top + 2 && y < bottom - 3);
      expect(inside, text.textContent ?? '').toEqual([]);
    }
  });

  it('follows the sound by rewriting one line only', async () => {
    const plot = await mounted('spectrum-plot', { expected }, 640);
    const changed: string[] = [];
    const watch = new MutationObserver((records) => {
      for (const { target, attributeName } of records) changed.push(`${(target as Element).getAttribute('class')} ${attributeName}`);
    });
    watch.observe(plot.renderRoot, { subtree: true, childList: true, attributes: true, characterData: true });
    const { binWidthHz, levelsDbfs } = spectrum();
    plot.showLive({ binWidthHz, levelsDbfs });
    const first = one(plot, '.live').getAttribute('d');
    plot.showLive({ binWidthHz, levelsDbfs: levelsDbfs.map((level) => level - 20) });
    await settled(plot);
    watch.disconnect();
    expect(changed).toEqual(['live d', 'live d']);
    expect(first).toMatch(/^M/);
    expect(one(plot, '.live').getAttribute('d')).not.toBe(first);
    plot.showLive(undefined);
    expect(one(plot, '.live').getAttribute('d')).toBe('');
  });

  it('keeps its axis from pluck to pluck', async () => {
    const plot = await mounted('spectrum-plot', { ...full(), expected: [] }, 640);
    const before = placeOf(plot, 100);
    plot.peaks = peaks.map((peak) => ({ ...peak, frequencyHz: peak.frequencyHz * 0.97 }));
    await settled(plot);
    expect(placeOf(plot, 100)).toBe(before);
  });

  it('speaks as a table, free of objections', async () => {
    const plot = await mounted('spectrum-plot', full(), 640);
    expect(one(plot, 'svg').getAttribute('aria-label')).toContain('Four partials');
    expect(texts(plot, 'th[scope=col]')).toEqual(['Partial', 'Frequency']);
    expect(texts(plot, 'tbody td')).toEqual(peaks.map(({ label }) => label));
    expect(boxIn(plot, one(plot, '.spoken')).width).toBeLessThanOrEqual(1);
    expect(await objections()).toEqual([]);
  });
});
