/** A straight wire across the gauge's contacts bends as stiffly as a belt of one force would: a force that needs no weights. */

import type { Measured } from '../math/measured.ts';
import { propagated } from '../math/propagation.ts';

export interface ReferenceWire {
  /** > 0; enters to the fourth power. */
  readonly diameterM: Measured;
  /** Young's modulus, Pa, > 0. */
  readonly youngPa: Measured;
  /** Between the outer contacts, > 0; enters squared. */
  readonly baseM: Measured;
}

/**
 * Force of the limp belt that gives the same side force at the same deflection: 12 EI/b², I = π d⁴/64.
 *
 * A wire on two supports gives under a middle load by F b³/48EI; a limp belt has F = 4 T d/b; equal F at equal d is T = 12 EI/b².
 */
export function wireForceN({ diameterM, youngPa, baseM }: ReferenceWire): Measured {
  for (const { value } of [diameterM, youngPa, baseM]) {
    if (!(value > 0)) throw new RangeError(`wireForceN needs diameter, modulus and base above 0, got ${value}`);
  }
  const { value, standardUncertainty } = propagated(
    [
      { name: 'diameter', ...diameterM },
      { name: 'modulus', ...youngPa },
      { name: 'base', ...baseM },
    ],
    ([d, E, b]) => (12 * E! * Math.PI * d! ** 4) / (64 * b! ** 2),
  );
  return { value, standardUncertainty };
}

/** Young's modulus of drawn spring and music wire, from memory of handbooks: 200 to 212 GPa. */
export const STEEL_WIRE_YOUNG_PA: Measured = { value: 206e9, standardUncertainty: 4e9 };
