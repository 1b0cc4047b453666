/** How the parts of the editor change a machine: each change is a pure function of the machine as it stands in the store. */

import type { BeltGroup, KeptSpan, Machine, MachineBelt } from '../../../../shared/document/machine.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import type { QuantityFault } from '../../../core/quantity.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';

export type MachineEdit = (machine: Machine) => Machine;
export type EditMachine = (edit: MachineEdit) => void;

export const faultText = ({ why }: QuantityFault): string => words.faults[why];

/** A machine of the document changed; one that is gone by now stays gone. */
export const withMachine = (document: KeptDocument, id: string, edit: MachineEdit): KeptDocument => ({
  ...document,
  machines: document.machines.map((machine) => (machine.id === id ? edit(machine) : machine)),
});

export const editBelt =
  (beltId: string, edit: (belt: MachineBelt) => MachineBelt): MachineEdit =>
  (machine) => ({ ...machine, belts: machine.belts.map((belt) => (belt.id === beltId ? edit(belt) : belt)) });

export const editSpan = (beltId: string, spanId: string, edit: (span: KeptSpan) => KeptSpan): MachineEdit =>
  editBelt(beltId, (belt) => ({ ...belt, spans: belt.spans.map((span) => (span.id === spanId ? edit(span) : span)) }));

export const editGroup =
  (groupId: string, edit: (group: BeltGroup) => BeltGroup): MachineEdit =>
  (machine) => ({ ...machine, groups: machine.groups.map((group) => (group.id === groupId ? edit(group) : group)) });

/** A group that loses a belt is none where fewer than two are left. */
export const withoutBelt =
  (beltId: string): MachineEdit =>
  (machine) => ({
    ...machine,
    belts: machine.belts.filter(({ id }) => id !== beltId),
    groups: machine.groups
      .map((group) => ({ ...group, beltIds: group.beltIds.filter((id) => id !== beltId) }))
      .filter(({ beltIds }) => beltIds.length >= 2),
  });

/** Letters go on where the last one stopped; a name that is there already is not given again. */
export function nextBeltName({ belts }: Machine): string {
  const used = new Set(belts.map(({ name }) => name));
  for (let code = 'A'.charCodeAt(0); code <= 'Z'.charCodeAt(0); code += 1) {
    const letter = String.fromCharCode(code);
    if (!used.has(letter)) return letter;
  }
  return String(belts.length + 1);
}

/** Text of a field, where it says something: a name that was emptied stays as it was. */
export const typedText = (event: Event): string => (event.currentTarget as HTMLInputElement).value.trim();
