/** What a turn of an adjuster should do to a belt's force, from the belt's stiffness and its path: where learning begins. */

/** How the adjuster lengthens the belt's path. */
export interface AdjusterPath {
  /** Travel for a whole turn of the screw, or a millimetre of the slide, > 0. */
  readonly travelM: number;
  /** Growth of the path per travel: 2 where a pulley is pushed that the belt turns round by half, 1 where one end is pulled. */
  readonly pathPerTravel: number;
  /** Belt that gives, > 0. */
  readonly loopLengthM: number;
  /** EA: force per relative stretch, > 0. */
  readonly axialStiffnessN: number;
}

/** ΔT = EA · Δl / l; idlers, frame and clamps give too, which lowers it, and makes it hardly known. */
export const modelResponseN = ({ travelM, pathPerTravel, loopLengthM, axialStiffnessN }: AdjusterPath): number =>
  (axialStiffnessN * travelM * pathPerTravel) / loopLengthM;

/**
 * EA of a belt that nobody has measured, N. Rubber belts with glass cord: an open-hardware project's acceptance test asks at least 9.8 kN of 2 mm belts 6 mm wide, handbook deflection constants
 * come to 18.7 kN for these and 29.3 kN for 3 mm, 6 mm wide (from memory); taken as 2.4 and 4.9 kN per mm of width, more for wider pitch. Steel cord: catalogues print 8 kN per mm for
 * 3 mm pitch, 9 for 5 mm. Real belts differ by tens of percent, and the force-strain line is bent.
 */
export function assumedAxialStiffnessN(belt: { toothPitchM: number; widthM: number; steelCord: boolean }): number {
  const perWidth = belt.steelCord ? STEEL_PER_WIDTH : GLASS_PER_WIDTH;
  return perWidth * (belt.toothPitchM / 0.002) * belt.widthM;
}

/** N per metre of width, at 2 mm pitch. */
const GLASS_PER_WIDTH = 2.4e6;
const STEEL_PER_WIDTH = 5e6;
/** Length of belt that gives where nobody told it: a machine of about half a metre. */
export const ASSUMED_LOOP_LENGTH_M = 1.5;
