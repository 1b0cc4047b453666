/** A belt's target on each of its spans, as the machine page and the printed card tell it. */

import { currentOf } from '../../../shared/document/common.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { type FrequencyRange, forceOfTarget, frequencyOfForce, frequencyOnSpan } from '../../core/machine/target.ts';
import type { ForceRange, SpanSetup } from '../../core/setup.ts';
import { enteredForSpan } from './span-of-machine.ts';
import { understood } from './span-setup.ts';

/** What is known of a belt on one of its spans, or on none. */
export const setupOn = ({ belts }: KeptDocument, machine: Machine, belt: MachineBelt, span?: KeptSpan): SpanSetup =>
  understood(enteredForSpan({ machine, belt, span }), belts).setup;

/** The force that a target means by now: of a frequency, as dense as the belt is known to be. */
export function targetForceNow(document: KeptDocument, machine: Machine, belt: MachineBelt): ForceRange | undefined {
  const target = currentOf(belt.targets);
  if (target === undefined) return undefined;
  const { source, forceN } = target;
  return source.kind === 'frequency' ? (forceOfTarget(source, setupOn(document, machine, belt, belt.spans[0])) ?? forceN) : forceN;
}

/** First partials to expect on a span; undefined without a target or a length. */
export function expectedOn(document: KeptDocument, machine: Machine, belt: MachineBelt, span: KeptSpan): FrequencyRange | undefined {
  const target = currentOf(belt.targets);
  if (target === undefined || span.lengthM === undefined) return undefined;
  const setup = setupOn(document, machine, belt, span);
  return target.source.kind === 'frequency' ? frequencyOnSpan(target.source, setup) : frequencyOfForce(target.forceN, setup);
}
