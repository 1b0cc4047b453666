/** What can make sound and weights differ, each by its mark: how the difference then goes with force and span. */

import type { KnownForceTake } from './known-take.ts';

/**
 * `density`: told too high, relative. `span-length`: told too long, m. `ends`: held more than assumed, N^½ m. `weights`: heavier than told,
 * relative. `forgotten-weight`: something more hung there, N. Negative sizes are the other way round.
 */
export type CauseId = 'density' | 'span-length' | 'ends' | 'weights' | 'forgotten-weight';

export interface Cause {
  readonly id: CauseId;
  /** Change of ln(heard / known) per unit of the cause: exact for the string, to first order for the ends (each shortens the span by φ sqrt(EI/T)). */
  readonly mark: (take: KnownForceTake) => number;
  /** Size that a slip of this kind usually has, standard deviation (our judgement): the wrong belt or a wet one, a wrong tangent point, a hook. */
  readonly usualSize: number;
}

export const CAUSES: readonly Cause[] = [
  { id: 'density', mark: () => 1, usualSize: 0.1 },
  { id: 'span-length', mark: ({ spanLengthM }) => 2 / spanLengthM.value, usualSize: 0.003 },
  { id: 'ends', mark: ({ spanLengthM, knownForceN }) => 2 / (spanLengthM.value * Math.sqrt(knownForceN.value)), usualSize: 0.01 },
  { id: 'weights', mark: () => 1, usualSize: 0.02 },
  { id: 'forgotten-weight', mark: ({ knownForceN }) => 1 / knownForceN.value, usualSize: 0.3 },
];
