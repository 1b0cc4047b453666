/** From newtons to pixels on the ruler: where a force stands, which ticks there are, and which of them carry a figure. */

import type { ForceRange } from '../../core/setup.ts';
import { axisFigure } from './axis-figure.ts';

export interface RulerScale {
  readonly widthPx: number;
  readonly pxPerN: number;
  /** Place of a force, px from the left edge of the ruler; outside 0 to widthPx where the ruler does not reach it. */
  xOf(forceN: number): number;
  /** Force at a place, N. */
  forceAt(xPx: number): number;
}

/** Steel beyond the first figure, so that half of it and the unit have room. */
const BEFORE_FIRST_FIGURE_PX = 28;
const AFTER_LAST_FIGURE_PX = 34;

/** Straight scale over a width; the first and the last figure stand inside it, by default inside the steel. */
export const rulerScale = (
  { lowN, highN }: ForceRange,
  widthPx: number,
  { beforePx, afterPx } = { beforePx: BEFORE_FIRST_FIGURE_PX, afterPx: AFTER_LAST_FIGURE_PX },
): RulerScale => {
  const pxPerN = Math.max(1, widthPx - beforePx - afterPx) / (highN - lowN);
  return {
    widthPx,
    pxPerN,
    xOf: (forceN) => beforePx + (forceN - lowN) * pxPerN,
    forceAt: (xPx) => lowN + (xPx - beforePx) / pxPerN,
  };
};

export interface RulerTick {
  readonly atN: number;
  readonly xPx: number;
  readonly lengthPx: 5 | 10 | 15;
}

export interface RulerFigure {
  readonly atN: number;
  readonly xPx: number;
  readonly text: string;
}

const MIN_TICK_SPACING_PX = 6;
const MIN_FIGURE_GAP_PX = 12;
const MIN_LONG_TICKS = 3;

/** Newtons between the longest ticks: 1 N, ten times more where the middle ticks would stand too close, ten times less on a very short range. */
const longTickN = ({ lowN, highN }: ForceRange, pxPerN: number): number => {
  let longN = 1;
  while ((longN / 2) * pxPerN < MIN_TICK_SPACING_PX) longN *= 10;
  while ((highN - lowN) / longN < MIN_LONG_TICKS) longN /= 10;
  return longN;
};

/** Whole multiples of a step between two forces, none below zero. */
const multiples = (stepN: number, fromN: number, toN: number): number[] => {
  const first = Math.ceil(Math.max(0, fromN) / stepN - 1e-6);
  const last = Math.floor(toN / stepN + 1e-6);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * stepN);
};

/**
 * Ticks of 15, 10 and 5 px (1, 0.5 and 0.1 N) over the whole steel; a kind that would stand under 6 px apart is left out.
 *
 * @returns in order of length, longest first; no two at one place
 */
export const rulerTicks = (range: ForceRange, scale: RulerScale): RulerTick[] => {
  const longN = longTickN(range, scale.pxPerN);
  const kinds = [
    { stepN: longN, lengthPx: 15 },
    { stepN: longN / 2, lengthPx: 10 },
    { stepN: longN / 10, lengthPx: 5 },
  ] as const;
  const taken = new Set<number>();
  return kinds
    .filter(({ stepN }) => stepN * scale.pxPerN >= MIN_TICK_SPACING_PX)
    .flatMap(({ stepN, lengthPx }) =>
      multiples(stepN, scale.forceAt(0), scale.forceAt(scale.widthPx))
        .filter((atN) => {
          const tenth = Math.round((atN / longN) * 10);
          return !taken.has(tenth) && taken.add(tenth);
        })
        .map((atN) => ({ atN, xPx: scale.xOf(atN), lengthPx })),
    );
};

/** Figures under long ticks: each, every second, every fifth …, as many as stand clear of one another. */
export const rulerFigures = (
  range: ForceRange,
  scale: RulerScale,
  print: { readonly locale: string; readonly widthOf: (text: string) => number },
): RulerFigure[] => {
  const longN = longTickN(range, scale.pxPerN);
  const figuresEvery = (stepN: number) =>
    multiples(stepN, range.lowN, range.highN).map((atN) => ({ atN, xPx: scale.xOf(atN), text: axisFigure(atN, stepN, print.locale) }));
  for (let decade = 1; ; decade *= 10) {
    for (const times of [1, 2, 5]) {
      const stepN = longN * decade * times;
      const figures = figuresEvery(stepN);
      const widestPx = Math.max(0, ...figures.map(({ text }) => print.widthOf(text)));
      if (figures.length < 2 || stepN * scale.pxPerN >= widestPx + MIN_FIGURE_GAP_PX) return figures;
    }
  }
};
