/** From what hangs on the belt's bench to the force in its span, by the rigs that gauges are proved on. */

import { type Rig, type RigKind, rigForce } from '../gauge/rig.ts';
import type { Measured } from '../math/measured.ts';

/**
 * `hang`: the weight hangs from the belt itself, and the span is upright. `roller`: the belt runs level over a free roller; which way its friction acts is
 * not known.
 */
export type BenchRig = 'hang' | 'roller';

const KINDS: Readonly<Record<BenchRig, RigKind>> = { hang: 'straight', roller: 'roller' };
/** Share of the force that a free roller keeps, either way (common practice, no source). */
const ROLLER_FRICTION_SHARE = 0.02;

/** How well each mass is known is told with it, so that the scale has no doubt of its own here. */
const rigOf = (rig: BenchRig): Rig => ({
  kind: KINDS[rig],
  scale: { stepKg: 0, relativeU: 0 },
  rollerFrictionShare: ROLLER_FRICTION_SHARE,
});

/** Force of a hung mass; what all weights share is not in its uncertainty. @param massKg  > 0 */
export function hungForceN({ value, standardUncertainty }: Measured, rig: BenchRig): Measured {
  const { forceN, ownUN } = rigForce(rigOf(rig), { massKg: value });
  return { value: forceN, standardUncertainty: Math.hypot(ownUN, (forceN * standardUncertainty) / value) };
}

/** What all weights share, relative standard uncertainty: local gravity where the place is not told, and what the air bears. */
export const FORCE_SCALE_RELATIVE_U = rigForce(rigOf('hang'), { massKg: 1 }).shared.relative;
