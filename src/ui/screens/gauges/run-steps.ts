/** The steps of a gauge's run, and those that are left. */

import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import { guidedSteps, type Step, stepsLeft } from '../../../core/gauge/guided-run.ts';
import { orderSeed } from '../../state/gauge-new.ts';
import { DEFAULT_RIG } from '../../state/gauge-proof.ts';

/** What was left out is read again. */
export function runSteps({ id, weights = [], rig = DEFAULT_RIG, readings = [] }: KeptGauge): {
  readonly all: readonly Step[];
  readonly left: readonly Step[];
} {
  const hung = weights.map(({ id: weightId, massKg, knownN }) => ({ id: weightId, massKg, hangs: !knownN }));
  const all = guidedSteps({ weights: hung, rig: rig.kind, seed: orderSeed(id) });
  return {
    all,
    left: stepsLeft(
      all,
      readings.filter(({ dropped }) => !dropped),
    ),
  };
}
