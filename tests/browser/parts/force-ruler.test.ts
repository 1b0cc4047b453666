/** The ruler draws what it is told where it belongs, in every width, and nothing jumps as plucks come in. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/force-ruler.ts';
import { objections } from './axe.ts';
import { all, boxIn, figure, mounted, one, settled, texts, textsOutside } from './mount.ts';
import { pluck, reading, target, threePlucks } from './samples.ts';

const base = { target, targetLabel: 'target 6 to 9 N', targetShortLabel: 'target', label: 'Force ruler. Target 6 to 9 newtons.' };
type Ruler = HTMLElementTagNameMap['force-ruler'];

/** Place of a force as the figures under the ruler have it: read from two of them, not from the code. */
const placeOf = (ruler: Ruler, forceN: number): number => {
  const [first, second] = all(ruler, '.figure').map((text) => ({ x: figure(text, 'x'), force: Number(text.textContent) }));
  return first!.x + ((forceN - first!.force) * (second!.x - first!.x)) / (second!.force - first!.force);
};

describe('force-ruler', () => {
  it('stands target, plucks and reading at their forces', async () => {
    const ruler = await mounted('force-ruler', { ...base, plucks: threePlucks, reading });
    const band = one(ruler, '.band');
    expect(figure(band, 'x')).toBeCloseTo(placeOf(ruler, 6), 6);
    expect(figure(band, 'x') + figure(band, 'width')).toBeCloseTo(placeOf(ruler, 9), 6);
    const lines = all(ruler, '.thin.pluck .extent');
    expect(lines).toHaveLength(3);
    threePlucks.forEach((interval, index) => {
      expect(figure(lines[index]!, 'x1')).toBeCloseTo(placeOf(ruler, interval.lowN!), 6);
      expect(figure(lines[index]!, 'x2')).toBeCloseTo(placeOf(ruler, interval.highN!), 6);
    });
    expect(figure(one(ruler, '.stem'), 'x1')).toBeCloseTo(placeOf(ruler, 7.2), 6);
    const bars = all(ruler, '.reading .bar');
    expect(figure(bars[0]!, 'x')).toBeCloseTo(placeOf(ruler, 6.7), 6);
    expect(figure(bars[1]!, 'x') + figure(bars[1]!, 'width')).toBeCloseTo(placeOf(ruler, 7.7), 6);
    expect(figure(bars[0]!, 'height')).toBe(14);
  });

  it('keeps size, scale and every mark in place from no pluck to three', async () => {
    const ruler = await mounted('force-ruler', { ...base, hint: 'Each pluck will stand here' });
    const shape = () => ({ height: ruler.offsetHeight, figures: all(ruler, '.figure').map((text) => figure(text, 'x')) });
    const before = shape();
    let firstLane: number | undefined;
    for (const count of [1, 2, 3]) {
      ruler.plucks = threePlucks.slice(0, count);
      ruler.reading = reading;
      await settled(ruler);
      expect(shape()).toEqual(before);
      firstLane ??= figure(all(ruler, '.thin.pluck .extent')[0]!, 'y1');
      expect(figure(all(ruler, '.thin.pluck .extent')[0]!, 'y1')).toBe(firstLane);
    }
  });

  it('holds its scale while a pluck rings, and widens when it has died away', async () => {
    const ruler = await mounted('force-ruler', { ...base, plucks: threePlucks, reading });
    const figures = texts(ruler, '.figure');
    ruler.held = true;
    ruler.plucks = [...threePlucks, pluck(4, 20, 1)];
    await settled(ruler);
    expect(texts(ruler, '.figure')).toEqual(figures);
    expect(all(ruler, '.arrow')).toHaveLength(1);
    ruler.held = false;
    await settled(ruler);
    expect(figure(all(ruler, '.thin.pluck .extent')[3]!, 'x2')).toBeCloseTo(placeOf(ruler, 21), 6);
    expect(all(ruler, '.arrow')).toHaveLength(0);
  });

  it('begins anew with another target', async () => {
    const ruler = await mounted('force-ruler', { ...base, plucks: [pluck(1, 20, 1)] });
    ruler.plucks = [];
    ruler.target = { lowN: 30, highN: 40 };
    await settled(ruler);
    expect(Number(texts(ruler, '.figure')[0])).toBeGreaterThanOrEqual(20);
  });

  it('draws bounds without a value as a hollow dashed bar, with an arrow where there is no bound', async () => {
    const bounds = { highN: 8, valueN: 5, label: 'anywhere in here', shortLabel: '' };
    const ruler = await mounted('force-ruler', { ...base, reading: bounds, boundsOnly: true });
    expect(all(ruler, '.bar, .stem')).toHaveLength(0);
    expect(getComputedStyle(one(ruler, '.outline')).strokeDasharray).not.toBe('none');
    expect(boxIn(ruler, one(ruler, '.bounds .arrow')).left).toBeCloseTo(placeOf(ruler, 0), 0);
    expect(texts(ruler)).toContain('anywhere in here');
  });

  it('shows both readings where two fit, and what is predicted in blue', async () => {
    const ruler = await mounted('force-ruler', {
      reading: { lowN: 22, highN: 26, valueN: 24.1, label: '24.1 N' },
      rival: { lowN: 5.5, highN: 6.5, valueN: 6, label: '6.0 N' },
      predicted: { lowN: 12, highN: 14, valueN: 13, label: 'next' },
      boundsOnly: true,
    });
    expect(all(ruler, '.bounds')).toHaveLength(2);
    const aim = getComputedStyle(document.documentElement).getPropertyValue('--aim').trim();
    document.body.style.color = aim;
    expect(getComputedStyle(all(ruler, '.predicted .cap')[0]!).stroke).toBe(getComputedStyle(document.body).color);
    document.body.style.color = '';
  });

  it('lists plucks without a force by their words alone', async () => {
    const ruler = await mounted('force-ruler', { plucks: [{ label: 'pluck 1, 81.4 Hz' }, { label: 'pluck 2, 81.6 Hz' }] }, 288);
    expect(all(ruler, '.thin')).toHaveLength(0);
    expect(texts(ruler)).toEqual(expect.arrayContaining(['pluck 1, 81.4 Hz', 'pluck 2, 81.6 Hz']));
  });

  it('shows the last five of many plucks in the same room', async () => {
    const ruler = await mounted('force-ruler', { ...base, plucks: [1, 2, 3, 4, 5, 6, 7].map((number) => pluck(number, 7, 0.5)), reading });
    expect(all(ruler, '.thin.pluck')).toHaveLength(5);
    expect(texts(ruler)).not.toContain('pluck 2');
    const last = boxIn(ruler, all(ruler, '.thin.pluck')[4]!);
    expect(last.bottom).toBeLessThan(boxIn(ruler, one(ruler, '.reading')).top);
  });

  it('says numbers only when narrow, and lets nothing leave its width', async () => {
    for (const width of [288, 358, 720, 1000]) {
      const ruler = await mounted('force-ruler', { ...base, plucks: threePlucks, reading }, width);
      expect(texts(ruler).includes('pluck 1')).toBe(width > 560);
      expect(texts(ruler).includes('1')).toBe(width <= 560);
      expect(textsOutside(ruler)).toEqual([]);
      expect(ruler.scrollWidth).toBeLessThanOrEqual(width);
    }
  });

  it('is one image with its words, free of objections', async () => {
    const ruler = await mounted('force-ruler', { ...base, plucks: threePlucks, reading });
    expect(one(ruler, 'svg[role=img]').getAttribute('aria-label')).toBe(base.label);
    expect(await objections()).toEqual([]);
  });
});
