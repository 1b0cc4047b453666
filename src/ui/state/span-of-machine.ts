/** From a span of a machine to the fields of Listen, as a person would have typed them, and back to its names. */

import { currentOf, isAlive } from '../../../shared/document/common.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptTarget } from '../../../shared/document/target.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { formatNumber } from '../../core/quantity.ts';
import type { EnteredPlace, EnteredSetup } from '../../ports.ts';
import { EMPTY_SETUP } from './span-setup.ts';

const COVERAGE_FACTOR = 2;
const TYPED_DIGITS = 5;

export interface PlaceOnMachine {
  readonly machine: Machine;
  readonly belt: MachineBelt;
  readonly span?: KeptSpan | undefined;
}

/** What the ids name; undefined where machine or belt is gone. */
export function placeOn({ machines }: KeptDocument, on: EnteredPlace | undefined): PlaceOnMachine | undefined {
  const machine = on && machines.find((one) => one.id === on.machineId && isAlive(one));
  const belt = machine?.belts.find(({ id }) => id === on?.machineBeltId);
  return machine && belt && { machine, belt, span: belt.spans.find(({ id }) => id === on?.spanId) };
}

/** All fields as the machine has them; whatever it does not tell is as on an empty page. */
export function enteredForSpan({ machine, belt, span }: PlaceOnMachine): EnteredSetup {
  const target = currentOf(belt.targets);
  return {
    ...EMPTY_SETUP,
    beltId: belt.beltId,
    ...(span?.lengthM
      ? { spanLength: millimetres(span.lengthM.value), spanKnownTo: millimetres(COVERAGE_FACTOR * span.lengthM.standardUncertainty) }
      : {}),
    ...(target ? targetEntered(target) : {}),
    ends: span?.ends ?? EMPTY_SETUP.ends,
    lie: span?.lie,
    on: { machineId: machine.id, machineBeltId: belt.id, spanId: span?.id },
  };
}

const typed = (value: number): string => formatNumber(value, { atMostDigits: TYPED_DIGITS });
const millimetres = (valueM: number): string => typed(valueM * 1000);

/** A target stays in the unit that it was told in. */
function targetEntered({ forceN, source }: KeptTarget): Partial<EnteredSetup> {
  if (source.kind === 'entered') return { targetFrom: source.from, targetTo: source.to, forceUnit: source.unit };
  return { targetFrom: typed(forceN.lowN), targetTo: typed(forceN.highN), forceUnit: 'N' };
}
