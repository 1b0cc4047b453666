/** The conversion chart: readings in even steps with the force that each stands for, inside the verified range only. */

import type { Calibration } from './calibration.ts';
import { convert } from './convert.ts';
import type { ConvertedForce } from './prediction.ts';

export interface ChartRow {
  readonly reading: number;
  readonly force: ConvertedForce;
}

const MOST_ROWS = 14;

/** Step of 1, 2, 2.5 or 5 times a power of ten that cuts a width into at most so many parts. */
export function evenStep(width: number, mostParts: number): number {
  const least = width / mostParts;
  const power = 10 ** Math.floor(Math.log10(least));
  return Number((power * ([1, 2, 2.5, 5].find((factor) => factor * power >= least * (1 - 1e-9)) ?? 10)).toPrecision(3));
}

/** Decimals that multiples of an even step need: 0.25 needs two. */
export function decimalsOfStep(step: number): number {
  const decimals = [0, 1, 2, 3, 4, 5, 6, 7, 8].find((count) => Math.abs(step * 10 ** count - Math.round(step * 10 ** count)) < 1e-6);
  return decimals ?? 9;
}

/** @returns empty where nothing was verified */
export function chartRows(calibration: Calibration, mostRows = MOST_ROWS): readonly ChartRow[] {
  const { verified } = calibration;
  if (verified.kind === 'nowhere') return [];
  const { readingLow, readingHigh } = verified;
  const step = evenStep(readingHigh - readingLow, mostRows);
  const decimals = decimalsOfStep(step);
  const first = Math.ceil(readingLow / step - 1e-9);
  const last = Math.floor(readingHigh / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => Number(((first + k) * step).toFixed(decimals))).flatMap(
    (reading) => {
      const converted = convert(calibration, reading);
      return converted.kind === 'converted' ? [{ reading, force: converted.force }] : [];
    },
  );
}
