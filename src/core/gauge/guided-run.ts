/**
 * The run that proves a gauge, step by step: each load three times with the gauge put on anew, in an order that no drift follows; once up and
 * down with the gauge left on; over a roller, one load eased on from either side.
 */

import { createRandom } from '../math/random.ts';
import type { Direction } from './loaded-reading.ts';
import type { RigKind } from './rig.ts';

export interface Weight {
  readonly id: string;
  readonly massKg: number;
  /** A wire is read like a weight, and hangs in no row of loads. */
  readonly hangs?: boolean | undefined;
}

export interface Step {
  readonly weightId: string;
  readonly how: 'inserted' | 'left-on' | 'eased';
  readonly series: string;
  readonly direction?: Direction | undefined;
  /** First step of a series: what changes before it. `moved`: the gauge is turned or set elsewhere on the span. */
  readonly begins?: 'same-place' | 'moved' | 'left-on' | 'eased' | undefined;
}

const SERIES = 3;
/** From this series on the gauge sits elsewhere: two in one place tell repeatability, the third reproducibility. */
const FIRST_MOVED = 3;

/** @param seed  any whole number; the same one gives the same order */
export function guidedSteps({ weights, rig, seed }: { weights: readonly Weight[]; rig: RigKind; seed: number }): readonly Step[] {
  const rising = [...weights].sort((a, b) => a.massKg - b.massKg);
  const random = createRandom(seed);
  const steps: Step[] = [];
  for (let series = 1; series <= SERIES; series++) {
    // Two series in one place are one set-up: they bear one name.
    const name = series < FIRST_MOVED ? 'A' : 'B';
    for (const [index, { id }] of shuffled(rising, random.uniform).entries()) {
      const begins = index > 0 ? undefined : series < FIRST_MOVED ? ('same-place' as const) : ('moved' as const);
      steps.push({ weightId: id, how: 'inserted', series: name, begins });
    }
  }
  const hung = rising.filter(({ hangs = true }) => hangs);
  for (const [index, { id }] of hung.entries()) {
    steps.push({ weightId: id, how: 'left-on', series: 'up and down', direction: 'up', begins: index === 0 ? 'left-on' : undefined });
  }
  for (const { id } of [...hung].reverse()) steps.push({ weightId: id, how: 'left-on', series: 'up and down', direction: 'down' });
  const middle = hung[Math.floor(hung.length / 2)];
  if (rig === 'roller' && middle) {
    steps.push({ weightId: middle.id, how: 'eased', series: 'eased', direction: 'up', begins: 'eased' });
    steps.push({ weightId: middle.id, how: 'eased', series: 'eased', direction: 'down' });
  }
  return steps;
}

function shuffled<T>(items: readonly T[], uniform: () => number): readonly T[] {
  const order = [...items];
  for (let k = order.length - 1; k > 0; k--) {
    const other = Math.floor(uniform() * (k + 1));
    [order[k], order[other]] = [order[other]!, order[k]!];
  }
  return order;
}

/** A reading that was noted for a step. */
export type Noted = Pick<Step, 'weightId' | 'how' | 'series' | 'direction'>;

const keyOf = ({ weightId, how, series, direction }: Noted): string => JSON.stringify([weightId, how, series, direction]);

/** The steps that no reading was noted for yet, in order: whatever was noted out of turn counts where it belongs. */
export function stepsLeft(steps: readonly Step[], noted: readonly Noted[]): readonly Step[] {
  const counts = new Map<string, number>();
  for (const one of noted) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
  return steps.filter((step) => {
    const count = counts.get(keyOf(step)) ?? 0;
    if (count === 0) return true;
    counts.set(keyOf(step), count - 1);
    return false;
  });
}

const LOADS = 6;
/** The loads reach this far beyond the target on either side, so that it lies well inside what is proved. */
const BELOW = 0.6;
const ABOVE = 1.35;
const ROUND_TO_KG = 0.05;

/** Six masses, even over the target and some way beyond it, none above what may be hung. */
export function proposedMassesKg(
  target: { readonly lowN: number; readonly highN: number },
  gravity: number,
  mostN = Infinity,
): readonly number[] {
  const low = (BELOW * target.lowN) / gravity;
  const high = Math.min(ABOVE * target.highN, mostN) / gravity;
  const round = (kg: number): number => Number((Math.max(1, Math.round(kg / ROUND_TO_KG)) * ROUND_TO_KG).toFixed(3));
  return [...new Set(Array.from({ length: LOADS }, (_, k) => round(low + ((high - low) * k) / (LOADS - 1))))];
}
