/** Each remedy stands at its forces on one scale with the target, beside it its grade and its figure, in every width. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/remedy-ruler.ts';
import { objections } from './axe.ts';
import { all, boxIn, figure, mounted, one, settled, texts, textsOutside } from './mount.ts';
import { remedies } from './samples.ts';

const target = { lowN: 3, highN: 5 };
const table = {
  caption: 'What each would give',
  columns: ['Remedy', 'Force'],
  rows: remedies.map(({ name, figure: text }) => [name, text]),
};
type Ruler = HTMLElementTagNameMap['remedy-ruler'];

/** Place of a force as the figures of the axis have it. */
const placeOf = (ruler: Ruler, forceN: number): number => {
  const figures = all(ruler, '.axis text[text-anchor=middle]').map((text) => ({ x: figure(text, 'x'), force: Number(text.textContent) }));
  const [first, last] = [figures[0]!, figures.at(-1)!];
  return first.x + ((forceN - first.force) * (last.x - first.x)) / (last.force - first.force);
};

describe('remedy-ruler', () => {
  it.each([490, 340])('stands every interval and the target at their forces, %i px wide', async (width) => {
    const ruler = await mounted('remedy-ruler', { target, rows: remedies, table }, width);
    const lines = all(ruler, '.thin .extent');
    expect(lines).toHaveLength(remedies.length);
    remedies.forEach(({ lowN, highN }, index) => {
      expect(figure(lines[index]!, 'x1')).toBeCloseTo(placeOf(ruler, lowN!), 6);
      expect(figure(lines[index]!, 'x2')).toBeCloseTo(placeOf(ruler, highN!), 6);
    });
    for (const band of all(ruler, '.band')) {
      expect(figure(band, 'x')).toBeCloseTo(placeOf(ruler, 3), 6);
      expect(figure(band, 'x') + figure(band, 'width')).toBeCloseTo(placeOf(ruler, 5), 6);
    }
    const lefts = new Set(all(ruler, '.lane, .axis').map((lane) => Math.round(boxIn(ruler, lane).left)));
    expect(lefts.size).toBe(1);
  });

  it('says grade and figure beside each, and dashes what is now', async () => {
    const ruler = await mounted('remedy-ruler', { target, rows: remedies, table }, 490);
    expect(texts(ruler, '.name')).toEqual(remedies.map(({ name }) => name));
    expect(texts(ruler, '.figure')).toEqual(remedies.map((row) => row.figure));
    expect(all(ruler, 'grade-mark').map((mark) => mark.getAttribute('grade'))).toEqual(remedies.map(({ grade }) => grade));
    const dashes = all(ruler, '.thin .extent').map((line) => getComputedStyle(line).strokeDasharray !== 'none');
    expect(dashes).toEqual(remedies.map(({ isNow }) => isNow === true));
  });

  it('lets an interval without a lower bound begin at zero, with an arrow', async () => {
    const rows = [{ ...remedies[0]!, lowN: undefined, highN: 0.85, valueN: undefined }, ...remedies.slice(1)];
    const ruler = await mounted('remedy-ruler', { target, rows }, 490);
    expect(figure(all(ruler, '.thin .extent')[0]!, 'x1')).toBeCloseTo(placeOf(ruler, 0), 6);
    expect(all(ruler, '.arrow')).toHaveLength(1);
  });

  it.each([240, 288, 358, 490, 700])('lets nothing leave its width, %i px', async (width) => {
    const ruler = await mounted('remedy-ruler', { target, rows: remedies, table, note: 'Reckoned for this belt.' }, width);
    expect(textsOutside(ruler)).toEqual([]);
    const above = boxIn(ruler, all(ruler, '.name')[0]!).bottom <= boxIn(ruler, all(ruler, '.lane')[0]!).top + 1;
    expect(above).toBe(width < 420);
    ruler.target = undefined;
    await settled(ruler);
    expect(all(ruler, '.band')).toHaveLength(0);
  });

  it('is a table to the ear, free of objections', async () => {
    const ruler = await mounted('remedy-ruler', { target, rows: remedies, table }, 490);
    expect(one(ruler, '.rows').getAttribute('aria-hidden')).toBe('true');
    expect(texts(ruler, 'tbody th')).toEqual(remedies.map(({ name }) => name));
    expect(await objections()).toEqual([]);
  });
});
