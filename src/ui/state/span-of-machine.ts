/** From a span of a machine to the fields of Listen, as a person would have typed them, and back to its names. */

import { currentOf, isAlive } from '../../../shared/document/common.ts';
import type { KeptSpan, Machine, MachineBelt } from '../../../shared/document/machine.ts';
import type { KeptTarget } from '../../../shared/document/target.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { frequencyOnSpan } from '../../core/machine/target.ts';
import { formatNumber } from '../../core/quantity.ts';
import type { FrequencyTarget } from '../../core/setup.ts';
import type { EnteredPlace, EnteredSetup } from '../../ports.ts';
import { EMPTY_SETUP, HERTZ, understood } from './span-setup.ts';

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
    ends: span?.ends ?? EMPTY_SETUP.ends,
    lie: span?.lie,
    ...(target ? targetEntered(target, belt, span) : {}),
    on: { machineId: machine.id, machineBeltId: belt.id, spanId: span?.id },
  };
}

/** By stiffness and ends where the belt is in the catalogue, else by length alone; the density cancels either way. */
function carried(target: FrequencyTarget, { beltId }: MachineBelt, { lengthM, ends, lie }: KeptSpan, spanLengthM: number) {
  const { setup } = understood({ ...EMPTY_SETUP, beltId, ends, lie });
  const share = target.spanLengthM / spanLengthM;
  return frequencyOnSpan(target, { ...setup, spanLengthM: lengthM }) ?? { lowHz: target.lowHz * share, highHz: target.highHz * share };
}

const typed = (value: number): string => formatNumber(value, { atMostDigits: TYPED_DIGITS });
const millimetres = (valueM: number): string => typed(valueM * 1000);

/** A target stays in the unit that it was told in; a frequency is carried to the span in hand. */
function targetEntered({ forceN, source }: KeptTarget, belt: MachineBelt, span: KeptSpan | undefined): Partial<EnteredSetup> {
  if (source.kind === 'entered') return { targetFrom: source.from, targetTo: source.to, forceUnit: source.unit };
  if (source.kind === 'frequency' && span?.lengthM) {
    const { lowHz, highHz } = carried(source, belt, span, span.lengthM.value);
    return { targetFrom: typed(lowHz), targetTo: typed(highHz), forceUnit: HERTZ };
  }
  return { targetFrom: typed(forceN.lowN), targetTo: typed(forceN.highN), forceUnit: 'N' };
}
