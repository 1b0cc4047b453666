/** The options by which a person tells of span and belt: the same for every command that reckons with them. */

import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import type { UsageFault } from '../words/cli-en.ts';
import type { OptionNames } from './arguments.ts';
import type { ToldTake } from './told.ts';
import { toldFixity, toldForceRange, toldLie, toldQuantity, toldShare, type Value } from './values.ts';

export const TELLING_NAMES: OptionNames = {
  '--span': 'value',
  '--belt': 'value',
  '--density': 'value',
  '--stiffness': 'value',
  '--fixity': 'value',
  '--tolerance': 'value',
  '--expect': 'value',
  '--lie': 'value',
};

/** Reads one option; undefined where it was not given, and where it is a fault, which is then in the list. */
export type ReadOption = <T>(option: string, reader: (text: string) => Value<T>) => T | undefined;

/** @param into.faults  where every fault of a value is added */
export function spanOptions(
  options: ReadonlyMap<string, string>,
  into: { readonly catalogue: readonly CatalogueBelt[]; readonly faults: UsageFault[] },
): { readonly told: ToldTake; readonly read: ReadOption } {
  const { catalogue, faults } = into;
  const read: ReadOption = (option, reader) => {
    const text = options.get(option);
    if (text === undefined) return undefined;
    const value = reader(text);
    if (value.ok) return value.value;
    faults.push({ what: 'bad-value', option, text, fault: value.fault });
    return undefined;
  };
  const id = options.get('--belt');
  const belt = catalogue.find((row) => row.id === id);
  if (id !== undefined && !belt) faults.push({ what: 'unknown-belt', id, ids: catalogue.map((row) => row.id) });
  const told: ToldTake = {
    belt,
    spanLengthM: read('--span', (text) => toldQuantity(text, { kind: 'length', defaultUnit: 'mm', toothPitchM: belt?.toothPitchM })),
    linearDensityKgPerM: read('--density', (text) => toldQuantity(text, { kind: 'linear-density', defaultUnit: 'g/m' })),
    bendingStiffnessNm2: read('--stiffness', (text) => toldQuantity(text, { kind: 'stiffness', defaultUnit: 'N m²' })),
    fixity: read('--fixity', toldFixity),
    toleranceRelative: read('--tolerance', toldShare),
    expectedForceN: read('--expect', toldForceRange),
    lie: read('--lie', toldLie),
  };
  return { told, read };
}
