/** All kinds of cases with their shares of a run; each case follows from the seed, its kind and its number alone. */

import { type Draw, drawOf } from './hostile.ts';
import { batchCase, calibrationCase, gaugeTableCase } from './table-cases.ts';
import { documentCase, linkCase, quantityCase } from './text-cases.ts';
import { measureCase, wavCase } from './wav-cases.ts';

interface Kind {
  readonly run: (draw: Draw) => void;
  /** Of all cases; the cheap readers get most. */
  readonly share: number;
  /** What costs tens of milliseconds a case is held to a number. */
  readonly most?: number | undefined;
}

const KINDS = {
  wav: { run: wavCase, share: 0.26 },
  quantity: { run: quantityCase, share: 0.26 },
  link: { run: linkCase, share: 0.16 },
  document: { run: documentCase, share: 0.1 },
  batch: { run: batchCase, share: 0.1 },
  'gauge-table': { run: gaugeTableCase, share: 0.1 },
  calibration: { run: calibrationCase, share: 0.01, most: 2000 },
  measure: { run: measureCase, share: 0.01, most: 400 },
} as const satisfies Readonly<Record<string, Kind>>;

export type KindName = keyof typeof KINDS;
export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];

/** How many cases of each kind; together exactly `cases`. What a bounded kind leaves goes to the WAV files. */
export function countsOf(cases: number): Readonly<Record<KindName, number>> {
  const counts = Object.fromEntries(
    KIND_NAMES.map((name) => {
      const { share, most = Number.POSITIVE_INFINITY }: Kind = KINDS[name];
      return [name, Math.min(Math.floor(share * cases), most)];
    }),
  ) as Record<KindName, number>;
  const counted = KIND_NAMES.reduce((sum, name) => sum + counts[name], 0);
  counts.wav += cases - counted;
  return counts;
}

/** A seed of its own for each kind, so that a kind may be run alone and meets the same cases. */
const seedOf = (seed: number, name: KindName): number => seed * 64 + KIND_NAMES.indexOf(name);

/** @returns what is wrong, with the place in the program; undefined where all holds */
export function faultOf(name: KindName, seed: number, number: number): string | undefined {
  try {
    KINDS[name].run(drawOf(seedOf(seed, name), number));
    return undefined;
  } catch (error) {
    if (!(error instanceof Error)) return String(error);
    const places = (error.stack ?? '').split('\n').filter((line) => line.includes(' at '));
    return [`${error.name}: ${error.message.slice(0, 300)}`, ...places.slice(0, 6).map((line) => line.trim())].join('\n    ');
  }
}
