/** The spectrum shows the first partials on round axes that keep still from pluck to pluck. */

import { describe, expect, it } from 'vitest';
import { frequencyFigures, highestHzOf, levelFigures, levelRangeOf } from '../../../../src/ui/parts/spectrum-axis.ts';

const places = [1, 2, 3, 4, 5].map((number) => ({ lowHz: 110 * number, highHz: 140 * number }));

describe('frequency axis', () => {
  it('ends behind the fourth partial when wide, behind the third when narrow', () => {
    expect(highestHzOf(places, 600)).toBe(600);
    expect(highestHzOf(places, 360)).toBe(450);
  });

  it('keeps its end as long as that serves', () => {
    expect(highestHzOf(places, 600, 700)).toBe(700);
    expect(highestHzOf(places, 600, 500)).toBe(600);
    expect(highestHzOf(places, 600, 3000)).toBe(600);
  });

  it('has about six figures and the unit at the last', () => {
    const figures = frequencyFigures(600, 400, 'en', 'Hz').map(({ text }) => text);
    expect(figures).toEqual(['0', '100', '200', '300', '400', '500', '600\u00a0Hz']);
    expect(frequencyFigures(450, 240, 'en', 'Hz').map(({ at }) => at)).toEqual([0, 200, 400]);
  });
});

describe('level axis', () => {
  it('spans 80 dB down from above the strongest level', () => {
    expect(levelRangeOf([-90, -31, -70], 3)).toEqual({ lowDbfs: -100, highDbfs: -20 });
    expect(levelRangeOf([-90, -4, -70], 3)).toEqual({ lowDbfs: -80, highDbfs: 0 });
    expect(levelRangeOf([-90, 2, -70], 3)).toEqual({ lowDbfs: -60, highDbfs: 20 });
  });

  it('does not look beyond the bins that are drawn', () => {
    expect(levelRangeOf([-90, -50, -10], 2)).toEqual({ lowDbfs: -120, highDbfs: -40 });
  });

  it('goes down to the floor of the room and a little further, not without end', () => {
    // a step of 20 dB below the middle of the floor, with 12 dB for its name
    expect(levelRangeOf([-90, -4, -70], 3, [-82, -80, -70])).toEqual({ lowDbfs: -100, highDbfs: 0 });
    expect(levelRangeOf([-90, -4, -70], 3, [-40, -40, -40])).toEqual({ lowDbfs: -60, highDbfs: 0 });
    expect(levelRangeOf([-90, -4, -70], 3, [-180, -180, -180])).toEqual({ lowDbfs: -120, highDbfs: 0 });
    expect(levelRangeOf([-90, -4, -70], 3, [Number.NEGATIVE_INFINITY])).toEqual({ lowDbfs: -80, highDbfs: 0 });
  });

  it('has a range without any sound', () => {
    expect(levelRangeOf([], 0)).toEqual({ lowDbfs: -100, highDbfs: 0 });
    expect(levelRangeOf([Number.NEGATIVE_INFINITY], 1)).toEqual({ lowDbfs: -100, highDbfs: 0 });
  });

  it('has figures with a true minus and the unit at the top', () => {
    expect(levelFigures({ lowDbfs: -80, highDbfs: 0 }, 'en', 'dB').map(({ text }) => text)).toEqual(['−60', '−40', '−20', '0\u00a0dB']);
  });
});
