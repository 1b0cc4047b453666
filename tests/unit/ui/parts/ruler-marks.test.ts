/** An interval stands where its figures are; what has no end goes to the edge, and a label goes where there is room. */

import { describe, expect, it } from 'vitest';
import { bandLabelPlace, labelPlace, rulerMark } from '../../../../src/ui/parts/ruler-marks.ts';
import { rulerScale } from '../../../../src/ui/parts/ruler-scale.ts';

const scale = rulerScale({ lowN: 4, highN: 11 }, 700);

describe('mark of an interval', () => {
  it('stands at its bounds and its value', () => {
    const mark = rulerMark({ lowN: 6.7, highN: 7.7, valueN: 7.2 }, scale);
    expect(mark).toEqual({
      fromPx: scale.xOf(6.7),
      toPx: scale.xOf(7.7),
      openLow: false,
      openHigh: false,
      valuePx: scale.xOf(7.2),
    });
  });

  it('goes to the edge where a bound is missing', () => {
    expect(rulerMark({ highN: 7.7 }, scale)).toMatchObject({ fromPx: 0, openLow: true, openHigh: false });
    expect(rulerMark({ lowN: 7.7, valueN: 8 }, scale)).toMatchObject({ toPx: 700, openLow: false, openHigh: true });
  });

  it('ends at zero where there is no lower bound and the ruler shows zero', () => {
    const fromZero = rulerScale({ lowN: 0, highN: 10 }, 700);
    expect(rulerMark({ highN: 0.85 }, fromZero)).toMatchObject({ fromPx: fromZero.xOf(0), toPx: fromZero.xOf(0.85), openLow: true });
  });

  it('points to a value beyond the ruler', () => {
    expect(rulerMark({ lowN: 20, highN: 22, valueN: 21 }, scale)).toMatchObject({
      fromPx: 700,
      toPx: 700,
      openHigh: true,
      valuePx: undefined,
    });
  });

  it('is nothing where there is no figure', () => {
    expect(rulerMark({}, scale)).toBeUndefined();
  });
});

describe('labels', () => {
  const mark = { openLow: false, openHigh: false };
  it('stand right, else left, else above', () => {
    expect(labelPlace({ ...mark, fromPx: 300, toPx: 400 }, 60, 700)).toEqual({ xPx: 408, anchor: 'start', above: false });
    expect(labelPlace({ ...mark, fromPx: 300, toPx: 680 }, 60, 700)).toEqual({ xPx: 292, anchor: 'end', above: false });
    expect(labelPlace({ ...mark, fromPx: 20, toPx: 690 }, 60, 700)).toEqual({ xPx: 682, anchor: 'end', above: true });
  });

  it('of the band stand inside, else right, else left, else nowhere', () => {
    expect(bandLabelPlace(200, 400, 90, 700)).toMatchObject({ xPx: 392, anchor: 'end' });
    expect(bandLabelPlace(200, 260, 90, 700)).toMatchObject({ xPx: 268, anchor: 'start' });
    expect(bandLabelPlace(600, 660, 90, 700)).toMatchObject({ xPx: 592, anchor: 'end' });
    expect(bandLabelPlace(70, 130, 90, 200)).toBeUndefined();
  });
});
