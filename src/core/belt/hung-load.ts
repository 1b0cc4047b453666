/** From what hangs on the belt to the force in its span. */

import type { Measured } from '../math/measured.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../quantity.ts';

/**
 * `hang`: the weight hangs from the belt itself, and the span is upright. `roller`: the belt runs level over a roller; the weight was let down and lifted
 * onto it in turn, so that friction may stand either way.
 */
export type BenchRig = 'hang' | 'roller';

/** Air bears brass and iron by 0.015 %, water by 0.12 %: taken off by half, the rest is open. */
const BUOYANCY = { relative: 0.0006, relativeU: 0.0004 } as const;
/** What a free roller keeps for itself, either way, relative standard uncertainty (common practice, no source). */
const ROLLER_FRICTION_RELATIVE_U = 0.01;

/** Force of a hung mass under standard gravity; what local gravity does is shared by all weights and is not in it. @param massKg  > 0 */
export function hungForceN(massKg: Measured, rig: BenchRig): Measured {
  const value = massKg.value * STANDARD_GRAVITY_M_PER_S2 * (1 - BUOYANCY.relative);
  const relativeU = Math.hypot(
    massKg.standardUncertainty / massKg.value,
    BUOYANCY.relativeU,
    rig === 'roller' ? ROLLER_FRICTION_RELATIVE_U : 0,
  );
  return { value, standardUncertainty: value * relativeU };
}
