/** The setup in words: what a text was read as, why it could not be read, and the whole setup in one line. */

import { beltById } from '../../../shared/belts.ts';
import type { EnteredSetup } from '../../ports.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import type { FieldFault, SetupField, UnderstoodSetup } from '../state/span-setup.ts';

const words = en.setup;

export const beltName = ({ beltId }: EnteredSetup): string => beltById(beltId)?.label ?? words.ownBelt;

export function faultText(fault: FieldFault | undefined): string {
  if (!fault || fault.why === 'empty') return '';
  return fault.why === 'unknown-unit' ? words.faults['unknown-unit'](fault.unit ?? '') : words.faults[fault.why];
}

/** '150 mm', or that it is missing. */
export function spanText({ setup }: UnderstoodSetup, figures: Figures): string {
  return setup.spanLengthM ? figures.typed(setup.spanLengthM.value * 1000, 'mm') : words.foldedSpanMissing;
}

/** What a length was read as, where it was not typed in plain millimetres. */
export function lengthReadAs(entered: EnteredSetup, understood: UnderstoodSetup, figures: Figures): string {
  const plain = /^[\d\s.,]*(mm)?$/u.test(entered.spanLength.trim());
  return plain || !understood.setup.spanLengthM ? '' : words.understood(spanText(understood, figures));
}

/** What the target was read as, where it was not typed in plain newtons. */
export function targetReadAs(entered: EnteredSetup, { setup }: UnderstoodSetup, figures: Figures): string {
  const plain = entered.forceUnit === 'N' && /^[\d\s.,N]*$/u.test(`${entered.targetFrom}${entered.targetTo}`);
  return plain || !setup.targetForceN ? '' : words.understood(figures.forceRange(setup.targetForceN));
}

/** Half a target decides nothing; the person may only not have typed the other half yet. */
export function halfTarget(entered: EnteredSetup): boolean {
  return (entered.targetFrom.trim() === '') !== (entered.targetTo.trim() === '');
}

/** First fault of these fields, in words. */
export function firstFault({ faults }: UnderstoodSetup, fields: readonly SetupField[]): string {
  return fields.map((field) => faultText(faults[field])).find((text) => text !== '') ?? '';
}
