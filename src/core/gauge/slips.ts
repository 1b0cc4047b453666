/** Readings that break the pattern: a slip of the gauge, a misread digit. They are named, never taken out. */

import { median } from '../math/quantile.ts';
import { refinedLeastSquares } from '../math/refined-least-squares.ts';
import { coverageFactor } from '../math/student-t.ts';
import { type LoadedReading, loadsOf, positionsBy, signOf } from './loaded-reading.ts';
import { EVEN_NOISE, type NoiseShape, noiseShape } from './noise-shape.ts';
import { slopeMap, splineWeights } from './spline-curve.ts';

export interface Slip {
  readonly row: number;
  readonly reading: number;
  /** What the other rows let one expect at this force. */
  readonly expected: number;
  /** Distance in standard deviations of one reading. */
  readonly deviations: number;
}

export interface Scatter {
  readonly slips: readonly Slip[];
  /** Standard deviation of one reading at the largest load by the rows that are no slips; NaN where too few are left. */
  readonly deviation: number;
  readonly shape: NoiseShape;
}

/** Chance that any row of a run without slips is named: 5 % shared among all of them. */
const FAMILY_RISK = 0.05;
/** Below this nothing is named, however many rows agree. */
const LEAST_DEVIATIONS = 3.5;
/** From here on each load is given a level of its own, so that no shape of the curve is presumed. */
const ROWS_FOR_OWN_LEVEL = 2.5;
const ROUNDED_STEPS = 0.75;
const REWEIGHTINGS = 60;
const ROUNDS = 12;

/**
 * @param run.rows  without rows held at a stop
 * @param run.step  of the readings; no scatter is taken to be finer than a step's own
 */
export function scatterOf({ rows, step }: { readonly rows: readonly LoadedReading[]; readonly step: number }): Scatter {
  const tries = flexibleDesigns(rows).map((design) => scatterBy(design, rows, step));
  // A row that is named costs as much as a term of the curve (mean-shift model), so that curves of different freedom compare.
  const costs = tries.map(({ terms, slips, sumOfSquares }) => {
    const k = terms + slips.length + 1;
    const n = rows.length;
    return n > k + 1 ? n * Math.log(sumOfSquares / n) + 2 * k + (2 * k * (k + 1)) / (n - k - 1) : Infinity;
  });
  return tries[costs.indexOf(Math.min(...costs))] ?? tries[0]!;
}

/** What one design of the curve makes of the rows. */
function scatterBy(
  design: readonly (readonly number[])[],
  rows: readonly LoadedReading[],
  step: number,
): Scatter & { readonly terms: number; readonly sumOfSquares: number } {
  const p = design[0]?.length ?? 0;
  const y = rows.map(({ reading }) => reading);
  const spread = Math.max(...y) - Math.min(...y);
  const nothing = { slips: [], deviation: Number.NaN, shape: EVEN_NOISE, terms: p, sumOfSquares: Number.NaN };
  if (rows.length < p + 2 || !(spread > 0)) return nothing;
  const finest = Math.max(step / Math.sqrt(12), 1e-9 * spread);

  const start = leastAbsolute(design, y);
  if (!start) return nothing;
  const magnitudes = start.map(Math.abs).sort((a, b) => a - b);
  const rough = Math.max(finest, 1.4826 * median(magnitudes.slice(Math.min(p, magnitudes.length - 2))));
  let kept = rows.map((_, i) => Math.abs(start[i]!) <= LEAST_DEVIATIONS * rough);
  let shape = EVEN_NOISE;
  let found: readonly Slip[] = [];
  let deviation = rough;
  let sumOfSquares = Number.NaN;
  for (let round = 0; round < ROUNDS; round++) {
    const judged = judge({ rows, design, y, kept, shape, finest, step });
    if (!judged) break;
    ({ slips: found, deviation, sumOfSquares } = judged);
    const next = judged.kept;
    const settled = next.every((value, i) => value === kept[i]);
    kept = next;
    shape = judged.shape;
    if (settled && round > 1) break;
  }
  return { slips: found, deviation, shape, terms: p, sumOfSquares };
}

interface Judging {
  readonly rows: readonly LoadedReading[];
  readonly design: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly kept: readonly boolean[];
  readonly shape: NoiseShape;
  readonly finest: number;
  readonly step: number;
}

/** Fits the kept rows, and judges each row by what the others say of it. */
function judge({ rows, design, y, kept, shape, finest, step }: Judging) {
  const p = design[0]!.length;
  const inside = rows.flatMap((_, i) => (kept[i] ? [i] : []));
  const sigma = rows.map(({ forceN }) => shape(forceN));
  if (inside.length < p + 2) return undefined;
  const solved = refinedLeastSquares({
    design: Float64Array.from(inside.flatMap((i) => design[i]!.map((value) => value / sigma[i]!))),
    response: inside.map((i) => y[i]! / sigma[i]!),
  });
  if (!solved) return undefined;
  const dof = inside.length - p;
  const variance = Math.max(solved.residualSumOfSquares / dof, finest ** 2);
  const limit = Math.max(
    LEAST_DEVIATIONS,
    coverageFactor({ degreesOfFreedom: Math.max(1, dof - 1), coverage: 1 - FAMILY_RISK / rows.length }),
  );
  const place = new Map(inside.map((i, k) => [i, k]));
  const slips: Slip[] = [];
  const next = rows.map(({ row, reading }, i) => {
    const line = design[i]!;
    const fitted = line.reduce((sum, value, j) => sum + value * solved.coefficients[j]!, 0);
    const rest = (reading - fitted) / sigma[i]!;
    const k = place.get(i);
    const reach = line.map((value) => value / sigma[i]!);
    const h = k === undefined ? formOf(solved.inverse, reach) : solved.leverages[k]!;
    // A row that alone holds its level cannot be judged.
    if (k !== undefined && h > 0.999) return true;
    const others =
      k === undefined ? variance : Math.max(finest ** 2, (solved.residualSumOfSquares - rest ** 2 / (1 - h)) / Math.max(1, dof - 1));
    const t = k === undefined ? rest / Math.sqrt(others * (1 + h)) : rest / Math.sqrt(others * (1 - h));
    const expected = k === undefined ? fitted : fitted - (sigma[i]! * rest * h) / (1 - h);
    const away = Math.abs(reading - expected);
    // Rounding may have moved the reading by half a step and what is expected of it by a quarter more.
    if (Math.abs(t) * (1 - Math.min(1, (ROUNDED_STEPS * step) / away)) <= limit) return true;
    slips.push({ row, reading, expected, deviations: away / (sigma[i]! * Math.sqrt(others)) });
    return false;
  });
  const growing = noiseShape(
    inside.map((i, k) => ({ forceN: rows[i]!.forceN, residual: solved.residuals[k]! * sigma[i]!, left: 1 - solved.leverages[k]! })),
  );
  const sumOfSquares = Math.max(variance, finest ** 2) * dof;
  return { slips, kept: next, shape: growing, deviation: Math.sqrt(variance), sumOfSquares };
}

function formOf(inverse: Float64Array, line: readonly number[]): number {
  const p = line.length;
  let sum = 0;
  for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) sum += line[i]! * inverse[i * p + j]! * line[j]!;
  return sum;
}

/**
 * A level for each load where there are rows enough; else a line, a bend and splines, each a design of its own. Each with what going up and
 * coming down differ by.
 */
function flexibleDesigns(rows: readonly LoadedReading[]): readonly (readonly (readonly number[])[])[] {
  const loads = loadsOf(rows);
  if (loads.length < 2) return [rows.map(() => [1])];
  const largest = loads[loads.length - 1]! || 1;
  const withTurns = (basis: (forceN: number) => readonly number[], turns: number) =>
    rows.map((row) => [
      ...basis(row.forceN),
      ...Array.from({ length: turns }, (_, power) => signOf(row) * (row.forceN / largest) ** power),
    ]);
  if (rows.length / loads.length >= ROWS_FOR_OWN_LEVEL) {
    return [withTurns((forceN) => loads.map((load) => (load === forceN ? 1 : 0)), directionTerms(rows))];
  }
  const turns = Math.min(directionTerms(rows), rows.length >= ROWS_FOR_TURNS ? 3 : 1);
  const most = Math.min(loads.length, Math.max(3, Math.floor(rows.length / 3)));
  const knotSets = Array.from({ length: Math.max(0, most - 3) }, (_, k) => spread(loads, k + 4));
  return [
    withTurns((F) => [1, F / largest], turns),
    withTurns((F) => [1, F / largest, (F / largest) ** 2], turns),
    ...knotSets.map((knots) => {
      const map = slopeMap(knots);
      return withTurns((F) => splineWeights(knots, map, F), turns);
    }),
  ];
}

/** So many rows carry a gap between the directions that bends. */
const ROWS_FOR_TURNS = 24;

const spread = (loads: readonly number[], count: number): readonly number[] => [
  ...new Set(Array.from({ length: count }, (_, k) => loads[Math.round((k * (loads.length - 1)) / (count - 1))]!)),
];

/** Powers of the force that the difference of the directions may have: none, one, or three. */
function directionTerms(rows: readonly LoadedReading[]): number {
  const marked = rows.filter((row) => signOf(row) !== 0);
  const both = positionsBy(marked, ({ forceN }) => forceN);
  const twoSided = [...both.values()].filter((at) => new Set(at.map((i) => signOf(marked[i]!))).size === 2).length;
  return twoSided >= 4 ? 3 : twoSided >= 1 ? 1 : 0;
}

/** Residuals of the fit with the least sum of absolute residuals, by reweighted squares. */
function leastAbsolute(design: readonly (readonly number[])[], y: readonly number[]): readonly number[] | undefined {
  const p = design[0]!.length;
  let weights = y.map(() => 1);
  let residuals: readonly number[] | undefined;
  const scale = Math.max(...y.map(Math.abs)) || 1;
  for (let round = 0; round < REWEIGHTINGS; round++) {
    const solved = refinedLeastSquares({
      design: Float64Array.from(design.flatMap((line, i) => line.map((value) => value * weights[i]!))),
      response: y.map((value, i) => value * weights[i]!),
    });
    if (!solved) return residuals;
    const next = y.map((value, i) => value - design[i]!.reduce((sum, x, j) => sum + x * solved.coefficients[j]!, 0));
    const change = residuals ? Math.max(...next.map((rest, i) => Math.abs(rest - residuals![i]!))) : Infinity;
    residuals = next;
    if (change < 1e-7 * scale || p === y.length) break;
    weights = residuals.map((rest) => 1 / Math.sqrt(Math.max(Math.abs(rest), 1e-6 * scale)));
  }
  return residuals;
}
