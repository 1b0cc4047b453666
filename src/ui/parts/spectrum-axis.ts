/** How far the spectrum is drawn, in hertz and in decibels, and where its axes carry figures. */

import { axisFigure } from './axis-figure.ts';
import { roundStep } from './ruler-range.ts';

/** Where a partial may be, or where it was found (both ends alike). */
export interface PartialPlace {
  readonly lowHz: number;
  readonly highHz: number;
}

const DEFAULT_HIGHEST_HZ = 1000;
const SPARE_RELATIVE = 0.05;
/** Partials beyond these are on the table; drawn, they would squeeze the first ones. */
const partialsShown = (widthPx: number): number => (widthPx < 480 ? 3 : widthPx < 900 ? 4 : 6);

/**
 * End of the frequency axis: the first few partials, rounded.
 *
 * @param places  in any order; those expected, else those found
 * @param before  end until now; kept as long as it serves, so that the plot does not jump from pluck to pluck
 */
export const highestHzOf = (places: readonly PartialPlace[], widthPx: number, before?: number | undefined): number => {
  const inOrder = [...places].sort((a, b) => a.lowHz - b.lowHz).slice(0, partialsShown(widthPx));
  const neededHz = Math.max(...inOrder.map(({ highHz }) => highHz)) * (1 + SPARE_RELATIVE);
  if (!(neededHz > 0)) return before ?? DEFAULT_HIGHEST_HZ;
  if (before !== undefined && before >= neededHz && before <= 1.5 * neededHz) return before;
  const stepHz = roundStep(neededHz / 5);
  return Math.ceil(neededHz / stepHz - 1e-9) * stepHz;
};

export interface LevelRange {
  readonly lowDbfs: number;
  readonly highDbfs: number;
}

const LEVEL_STEP_DB = 20;
const LEVEL_SPAN_DB = 80;
/** Room for the floor's own name. */
const FLOOR_SHOWN_DB = 12;
const LEAST_LEVEL_SPAN_DB = 60;
const MOST_LEVEL_SPAN_DB = 120;
const HEADROOM_DB = 6;
const DEFAULT_LEVELS: LevelRange = { lowDbfs: -100, highDbfs: 0 };

/**
 * Whole steps of 20 dB from above the strongest level down over 80 dB, or as far as the room's floor needs to be seen; the default range
 * where there is no sound.
 */
export const levelRangeOf = (levelsDbfs: ArrayLike<number>, binCount: number, backgroundDbfs: ArrayLike<number> = []): LevelRange => {
  let strongest = Number.NEGATIVE_INFINITY;
  for (let bin = 0; bin < Math.min(binCount, levelsDbfs.length); bin++) strongest = Math.max(strongest, levelsDbfs[bin] ?? strongest);
  if (!Number.isFinite(strongest)) return DEFAULT_LEVELS;
  const withHeadroom = strongest > 0 ? strongest : Math.min(0, strongest + HEADROOM_DB); // nothing but a clipped sound lies above 0
  const highDbfs = Math.ceil(withHeadroom / LEVEL_STEP_DB) * LEVEL_STEP_DB;
  const floorDbfs = medianOf(
    Array.from({ length: Math.min(binCount, backgroundDbfs.length) }, (_, bin) => backgroundDbfs[bin] ?? Number.NaN),
  );
  if (floorDbfs === undefined) return { lowDbfs: highDbfs - LEVEL_SPAN_DB, highDbfs };
  const belowFloor = Math.floor((floorDbfs - FLOOR_SHOWN_DB) / LEVEL_STEP_DB) * LEVEL_STEP_DB;
  return { lowDbfs: Math.min(highDbfs - LEAST_LEVEL_SPAN_DB, Math.max(highDbfs - MOST_LEVEL_SPAN_DB, belowFloor)), highDbfs };
};

const medianOf = (values: readonly number[]): number | undefined => {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
};

export interface AxisFigureAt {
  readonly at: number;
  readonly text: string;
}

/** Figures of an axis from 0 or a whole step up; the last (or, counting down, the first) one carries the unit. */
const figures = (lowest: number, highest: number, step: number, locale: string): AxisFigureAt[] => {
  const first = Math.ceil(lowest / step - 1e-9);
  const count = Math.floor(highest / step + 1e-9) - first + 1;
  return Array.from({ length: count }, (_, index) => (first + index) * step).map((at) => ({ at, text: axisFigure(at, step, locale) }));
};

const MIN_FIGURE_SPACING_PX = 56;

/** Figures in hertz, about six, never closer than they can be read; the unit stands at the last. */
export const frequencyFigures = (highestHz: number, widthPx: number, locale: string, unit: string): AxisFigureAt[] => {
  const most = Math.max(1, Math.min(6, Math.floor(widthPx / MIN_FIGURE_SPACING_PX)));
  const exact = highestHz / most;
  const below = roundStep(exact);
  const stepHz = [below, 2 * below, 2.5 * below, 5 * below, 10 * below].find((step) => step >= exact - 1e-9 && roundStep(step) === step);
  const all = figures(0, highestHz, stepHz ?? exact, locale);
  return all.map((figure, index) => (index === all.length - 1 ? { ...figure, text: `${figure.text}\u00a0${unit}` } : figure));
};

/** Figures in decibels, every 20 dB but for the lowest edge; the unit stands at the highest. */
export const levelFigures = ({ lowDbfs, highDbfs }: LevelRange, locale: string, unit: string): AxisFigureAt[] => {
  const all = figures(lowDbfs + 1, highDbfs, LEVEL_STEP_DB, locale);
  return all.map((figure, index) => (index === all.length - 1 ? { ...figure, text: `${figure.text}\u00a0${unit}` } : figure));
};
