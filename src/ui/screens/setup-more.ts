/** The second level of the setup: how the ends are held, how stiff the belt is, how sure the answer has to be. */

import { html, nothing } from 'lit';
import { formatPercent } from '../../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../../core/setup.ts';
import type { EnteredEnd } from '../../ports.ts';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import { selectField } from '../parts/select-field.ts';
import { type SetupFields, setupRow } from './setup-fields.ts';

const words = en.setup;
const ENDS: readonly EnteredEnd[] = ['unknown', 'pulley', 'idler', 'clip', 'bench'];

export function moreRows(fields: SetupFields, figures: Figures) {
  const { entered, understood, enter } = fields;
  // As on the bench is a choice for a belt that was on one, and where it was chosen for a belt that is gone.
  const offered = ENDS.filter((end) => end !== 'bench' || understood.hasBenchEnds || entered.ends.includes('bench'));
  const ends = offered.map((end) => ({ value: end, text: words.ends[end] }));
  const lies = (['edge', 'flat'] as const).map((lie) => ({ value: lie, text: words.lies[lie] }));
  const choose = (index: 0 | 1) => (value: string) => {
    const end = ENDS.find((one) => one === value) ?? 'unknown';
    enter({ ends: index === 0 ? [end, entered.ends[1]] : [entered.ends[0], end] });
  };
  const assumed = understood.setup.targetForceN
    ? words.toleranceFromTarget
    : formatPercent(DEFAULT_TOLERANCE_RELATIVE, { format: figures.format });
  return html`
    <div class="row">
      <label class="label" for="firstEnd">${words.firstEnd}</label>
      ${selectField({ id: 'firstEnd', value: entered.ends[0], choices: ends, onChosen: choose(0) })}
    </div>
    <div class="row">
      <label class="label" for="secondEnd">${words.secondEnd}</label>
      ${selectField({ id: 'secondEnd', value: entered.ends[1], choices: ends, onChosen: choose(1) })}
    </div>
    <div class="row">
      <label class="label" for="lie">${words.lie}</label>
      <div>
        ${selectField({ id: 'lie', value: entered.lie ?? 'edge', choices: lies, describedBy: 'lie-note', onChosen: (lie) => enter({ lie: lie === 'flat' ? 'flat' : 'edge' }) })}
        <p class="note" id="lie-note">${words.lieNote}</p>
      </div>
    </div>
    ${understood.beltFrom === 'typed' ? setupRow(fields, 'toothPitch', { label: words.toothPitch, unit: 'mm', note: words.toothPitchNote }) : nothing}
    ${setupRow(fields, 'bendingStiffness', { label: words.stiffness, unit: 'N m²', note: words.stiffnessNote })}
    ${setupRow(fields, 'tolerance', { label: words.tolerance, unit: '%', note: words.toleranceNote(assumed) })}
  `;
}
