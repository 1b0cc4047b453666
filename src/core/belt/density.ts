/** Weighing: a length of belt on a scale gives its linear density, far better than any table does. */

import type { Measured } from '../math/measured.ts';
import { type Propagated, propagated } from '../math/propagation.ts';

/** What lay on the scale, and what the scale said. */
export interface Weighing {
  /** `piece`: cut off, its length read from cut to cut. `loop`: a closed belt, whose length is its tooth count times the tooth pitch. */
  readonly kind: 'piece' | 'loop';
  /** As read or counted, > 0; of a piece with the uncertainty of the ruler alone, the cuts are added here. */
  readonly lengthM: Measured;
  /** As the scale shows it, > 0. */
  readonly massKg: number;
  /** Smallest step of the scale's display, > 0. */
  readonly scaleStepKg: number;
}

export interface WeighedDensity {
  readonly linearDensityKgPerM: Measured;
  /** Share of the variance that comes from the scale; the rest is the length's. */
  readonly scaleShare: number;
}

/** A cut is not quite square and not quite where the ruler's line is: even within ± 0.5 mm (our judgement). */
const CUT_HALF_WIDTH_M = 0.0005;
/** A step of d leaves the mass even within ± d/2: u = d/√12. (GUM, JCGM 100:2008, F.2.2.1.) Reading and zero each have it. */
const READINGS_OF_THE_SCALE = 2;
/** Air bears a belt of some 1.3 g/cm³ by 0.09 %, the scale was set with denser weights; half of that is taken as open. */
const BUOYANCY = { relative: 0.0008, relativeU: 0.0004 } as const;

/** @throws RangeError where a quantity is not above 0 */
export function weighedDensity(weighing: Weighing): WeighedDensity {
  const { kind, lengthM, massKg, scaleStepKg } = weighing;
  for (const [name, value] of Object.entries({ lengthM: lengthM.value, massKg, scaleStepKg })) {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`weighedDensity needs a ${name} above 0, got ${value}`);
  }
  const cutU = kind === 'piece' ? CUT_HALF_WIDTH_M * Math.sqrt(2 / 3) : 0; // two cuts, each even: a/√3
  const scaleU = scaleStepKg * Math.sqrt(READINGS_OF_THE_SCALE / 12);
  const result: Propagated = propagated(
    [
      { name: 'mass', value: massKg, standardUncertainty: scaleU },
      { name: 'length', value: lengthM.value, standardUncertainty: Math.hypot(lengthM.standardUncertainty, cutU) },
      { name: 'buoyancy', value: BUOYANCY.relative, standardUncertainty: BUOYANCY.relativeU },
    ],
    ([mass, length, lifted]) => (mass! / length!) * (1 + lifted!),
  );
  const { value, standardUncertainty, contributions } = result;
  return {
    linearDensityKgPerM: { value, standardUncertainty },
    scaleShare: (contributions[0]!.standardUncertainty / standardUncertainty) ** 2,
  };
}

/** How true to its nominal pitch a belt is over many teeth, relative (common practice, no source). */
const PITCH_RELATIVE_U = 0.001;

/** Length of so many teeth of a belt, as the length of a closed loop or of a piece cut tooth by tooth. */
export function lengthOfTeeth(teeth: number, toothPitchM: number): Measured {
  if (!(Number.isInteger(teeth) && teeth > 0 && toothPitchM > 0)) {
    throw new RangeError(`lengthOfTeeth needs whole teeth and a pitch above 0, got ${teeth} of ${toothPitchM} m`);
  }
  const value = teeth * toothPitchM;
  return { value, standardUncertainty: PITCH_RELATIVE_U * value };
}
