/** What is known of span and belt turned into bounds for the search: where partial 1 may lie, and how stiff the series may be there. */

import type { BendingStiffness, ForceRange, SpanSetup } from '../setup.ts';
import { partialHz } from '../vibration/beam.ts';

export interface SearchBounds {
  /** Whether span and belt were told; a sound that lies where this span must ring needs less proof that it is one. */
  readonly spanTold: boolean;
  readonly lowestFirstHz: number;
  readonly highestFirstHz: number;
  /** Least and largest inharmonicity coefficient of a span whose partial 1 lies there. */
  inharmonicityAt(firstHz: number): { readonly low: number; readonly high: number };
  /** Partial 1 under the forces that were expected; a rival outside is the less likely one. */
  readonly expectedFirstHz?: { readonly low: number; readonly high: number } | undefined;
}

/** No belt of a small machine is slacker or tighter. */
const ANY_FORCE: ForceRange = { lowN: 0.4, highN: 120 };
const ANY_FIRST_HZ = { low: 18, high: 1000 };
const ANY_INHARMONICITY = { low: 0, high: 0.5 };
/** The shortest and stiffest spans, hinged. */
const MOST_INHARMONICITY = 1;
/** Room for a span measured wrongly and a belt that is not the catalogue's. */
const MARGIN = 1.15;
/** Room around the stiffness told or assumed. */
const STIFFNESS_MARGIN = 3;

export function searchBounds(setup: SpanSetup): SearchBounds {
  const { spanLengthM, belt } = setup;
  if (!spanLengthM || !belt) {
    return {
      spanTold: false,
      lowestFirstHz: ANY_FIRST_HZ.low,
      highestFirstHz: ANY_FIRST_HZ.high,
      inharmonicityAt: () => ANY_INHARMONICITY,
    };
  }
  const stiffness = stiffnessRange(belt.bendingStiffnessNm2);
  const firstHz = (forceN: number, bendingStiffnessNm2: number, fixity: number) =>
    partialHz({
      forceN,
      spanLengthM: spanLengthM.value,
      linearDensityKgPerM: belt.linearDensityKgPerM.value,
      bendingStiffnessNm2,
      fixity: [fixity, fixity],
      number: 1,
    });
  const between = (force: ForceRange) => ({
    low: firstHz(force.lowN, stiffness.low, 0) / MARGIN,
    high: firstHz(force.highN, stiffness.high, 1) * MARGIN,
  });
  const any = between(ANY_FORCE);
  const stringForceN = (hz: number) => 4 * belt.linearDensityKgPerM.value * (spanLengthM.value * hz) ** 2;
  /** B = π² EI/(T L²), T from the frequency with the ends halfway between hinged and clamped; a few rounds settle it. */
  const inharmonicity = (hz: number, bendingStiffnessNm2: number): number => {
    let eps = 0;
    for (let round = 0; round < 12; round++) {
      const forceN = stringForceN(hz) / (1 + eps + 3 * eps ** 2) ** 2;
      eps = Math.min(0.32, Math.sqrt(bendingStiffnessNm2 / forceN) / spanLengthM.value);
    }
    return Math.min(MOST_INHARMONICITY, (Math.PI * eps) ** 2);
  };
  return {
    spanTold: true,
    lowestFirstHz: Math.max(LOWEST_HEARD_HZ, any.low),
    highestFirstHz: Math.min(HIGHEST_HEARD_HZ, any.high),
    inharmonicityAt: (hz) => ({
      low: inharmonicity(hz, stiffness.low / STIFFNESS_MARGIN),
      high: inharmonicity(hz, stiffness.high * STIFFNESS_MARGIN),
    }),
    expectedFirstHz: setup.expectedForceN && between(setup.expectedForceN),
  };
}

const LOWEST_HEARD_HZ = 12;
/** Spans of real use ring up to 650 Hz. */
const HIGHEST_HEARD_HZ = 900;

const stiffnessRange = (stiffness: BendingStiffness): { low: number; high: number } =>
  stiffness.kind === 'range' ? stiffness : { low: stiffness.value.value, high: stiffness.value.value };
