/** What can make sound and weights differ, each by its mark: how the difference then goes with force and span. */

import { relativeUncertainty } from '../math/measured.ts';
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
  /** Half a 95 % interval of what was told, in the unit of the cause: a smaller size was announced. */
  readonly toldU95: (take: KnownForceTake) => number;
}

const Z95 = 1.959964;
/** Both ends anywhere from hinged to clamped on a belt of 1.2e-4 N m²: what the sound allows for by itself. */
const ENDS_U95 = 0.011;

export const CAUSES: readonly Cause[] = [
  {
    id: 'density',
    mark: () => 1,
    usualSize: 0.1,
    toldU95: ({ linearDensityKgPerM }) => Z95 * relativeUncertainty(linearDensityKgPerM),
  },
  {
    id: 'span-length',
    mark: ({ spanLengthM }) => 2 / spanLengthM.value,
    usualSize: 0.003,
    toldU95: ({ spanLengthM }) => Z95 * spanLengthM.standardUncertainty,
  },
  {
    id: 'ends',
    mark: ({ spanLengthM, knownForceN }) => 2 / (spanLengthM.value * Math.sqrt(knownForceN.value)),
    usualSize: 0.01,
    toldU95: () => ENDS_U95,
  },
  { id: 'weights', mark: () => 1, usualSize: 0.02, toldU95: ({ knownForceN }) => Z95 * relativeUncertainty(knownForceN) },
  {
    id: 'forgotten-weight',
    mark: ({ knownForceN }) => 1 / knownForceN.value,
    usualSize: 0.3,
    toldU95: ({ knownForceN }) => Z95 * knownForceN.standardUncertainty,
  },
];
