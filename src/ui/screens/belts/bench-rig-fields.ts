/** What hangs besides each weight of the bench, and where on Earth it hangs: folded, since it matters at the level of a percent. */

import { html } from 'lit';
import { beltsEn } from '../../../words/belts-en.ts';
import { quantityInput } from '../../parts/quantity-input.ts';
import type { RigField } from '../../state/bench-rig.ts';
import { faultText } from '../setup-words.ts';
import type { BenchFields } from './bench-fields.ts';

const words = beltsEn.bench.hangs;
const FIELDS: readonly { readonly field: RigField; readonly unit: string }[] = [
  { field: 'hanger', unit: 'g' },
  { field: 'beltBelow', unit: 'mm' },
  { field: 'latitude', unit: '°' },
  { field: 'height', unit: 'm' },
];

export function rigFields({ bench, understood, keep }: BenchFields) {
  const isTold = FIELDS.some(({ field }) => (bench[field] ?? '') !== '');
  return html`<details ?open=${isTold}>
    <summary>${words.more}</summary>
    <div class="fields">
      ${FIELDS.map(({ field, unit }) => {
        const fault = understood.faults[field];
        const said = fault && field === 'latitude' ? words.latitudeFault : faultText(fault);
        return html`<div>
          <label for=${field}>${words.labels[field]}</label>
          ${quantityInput({
            id: field,
            value: bench[field] ?? '',
            unit,
            unreadable: said !== '',
            describedBy: `${field}-note`,
            onTyped: (text) => keep((now) => ({ ...now, [field]: text })),
          })}
          <p class=${said ? 'note fault' : 'note'} id="${field}-note">${said || words.notes[field]}</p>
        </div>`;
      })}
    </div>
  </details>`;
}
