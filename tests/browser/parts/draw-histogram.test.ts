/** The bars stand at their forces above one axis, the intervals below them at theirs, and a table says the same. */

import { describe, expect, it } from 'vitest';
import '../../../src/ui/parts/draw-histogram.ts';
import { objections } from './axe.ts';
import { all, figure, mounted, texts } from './mount.ts';

const PROPERTIES = {
  bins: { fromN: 8, binWidthN: 0.5, shares: [0.1, 0.4, 0.3, 0.2] },
  intervals: [
    { name: 'draws', lowN: 8.2, highN: 9.8 },
    { name: 'slack', highN: 9.5 },
  ],
  label: 'Histogram of the force. Between 8.2 and 9.8 N.',
  table: { caption: 'Shares', columns: ['Force', 'Share'], rows: [['8 to 10 N', '100 %']] },
  figure: (valueN: number, decimals: number) => valueN.toFixed(decimals),
};

describe('draw-histogram', () => {
  it.each([490, 300])('stands bars and bounds on one scale, %i px wide', async (width) => {
    const part = await mounted('draw-histogram', PROPERTIES, width);
    const bars = all(part, 'rect');
    const heights = bars.map((bar) => figure(bar, 'height'));
    expect(heights[1]! / heights[0]!).toBeCloseTo(4, 6);
    expect(Math.max(...heights)).toBe(heights[1]);
    const figures = all(part, 'text[text-anchor=middle]');
    const x8 = figure(figures[0]!, 'x');
    expect(texts(part, 'text[text-anchor=middle]')[0]).toBe('8.0');
    expect(figure(bars[0]!, 'x')).toBeCloseTo(x8, 6);
    const perN = (figure(bars[2]!, 'x') - figure(bars[0]!, 'x')) / 1;
    const [draws, slack] = all(part, '.interval').map((path) => path.getAttribute('d')!);
    expect(Number(/^M([\d.]+)/u.exec(draws!)![1])).toBeCloseTo(x8 + 0.2 * perN, 6);
    expect(draws!.match(/v10/gu)).toHaveLength(2);
    expect(slack!.match(/v10/gu)).toHaveLength(1); // no cap where there is no bound
    expect(part.getBoundingClientRect().width).toBeLessThanOrEqual(width);
  });

  it('has a name, a sentence and a table', async () => {
    const part = await mounted('draw-histogram', PROPERTIES);
    expect(all(part, 'svg[role=img]')[0]!.getAttribute('aria-label')).toBe(PROPERTIES.label);
    expect(texts(part, 'td')).toEqual(['100 %']);
    expect(await objections()).toEqual([]);
  });
});
