/** From what hangs on the belt's bench to the force in its span, by the rigs that gauges are proved on. */

import type { Place } from '../gauge/gravity.ts';
import { type Rig, type RigForce, type RigKind, rigForce } from '../gauge/rig.ts';
import type { Measured } from '../math/measured.ts';

/**
 * `hang`: the weight hangs from the belt itself, and the span is upright. `roller`: the belt runs level over a free roller; which way its friction acts is
 * not known.
 */
export type BenchRig = 'hang' | 'roller';

/** How every weight of a bench hangs. */
export interface BenchHang {
  readonly rig: BenchRig;
  readonly place?: Place | undefined;
  /** Hook, string, pan: hangs besides each weight. */
  readonly hangerKg?: Measured | undefined;
  /** Belt between the span and the weight, which hangs along. */
  readonly beltBelowM?: number | undefined;
  readonly linearDensityKgPerM?: number | undefined;
}

const KINDS: Readonly<Record<BenchRig, RigKind>> = { hang: 'straight', roller: 'roller' };
/** Share of the force that a free roller keeps, either way (common practice, no source). */
const ROLLER_FRICTION_SHARE = 0.02;

/** How well each mass is known is told with it, so that the scale has no doubt of its own here. */
const forceOf = ({ rig, ...hang }: BenchHang, massKg: number): RigForce => {
  const told: Rig = { ...hang, kind: KINDS[rig], scale: { stepKg: 0, relativeU: 0 }, rollerFrictionShare: ROLLER_FRICTION_SHARE };
  return rigForce(told, { massKg });
};

/**
 * Force of a hung mass; what all weights share in proportion is not in its uncertainty, what the hanger adds to it is.
 *
 * @param massKg  > 0
 */
export function hungForceN({ value, standardUncertainty }: Measured, hang: BenchHang): Measured {
  const { forceN, ownUN, shared } = forceOf(hang, value);
  const perKg = forceOf({ rig: hang.rig, place: hang.place }, 1).forceN;
  return { value: forceN, standardUncertainty: Math.hypot(ownUN, shared.offsetN, perKg * standardUncertainty) };
}

/** What all weights share, relative standard uncertainty: local gravity, far more where the place is not told, and what the air bears. */
export const forceScaleRelativeU = (place?: Place | undefined): number => forceOf({ rig: 'hang', place }, 1).shared.relative;
