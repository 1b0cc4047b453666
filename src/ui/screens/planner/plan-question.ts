/** From the setup of the page to what the planner asks, and how far the plot goes. */

import type { AskedPlan } from '../../../core/machine/ask-plan.ts';
import { type MicrophoneLimit, microphoneLimit } from '../../../core/machine/microphone-limit.ts';
import { LOWEST_HEARD_HZ } from '../../../core/machine/plan.ts';
import { USUAL_REACH } from '../../../core/machine/zones.ts';
import { parseQuantity } from '../../../core/quantity.ts';
import type { AppState } from '../../state/state.ts';

/** What the planner's own fields hold. */
export interface PlannerFields {
  /** Typed; empty: measured or assumed. */
  readonly hearsFrom: string;
  /** Typed longest span; empty: the usual. */
  readonly longest: string;
  /** Measured in the room that was last listened to. */
  readonly measured?: MicrophoneLimit | undefined;
}

export type HearsFrom = 'typed' | 'none' | 'fall' | 'assumed';

export interface Hears {
  readonly lowestHz: number;
  readonly by: HearsFrom;
}

/** Typed goes before measured, measured before assumed; the last pluck's room counts as measured. */
export function hearsOf({ take }: AppState, fields: PlannerFields): Hears {
  const typed = parseQuantity(fields.hearsFrom, { kind: 'frequency', defaultUnit: 'Hz' });
  if (typed.ok) return { lowestHz: typed.value, by: 'typed' };
  const last = take?.plucks.at(-1)?.spectrum;
  const measured = fields.measured ?? (last && microphoneLimit(last));
  return measured ?? { lowestHz: LOWEST_HEARD_HZ, by: 'assumed' };
}

/** Without a target, the force that was last read is to be told. @returns `undefined` where belt or force is missing */
export function askedPlan(state: AppState, fields: PlannerFields): AskedPlan | undefined {
  const { setup } = state.understood;
  const read = state.answer.reading?.forceN?.value;
  const forceN = setup.targetForceN ?? (read === undefined ? undefined : { lowN: read, highN: read });
  if (!setup.belt || !forceN) return undefined;
  const longest = parseQuantity(fields.longest, { kind: 'length', defaultUnit: 'mm', toothPitchM: setup.belt.toothPitchM });
  const toM = longest.ok && longest.value > 1.5 * USUAL_REACH.fromM ? longest.value : USUAL_REACH.toM;
  const nowM = setup.spanLengthM?.value;
  const fromM = Math.min(USUAL_REACH.fromM, nowM === undefined ? USUAL_REACH.fromM : 0.8 * nowM);
  return { question: { setup, forceN, lowestHz: hearsOf(state, fields).lowestHz }, reach: { fromM, toM }, nowM };
}
