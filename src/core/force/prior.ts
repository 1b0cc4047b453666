/** What is known of a belt's stiffness and of the span's ends, cut into cells: each a value, its weight, and the width inside the cell. */

import type { Measured } from '../math/measured.ts';
import { relativeUncertainty } from '../math/measured.ts';
import type { BendingStiffness, EndFixity, SpanSetup } from '../setup.ts';
import type { EndFixities } from '../vibration/beam-phase.ts';

/** A cell of ln EI; inside it, even over `widthLn`. EI in N m²; −Infinity where the belt has none. */
export interface StiffnessCell {
  readonly lnStiffness: number;
  readonly widthLn: number;
  readonly weight: number;
}

/** A cell of the two ends' fixities; inside it, even over each width. `alike`: both ends move through it together. */
export interface EndsCell {
  readonly fixity: EndFixities;
  readonly width: readonly [number, number];
  readonly alike: boolean;
  readonly weight: number;
}

interface Cell {
  readonly at: number;
  readonly width: number;
  readonly weight: number;
}

/** Cells over a stiffness range: with 16 the bounds of the force agree with direct integration to 0.03 % at 60 mm, 5 N. */
const RANGE_CELLS = 16;
/** A range typed or guessed has soft edges: this weight lies in tails of this factor beyond them, since hard ones make a confident wrong force. */
const TAIL = { weight: 0.05, factor: 3 } as const;
/** Cells over a stretch of fixity between two limits. */
const FIXITY_CELLS = 4;
/** A known value is taken at steps of about a standard deviation, this far out on each side. */
const FARTHEST_SD = 3;
/** Two ends of which nothing is known are both of one kind in half of all machines (our judgement). */
const ALIKE_WEIGHT = 0.5;

/** Cells of EI: log-even over a range with soft edges, or log-normal about a known value. Weights sum to 1. */
export function stiffnessCells(stiffness: BendingStiffness): StiffnessCell[] {
  if (stiffness.kind === 'known') {
    const { value } = stiffness.value;
    const sd = value > 0 ? relativeUncertainty(stiffness.value) : 0;
    return normalCells({ value: Math.log(value), standardUncertainty: sd }).map(toStiffness);
  }
  const low = Math.log(stiffness.low);
  const high = Math.log(stiffness.high);
  const reach = Math.log(TAIL.factor);
  const share = (from: number, to: number, low: number, high: number): number =>
    high > low ? Math.max(0, Math.min(to, high) - Math.max(from, low)) / (high - low) : Number(from <= low && low < to);
  return evenCells(low - reach, high + reach, RANGE_CELLS).map(({ at, width }) => {
    const from = at - width / 2;
    const to = at + width / 2;
    const inTails = share(from, to, low - reach, low) + share(from, to, high, high + reach);
    return toStiffness({ at, width, weight: (1 - TAIL.weight) * share(from, to, low, high) + (TAIL.weight / 2) * inTails });
  });
}

/** Cells of both ends together. Weights sum to 1. */
export function endsCells(ends: SpanSetup['ends']): EndsCell[] {
  const [first, second] = ends;
  const bothUnknown = first.kind === 'unknown' && second.kind === 'unknown';
  const cells1 = fixityCells(first);
  const cells2 = fixityCells(second);
  const cells: EndsCell[] = [];
  cells1.forEach((one, i) => {
    if (bothUnknown) {
      cells.push({ fixity: [one.at, one.at], width: [one.width, one.width], alike: true, weight: ALIKE_WEIGHT * one.weight });
    }
    cells2.forEach((two, j) => {
      if (bothUnknown && j < i) return; // which end is which makes no difference: the other order is counted in
      const orders = bothUnknown && j > i ? 2 : 1;
      const independent = bothUnknown ? 1 - ALIKE_WEIGHT : 1;
      const weight = independent * orders * one.weight * two.weight;
      cells.push({ fixity: [one.at, two.at], width: [one.width, two.width], alike: false, weight });
    });
  });
  return cells;
}

/** Cells of one end. */
export function fixityCells(end: EndFixity): Cell[] {
  switch (end.kind) {
    case 'unknown':
      return [
        { at: 0, width: 0, weight: 1 / 3 },
        ...evenCells(0, 1, FIXITY_CELLS).map((cell) => ({ ...cell, weight: cell.weight / 3 })),
        { at: 1, width: 0, weight: 1 / 3 },
      ];
    case 'between':
      return end.high > end.low ? evenCells(end.low, end.high, FIXITY_CELLS) : [{ at: end.low, width: 0, weight: 1 }];
    case 'known':
      return normalCells(end.value).map((cell) => ({ ...cell, at: Math.min(1, Math.max(0, cell.at)) }));
  }
}

/** `count` equal cells from `low` to `high`. */
function evenCells(low: number, high: number, count: number): Cell[] {
  const width = (high - low) / count;
  return Array.from({ length: count }, (_, i) => ({ at: low + (i + 0.5) * width, width, weight: 1 / count }));
}

/**
 * Cells near to one standard deviation wide, weighed by the normal distribution's density at their middles. Even inside each cell, they
 * spread as the distribution does: sd² = step² + step²/12.
 */
function normalCells(known: Measured): Cell[] {
  const sd = known.standardUncertainty;
  if (!(sd > 0)) return [{ at: known.value, width: 0, weight: 1 }];
  const step = sd / Math.sqrt(1 + 1 / 12);
  const cells = Array.from({ length: 2 * FARTHEST_SD + 1 }, (_, i) => {
    const z = i - FARTHEST_SD;
    return { at: known.value + z * step, width: step, weight: Math.exp((-z * z) / 2) };
  });
  const total = cells.reduce((sum, cell) => sum + cell.weight, 0);
  return cells.map((cell) => ({ ...cell, weight: cell.weight / total }));
}

const toStiffness = (cell: Cell): StiffnessCell => ({ lnStiffness: cell.at, widthLn: cell.width, weight: cell.weight });
