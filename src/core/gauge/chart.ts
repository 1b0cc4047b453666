/** The conversion chart: readings in even steps with the force that each stands for, inside the verified range only. */

import type { Calibration } from './calibration.ts';
import { convert } from './convert.ts';
import type { ConvertedForce } from './prediction.ts';

export interface ChartRow {
  readonly reading: number;
  readonly force: ConvertedForce;
}

const MOST_ROWS = 14;

/** Step of 1, 2 or 5 times a power of ten that cuts a width into at most so many parts. */
export function evenStep(width: number, mostParts: number): number {
  const least = width / mostParts;
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 5].find((factor) => factor * power >= least * (1 - 1e-9)) ?? 10);
}

/** @returns empty where nothing was verified */
export function chartRows(calibration: Calibration, mostRows = MOST_ROWS): readonly ChartRow[] {
  const { verified } = calibration;
  if (verified.kind === 'nowhere') return [];
  const { readingLow, readingHigh } = verified;
  const step = evenStep(readingHigh - readingLow, mostRows);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const first = Math.ceil(readingLow / step - 1e-9);
  const last = Math.floor(readingHigh / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => Number(((first + k) * step).toFixed(decimals))).flatMap(
    (reading) => {
      const converted = convert(calibration, reading);
      return converted.kind === 'converted' ? [{ reading, force: converted.force }] : [];
    },
  );
}
