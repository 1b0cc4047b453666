/** The first level of the setup: which belt, how long the span is, how tight it should be. */

import { html, nothing } from 'lit';
import { belts } from '../../../shared/belts.ts';
import { en } from '../../words/en.ts';
import { plannerEn } from '../../words/planner-en.ts';
import type { Figures } from '../format.ts';
import { selectField } from '../parts/select-field.ts';
import { hrefOf, planHref } from '../route.ts';
import { OWN_BELT, TARGET_UNITS, weighingInUse, withTargetUnit } from '../state/span-setup.ts';
import { type SetupFields, setupNote, setupQuantity, setupRow } from './setup-fields.ts';
import { beltDensity, expectedText, firstFault, halfTarget, lengthReadAs, targetReadAs } from './setup-words.ts';

const words = en.setup;

/** @param weigh  called when the person wants to weigh the belt */
export function mainRows(fields: SetupFields, figures: Figures, weigh: () => void) {
  return html`${beltRow(fields, figures, weigh)} ${spanRow(fields, figures)} ${targetRow(fields, figures)}`;
}

function beltRow(fields: SetupFields, figures: Figures, weigh: () => void) {
  const { entered, understood, ownBelts, enter } = fields;
  const own = understood.beltFrom === 'typed';
  const weighing = weighingInUse(entered);
  const weighButton =
    understood.beltFrom === 'kept'
      ? html`<a class="button quiet" href=${hrefOf('belts', entered.beltId)}>${words.ofThisBelt}</a>`
      : html`<button class="quiet" @click=${weigh}>${weighing ? words.weighAgain : words.weigh}</button>`;
  const kept = ownBelts.map(({ id, name }) => ({ value: id, text: name }));
  const choices = [...kept, ...belts.map(({ id, label }) => ({ value: id, text: label })), { value: OWN_BELT, text: words.ownBelt }];
  const belt = { id: 'belt', value: own ? OWN_BELT : entered.beltId, choices, describedBy: own ? undefined : 'belt-note' };
  return html`<div class="row">
      <label class="label" for="belt">${words.belt}</label>
      <div>
        ${selectField({ ...belt, onChosen: (beltId) => enter({ beltId }) })}
        ${
          own
            ? nothing
            : html`<p class="note" id="belt-note">
                ${beltDensity(understood, figures)} ${weighButton}
                ${weighing ? html`<button class="quiet" @click=${() => enter({ weighing: undefined })}>${words.dropWeighing}</button>` : nothing}
              </p>`
        }
      </div>
    </div>
    ${own ? setupRow(fields, 'linearDensity', { label: words.linearDensity, unit: 'g/m', note: words.linearDensityNote, beside: weighButton }) : nothing}`;
}

function spanRow(fields: SetupFields, figures: Figures) {
  const { entered, understood } = fields;
  const fault = firstFault(understood, ['spanLength', 'spanKnownTo']);
  return html`<div class="row span">
    <label class="label" for="spanLength">${words.spanLength}</label>
    <div>
      <div class="fields">
        ${setupQuantity(fields, 'spanLength', { unit: 'mm', describedBy: 'span-note' })}
        ${setupQuantity(fields, 'spanKnownTo', { unit: 'mm', sign: '±', name: words.knownTo })}
      </div>
      ${setupNote('span-note', fault, lengthReadAs(entered, understood, figures) || words.spanNote)}
      <a class="button quiet" href=${planHref(entered)}>${plannerEn.open}</a>
    </div>
  </div>`;
}

function targetRow(fields: SetupFields, figures: Figures) {
  const { entered, understood, enter } = fields;
  const fault = firstFault(understood, ['targetFrom', 'targetTo']);
  const expected = expectedText(understood, figures);
  const hint = [
    halfTarget(entered) ? words.targetHalf : '',
    targetReadAs(entered, understood, figures),
    expected && words.expect(expected),
  ];
  const units = TARGET_UNITS.map((unit) => ({ value: unit, text: unit }));
  const unit = { id: 'forceUnit', name: words.forceUnit, value: entered.forceUnit, choices: units };
  return html`<div class="row target" role="group" aria-labelledby="target-label">
    <span class="label" id="target-label">${words.target} <small>${words.targetOptional}</small></span>
    <div>
      <div class="fields">
        ${setupQuantity(fields, 'targetFrom', { name: words.targetFrom, describedBy: 'target-note' })}
        ${setupQuantity(fields, 'targetTo', { name: words.targetTo, describedBy: 'target-note' })}
        ${selectField({ ...unit, onChosen: (chosen) => enter(withTargetUnit(entered, chosen)) })}
      </div>
      ${setupNote('target-note', fault, hint.filter((text) => text !== '').join('. '))}
    </div>
  </div>`;
}
