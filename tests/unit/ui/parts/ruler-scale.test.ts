/** Ticks of 15, 10 and 5 px stand at whole, half and tenth newtons, as dense as the eye can tell them, and figures stand clear. */

import { describe, expect, it } from 'vitest';
import { rulerFigures, rulerScale, rulerTicks } from '../../../../src/ui/parts/ruler-scale.ts';

const range = { lowN: 4, highN: 11 };
const print = { locale: 'en', widthOf: (text: string) => 9 * text.length };
const spacings = (places: readonly number[]) => {
  const inOrder = [...places].sort((a, b) => a - b);
  return inOrder.slice(1).map((place, index) => place - inOrder[index]!);
};

describe('scale of the ruler', () => {
  it('is straight, and leads back', () => {
    const scale = rulerScale(range, 700);
    expect(scale.xOf(11) - scale.xOf(4)).toBeCloseTo(7 * scale.pxPerN, 9);
    expect(scale.forceAt(scale.xOf(7.3))).toBeCloseTo(7.3, 9);
    expect(scale.xOf(4)).toBeGreaterThan(0);
    expect(scale.xOf(11)).toBeLessThan(700);
  });
});

describe('ticks', () => {
  it('show tenths where there is room, each length at its own step', () => {
    const scale = rulerScale(range, 700);
    const ticks = rulerTicks(range, scale);
    for (const { atN, xPx, lengthPx } of ticks) {
      const tenths = Math.round(atN * 10);
      expect(atN * 10).toBeCloseTo(tenths, 6);
      expect(lengthPx).toBe(tenths % 10 === 0 ? 15 : tenths % 5 === 0 ? 10 : 5);
      expect(xPx).toBeCloseTo(scale.xOf(atN), 6);
    }
    const within = ticks.filter(({ atN }) => atN > 3.99 && atN < 11.01);
    expect(within).toHaveLength(71);
  });

  it.each([240, 320, 390, 700, 1400])('are never closer than 6 px on %i px', (widthPx) => {
    for (const shown of [range, { lowN: 0, highN: 300 }, { lowN: 0.2, highN: 1.1 }, { lowN: 5, highN: 40 }]) {
      const ticks = rulerTicks(shown, rulerScale(shown, widthPx));
      expect(ticks.length).toBeGreaterThan(2);
      expect(Math.min(...spacings(ticks.map(({ xPx }) => xPx)))).toBeGreaterThanOrEqual(6 - 1e-6);
    }
  });

  it('leave the tenths out on a narrow ruler', () => {
    const lengths = new Set(rulerTicks(range, rulerScale(range, 320)).map(({ lengthPx }) => lengthPx));
    expect(lengths).toEqual(new Set([15, 10]));
  });

  it('never stand below zero', () => {
    const shown = { lowN: 0, highN: 8 };
    expect(Math.min(...rulerTicks(shown, rulerScale(shown, 700)).map(({ atN }) => atN))).toBe(0);
  });
});

describe('figures', () => {
  it('stand under each newton where there is room', () => {
    expect(rulerFigures(range, rulerScale(range, 700), print).map(({ text }) => text)).toEqual(['4', '5', '6', '7', '8', '9', '10', '11']);
  });

  it('become every second where there is not', () => {
    const shown = { lowN: 7, highN: 17 };
    expect(rulerFigures(shown, rulerScale(shown, 320), print).map(({ text }) => text)).toEqual(['8', '10', '12', '14', '16']);
  });

  it('take the decimal sign of the language', () => {
    const shown = { lowN: 0.2, highN: 1.1 };
    expect(rulerFigures(shown, rulerScale(shown, 700), { ...print, locale: 'de' }).map(({ text }) => text)).toContain('0,5');
  });
});
