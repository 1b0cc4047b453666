/** What putting the gauge on does to the force: on a rig nothing, in a machine a rise, since the belt has to go round the middle contact. */

import type { Measured } from '../math/measured.ts';
import { propagated } from '../math/propagation.ts';

export interface Insertion {
  /** How far the middle contact presses the belt aside, > 0. */
  readonly deflectionM: Measured;
  readonly baseM: number;
  /** EA: force per relative stretch, N. */
  readonly axialStiffnessN: Measured;
  /** Length of belt that gives: the span alone between held pulleys, the whole loop with motors free. */
  readonly givingLengthM: Measured;
  /** Newtons by which the frame gives a metre; rigid where it is not told. */
  readonly frameStiffnessNPerM?: number | undefined;
}

/** Lengthening of the path from outer contact over the middle one to the other, exact for straight legs: about 2 d²/b. */
export const pathLengthening = (deflectionM: number, baseM: number): number => baseM * (Math.hypot(1, (2 * deflectionM) / baseM) - 1);

/**
 * Rise of the force by inserting the gauge. ΔT = EA · lengthening / L, the frame's give in series.
 *
 * @throws RangeError where a length or a stiffness is not above 0
 */
export function insertionRiseN({
  deflectionM,
  baseM,
  axialStiffnessN,
  givingLengthM,
  frameStiffnessNPerM = Infinity,
}: Insertion): Measured {
  for (const [name, value] of Object.entries({ baseM, EA: axialStiffnessN.value, length: givingLengthM.value, frameStiffnessNPerM })) {
    if (!(value > 0)) throw new RangeError(`insertionRiseN needs a ${name} above 0, got ${value}`);
  }
  const named = (name: string, measured: Measured) => ({ name, ...measured });
  const { value, standardUncertainty } = propagated(
    [named('deflection', deflectionM), named('stiffness', axialStiffnessN), named('length', givingLengthM)],
    ([d, EA, L]) => {
      const belt = Math.max(EA!, 1e-9) / Math.max(L!, 1e-9);
      return pathLengthening(d!, baseM) / (1 / belt + 1 / frameStiffnessNPerM);
    },
  );
  return { value, standardUncertainty };
}
