/**
 * Figures of a gauge in the manner of force standards: the quantities as ISO 376 defines them, without its classes (a hand gauge lies
 * outside all of them), and ASTM E74's lower limit. Both standards from memory.
 */

import { median } from '../math/quantile.ts';
import type { Fit } from './fit.ts';
import { type LoadedReading, positionsBy } from './loaded-reading.ts';

/** Shares of the force at the worst load; undefined where the runs cannot tell. */
export interface Figures {
  /** Largest spread of repeats without any change: one series, one direction. */
  readonly repeatabilityRelative?: number | undefined;
  /** Largest spread between series, each by its first reading of a load. */
  readonly reproducibilityRelative?: number | undefined;
  /** Coming down against going up. */
  readonly reversibilityRelative?: number | undefined;
  /** Mean reading of a load against the curve. */
  readonly interpolationErrorRelative?: number | undefined;
  /** Reading under no force, where it was taken. */
  readonly zeroReading?: number | undefined;
  /** Force below which 2.4 residual standard deviations exceed the tolerance. */
  readonly lowestForceN?: number | undefined;
}

/** ASTM E74's factor of the lower limit, from memory. */
const LOWER_LIMIT_FACTOR = 2.4;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
/** Where the curve stands still no force follows from a difference of readings. */
const worst = (values: readonly number[]): number | undefined => {
  const most = Math.max(...values);
  return Number.isFinite(most) ? most : undefined;
};

interface Telling {
  readonly fit: Fit;
  /** Of the fit. */
  readonly rows: readonly LoadedReading[];
  /** Also those held at a stop. */
  readonly all: readonly LoadedReading[];
  readonly toleranceRelative: number;
}

export function figuresOf({ fit, rows, all, toleranceRelative }: Telling): Figures {
  const { curve } = fit;
  const loaded = rows.filter(({ forceN }) => forceN > 0);
  /** A difference of readings at a load, as a share of its force. */
  const share = (difference: number, forceN: number): number => Math.abs(difference / curve.slope(forceN)) / forceN;
  const cells = (keyOf: (row: LoadedReading) => string) => [...positionsBy(loaded, keyOf).values()].map((at) => at.map((i) => loaded[i]!));

  const sameSeries = cells(({ forceN, direction, series }) => `${forceN} ${direction} ${series}`).filter((cell) => cell.length > 1);
  const sameDirection = cells(({ forceN, direction }) => `${forceN} ${direction}`);
  const seriesCount = new Set(loaded.map(({ series }) => series)).size;
  const firsts = sameDirection
    .filter((cell) => cell[0]!.direction !== 'down')
    .map((cell) => [...positionsBy(cell, ({ series }) => series).values()].map((at) => cell[at[0]!]!))
    .filter((cell) => cell.length > 1);
  const repeats = sameSeries.length > 0 ? sameSeries : seriesCount > 1 ? withoutSeriesOffset(sameDirection, seriesCount) : [];
  const zeros = all.filter(({ forceN }) => forceN === 0).map(({ reading }) => reading);
  return {
    repeatabilityRelative: worst(repeats.map((cell) => share(spread(cell.map(({ reading }) => reading)), cell[0]!.forceN))),
    reproducibilityRelative:
      seriesCount > 1 ? worst(firsts.map((cell) => share(spread(cell.map(({ reading }) => reading)), cell[0]!.forceN))) : undefined,
    reversibilityRelative: reversibility(loaded, share),
    interpolationErrorRelative: worst(
      cells(({ forceN }) => `${forceN}`).map((cell) =>
        share(mean(cell.map(({ reading }) => reading)) - curve.reading(cell[0]!.forceN), cell[0]!.forceN),
      ),
    ),
    zeroReading: zeros.length > 0 ? mean(zeros) : undefined,
    lowestForceN: lowestForce(fit, loaded, toleranceRelative),
  };
}

/** Where each series read each load once: what a series' own offset does not explain is left as repeatability. */
function withoutSeriesOffset(cells: readonly (readonly LoadedReading[])[], seriesCount: number): readonly (readonly LoadedReading[])[] {
  const complete = cells.filter((cell) => cell.length === seriesCount && new Set(cell.map(({ series }) => series)).size === seriesCount);
  if (complete.length < 3) return [];
  const off = (row: LoadedReading, cell: readonly LoadedReading[]): number => row.reading - mean(cell.map(({ reading }) => reading));
  const offsets = new Map<string | undefined, number>();
  for (const { series } of complete[0]!) {
    offsets.set(series, median(complete.map((cell) => off(cell.find((row) => row.series === series)!, cell))));
  }
  return complete.map((cell) => cell.map((row) => ({ ...row, reading: row.reading - offsets.get(row.series)! })));
}

/** Mean over the series of |coming down − going up|, at the worst load. */
function reversibility(loaded: readonly LoadedReading[], share: (difference: number, forceN: number) => number): number | undefined {
  const shares: number[] = [];
  for (const at of positionsBy(loaded, ({ forceN }) => forceN).values()) {
    const here = at.map((i) => loaded[i]!);
    const differences: number[] = [];
    for (const series of positionsBy(here, (row) => row.series).values()) {
      const inSeries = series.map((i) => here[i]!);
      const [up, down] = (['up', 'down'] as const).map((way) => inSeries.filter(({ direction }) => direction === way));
      if (up!.length > 0 && down!.length > 0) {
        differences.push(Math.abs(mean(down!.map(({ reading }) => reading)) - mean(up!.map(({ reading }) => reading))));
      }
    }
    if (differences.length > 0) shares.push(share(mean(differences), here[0]!.forceN));
  }
  return worst(shares);
}

/** Where 2.4 s over the slope is the tolerance's share of the force: below it, larger. */
function lowestForce({ curve, residualStandardDeviation: s }: Fit, rows: readonly LoadedReading[], tolerance: number): number | undefined {
  if (!(s >= 0) || rows.length === 0) return undefined;
  const largest = Math.max(...rows.map(({ forceN }) => forceN));
  const limitAt = (forceN: number): number => (LOWER_LIMIT_FACTOR * s) / Math.abs(curve.slope(forceN)) / tolerance;
  let forceN = limitAt(0);
  for (let step = 0; step < 200; step++) {
    const next = limitAt(Math.min(forceN, largest));
    if (!Number.isFinite(next)) return undefined;
    if (Math.abs(next - forceN) <= 1e-12 * next) break;
    forceN = (forceN + next) / 2;
  }
  return Number.isFinite(forceN) ? forceN : undefined;
}
