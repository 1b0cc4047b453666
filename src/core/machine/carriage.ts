/** Where the carriage stands when a span of a layout has a wanted length. */

import { beltPath } from './belt-path.ts';
import type { BeltSection } from './geometry.ts';
import type { Layout, LayoutSizes } from './layouts.ts';

export interface CarriagePlace {
  /** The carriage's coordinate that makes the length. */
  readonly axis: 'x' | 'y';
  readonly atM: number;
  /** The layout's sizes with the carriage there. */
  readonly sizes: LayoutSizes;
}

const AXES = [
  { axis: 'x', name: 'carriageXM', within: ['widthM'] },
  { axis: 'y', name: 'carriageYM', within: ['depthM', 'heightM'] },
] as const;
/** No small machine is larger, where the layout has no such size. */
const LARGEST_M = 1;
const STEPS = 80;
/** A carriage is parked no closer. */
const CLOSE_M = 1e-5;
/** Less change than this over the whole way is no way of making a length. */
const MOVES_M = 0.005;

/**
 * @param wanted.from  index of the wheel that the span begins at
 * @returns `undefined` where no place of the carriage gives that length, or the belt is not in the layout
 */
export function carriageFor(
  layout: Layout,
  sizes: LayoutSizes,
  wanted: { readonly belt: string; readonly from: number; readonly lengthM: number; readonly section: BeltSection },
): CarriagePlace | undefined {
  const lengthAt = (at: LayoutSizes): number | undefined => {
    const belt = layout.lay(at).belts.find(({ name }) => name === wanted.belt);
    const path = belt && beltPath(belt, wanted.section);
    return path?.kind === 'path' ? path.spans.find(({ from }) => from === wanted.from)?.lengthM : undefined;
  };
  for (const { axis, name, within } of AXES) {
    if (!layout.sizes.some((size) => size.name === name)) continue;
    const largest = within.flatMap((size) => sizes[size] ?? layout.sizes.find((one) => one.name === size)?.usual ?? []);
    const reachM = Math.max(...largest, 0) || LARGEST_M;
    const off = (atM: number): number | undefined => {
      const lengthM = lengthAt({ ...sizes, [name]: atM });
      return lengthM === undefined ? undefined : lengthM - wanted.lengthM;
    };
    const atM = crossing(off, reachM);
    if (atM !== undefined) return { axis, atM, sizes: { ...sizes, [name]: atM } };
  }
  return undefined;
}

/** First place from 0 to `reachM` at which a length passes the wanted one; undefined where it hardly changes, or never does. */
function crossing(off: (atM: number) => number | undefined, reachM: number): number | undefined {
  const places = Array.from({ length: STEPS - 1 }, (_, i) => ((i + 1) * reachM) / STEPS);
  const values = places.map(off);
  const known = values.filter((value) => value !== undefined);
  if (known.length < 2 || Math.max(...known) - Math.min(...known) < MOVES_M) return undefined;
  for (let i = 1; i < places.length; i++) {
    const [one, other] = [values[i - 1], values[i]];
    if (one === undefined || other === undefined || one * other > 0) continue;
    let [low, high] = [places[i - 1]!, places[i]!];
    while (high - low > CLOSE_M) {
      const middle = (low + high) / 2;
      if ((off(middle) ?? one) * one > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
  return undefined;
}
