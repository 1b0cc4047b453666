/** The fields of the setup as every row of the form shows them: text, unit, and a note that says what is wrong or what is meant. */

import { html, nothing } from 'lit';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import type { EnteredSetup } from '../../ports.ts';
import { quantityInput } from '../parts/quantity-input.ts';
import type { SetupField, UnderstoodSetup } from '../state/span-setup.ts';
import { firstFault } from './setup-words.ts';

export interface FieldOptions {
  readonly unit?: string | undefined;
  readonly sign?: string | undefined;
  /** Name, where no label points at the field. */
  readonly name?: string | undefined;
  readonly describedBy?: string | undefined;
}

export interface SetupFields {
  readonly entered: EnteredSetup;
  readonly understood: UnderstoodSetup;
  readonly ownBelts: readonly KeptBelt[];
  readonly enter: (change: Partial<EnteredSetup>) => void;
}

export const setupQuantity = ({ entered, understood, enter }: SetupFields, field: SetupField, options: FieldOptions) =>
  quantityInput({
    id: field,
    value: entered[field],
    unreadable: understood.faults[field] !== undefined,
    onTyped: (text) => enter({ [field]: text }),
    ...options,
  });

/** A row with one field, its label and its note. */
export const setupRow = (
  fields: SetupFields,
  field: SetupField,
  { label, unit, note, beside = nothing }: { label: string; unit: string; note: string; beside?: unknown },
) =>
  html`<div class="row">
    <label class="label" for=${field}>${label}</label>
    <div>
      ${setupQuantity(fields, field, { unit, describedBy: `${field}-note` })}
      ${setupNote(`${field}-note`, firstFault(fields.understood, [field]), note)}
      ${beside}
    </div>
  </div>`;

/** What cannot be read goes before everything else. */
export const setupNote = (id: string, fault: string, note: string) =>
  html`<p class=${fault ? 'note fault' : 'note'} id=${id}>${fault || note || nothing}</p>`;
