/** What a gauge's own build lets it show at most, from its owner's word or from its sizes. */

import type { KeptGauge } from '../../../shared/document/gauge.ts';
import { ceilingOf } from '../../core/gauge/three-contact.ts';

export interface BuildCeiling {
  readonly reading: number;
  /** Force at which a limp belt brings it there; missing where it is never quite reached, or the spring is not told. */
  readonly forceN?: number | undefined;
}

/** @returns undefined where neither the reading nor the sizes that lead to it are told */
export function ceilingFrom({ ceilingReading, baseM, build }: KeptGauge): BuildCeiling | undefined {
  const { reachM, travelM, springNPerM, restReading = 0, readingPerM } = build ?? {};
  const bySize =
    baseM !== undefined && reachM !== undefined ? ceilingOf({ baseM, reachM, travelM, springNPerM: springNPerM ?? Number.NaN }) : undefined;
  const forceN = bySize?.forceN !== undefined && Number.isFinite(bySize.forceN) ? bySize.forceN : undefined;
  if (ceilingReading !== undefined) return { reading: ceilingReading, forceN };
  return bySize && readingPerM !== undefined ? { reading: restReading + readingPerM * bySize.travelM, forceN } : undefined;
}
