/** The planner's fields: which belt, which force, how sure, what the microphone hears, how the ends are held. */

import { css, html, nothing } from 'lit';
import { belts } from '../../../../shared/belts.ts';
import type { KeptDocument } from '../../../../shared/document.ts';
import type { EnteredSetup } from '../../../ports.ts';
import { en } from '../../../words/en.ts';
import { machinesEn } from '../../../words/machines-en.ts';
import { plannerEn as words } from '../../../words/planner-en.ts';
import type { Figures } from '../../format.ts';
import { quantityInput } from '../../parts/quantity-input.ts';
import { selectField } from '../../parts/select-field.ts';
import { enteredForSpan, placeOn } from '../../state/span-of-machine.ts';
import { OWN_BELT, TARGET_UNITS, withTargetUnit } from '../../state/span-setup.ts';
import type { AppState } from '../../state/state.ts';
import { setupQuantity } from '../setup-fields.ts';
import { beltDensity, beltName, densityText, firstFault } from '../setup-words.ts';
import type { SpanReckoned } from './centre-form.ts';
import './centre-form.ts';
import type { Hears, PlannerFields } from './plan-question.ts';

export interface PlannerRail {
  readonly state: AppState;
  readonly document: KeptDocument;
  readonly fields: PlannerFields;
  readonly hears: Hears;
  readonly figures: Figures;
  /** From where on spans could be trusted once ends and stiffness are measured; empty where it would not help. */
  readonly onceKnown: string;
  readonly enter: (change: Partial<EnteredSetup>) => void;
  readonly tell: (change: Partial<PlannerFields>) => void;
}

export const plannerRailStyles = css`
  .fields {
    display: grid;
    gap: var(--space-16);
    padding-inline: var(--space-24);
  }
  .fields h2 {
    font-size: var(--lead-size);
    line-height: var(--lead-line);
  }
  .field label,
  .field .label {
    display: block;
    margin-block-end: var(--space-4);
    font-size: var(--note-size);
    line-height: var(--note-line);
    font-weight: var(--weight-strong);
  }
  .field .note {
    margin-block-start: var(--space-4);
  }
  .three {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) 4.75rem;
    gap: var(--space-8);
  }
  .fault {
    font-weight: var(--weight-strong);
    color: var(--ink);
  }
  @media (max-width: 59.99rem) {
    .fields {
      padding: var(--space-12) var(--sheet-margin);
    }
  }
`;

const KNOWN_PAIRS = ['unknown', 'pulley', 'clip pulley', 'clip'] as const;

export function plannerRail(rail: PlannerRail) {
  const { state, figures, hears, fields, onceKnown, enter, tell } = rail;
  const { entered, understood } = state;
  const setup = { entered, understood, ownBelts: state.ownBelts, enter };
  const fault = firstFault(understood, ['targetFrom', 'targetTo']);
  const unit = {
    id: 'forceUnit',
    name: en.setup.forceUnit,
    value: entered.forceUnit,
    choices: TARGET_UNITS.map((value) => ({ value, text: value })),
  };
  return html`<div class="fields">
    <h2>${words.title}</h2>
    ${fromRow(rail)}
    ${placeOn(rail.document, entered.on) ? nothing : beltRow(rail)}
    <div class="field" role="group" aria-labelledby="force-label">
      <span class="label" id="force-label">${words.force}</span>
      <div class="three">
        ${setupQuantity(setup, 'targetFrom', { name: en.setup.targetFrom })}
        ${setupQuantity(setup, 'targetTo', { name: en.setup.targetTo })}
        ${selectField({ ...unit, onChosen: (chosen) => enter(withTargetUnit(entered, chosen)) })}
      </div>
      ${fault ? html`<p class="note fault">${fault}</p>` : nothing}
    </div>
    <div class="field">
      <label for="tolerance">${words.tolerance}</label>
      ${setupQuantity(setup, 'tolerance', { unit: '%', describedBy: 'tolerance-note' })}
      <p class="note" id="tolerance-note">${toleranceNote(state)}</p>
    </div>
    <div class="field">
      <label for="spanLength">${words.spanNow}</label>
      ${setupQuantity(setup, 'spanLength', { unit: 'mm', describedBy: 'now-note' })}
      <p class="note" id="now-note">${firstFault(understood, ['spanLength']) || words.spanNowNote}</p>
      <centre-form
        .toothPitchM=${understood.setup.belt?.toothPitchM}
        @span-reckoned=${({ spanLengthM }: SpanReckoned) => enter({ spanLength: figures.typed(Math.round(spanLengthM * 1e4) / 10) })}
      ></centre-form>
    </div>
    <div class="field">
      <label for="hearsFrom">${words.hearsFrom}</label>
      ${quantityInput({
        id: 'hearsFrom',
        value: fields.hearsFrom || figures.whole(hears.lowestHz),
        unit: 'Hz',
        unreadable: false,
        describedBy: 'hears-note',
        onTyped: (hearsFrom) => tell({ hearsFrom }),
      })}
      <p class="note" id="hears-note">${words.hearsNotes[hears.by]}</p>
    </div>
    <div class="field">
      <label for="ends">${words.ends}</label>
      ${endsField(rail)}
      ${onceKnown ? html`<p class="note" id="ends-note">${words.onceKnown(onceKnown)}</p>` : nothing}
    </div>
    <div class="field">
      <label for="longest">${words.longest}</label>
      ${quantityInput({ id: 'longest', value: fields.longest, unit: 'mm', unreadable: false, describedBy: 'longest-note', onTyped: (longest) => tell({ longest }) })}
      <p class="note" id="longest-note">${words.longestNote}</p>
    </div>
  </div>`;
}

/** Spans of kept machines, and the setup of Listen as it stands. */
function fromRow({ document, state, figures, enter }: PlannerRail) {
  const places = document.machines.flatMap((machine) =>
    machine.belts.flatMap((belt) => (belt.spans.length > 0 ? belt.spans : [undefined]).map((span) => ({ machine, belt, span }))),
  );
  if (places.length === 0) return nothing;
  const keyOf = (on: { machineId: string; machineBeltId: string; spanId?: string | undefined }): string =>
    `${on.machineId} ${on.machineBeltId} ${on.spanId ?? ''}`;
  const keyed = places.map((place) => ({
    place,
    key: keyOf({ machineId: place.machine.id, machineBeltId: place.belt.id, spanId: place.span?.id }),
    text: place.span
      ? machinesEn.on.option(place.machine.name, place.belt.name, place.span.name)
      : machinesEn.on.title(place.machine.name, place.belt.name),
  }));
  const { on } = state.entered;
  const choices = [{ value: '', text: words.ownSetup }, ...keyed.map(({ key, text }) => ({ value: key, text }))];
  const chosen = (value: string): void => {
    const found = keyed.find(({ key }) => key === value);
    enter(found ? enteredForSpan(found.place) : { on: undefined });
  };
  return html`<div class="field">
    <label for="from">${words.from}</label>
    ${selectField({ id: 'from', value: on ? keyOf(on) : '', choices, describedBy: 'from-note', onChosen: chosen })}
    ${on ? html`<p class="note" id="from-note">${beltName(state.entered, state.understood)}, ${beltDensity(state.understood, figures)}</p>` : nothing}
  </div>`;
}

function beltRow({ state, figures, enter }: PlannerRail) {
  const { entered, understood, ownBelts } = state;
  const own = understood.beltFrom === 'typed' ? OWN_BELT : entered.beltId;
  const choices = [
    ...belts.map(({ id, label }) => ({ value: id, text: label })),
    ...ownBelts.map(({ id, name }) => ({ value: id, text: name })),
    { value: OWN_BELT, text: en.setup.ownBelt },
  ];
  const note = own === OWN_BELT ? densityText(understood, figures) || words.needsBelt[1] : beltDensity(understood, figures);
  return html`<div class="field">
    <label for="belt">${words.belt}</label>
    ${selectField({ id: 'belt', value: own, choices, describedBy: 'belt-note', onChosen: (beltId) => enter({ beltId }) })}
    <p class="note" id="belt-note">${note}</p>
  </div>`;
}

function toleranceNote({ understood }: AppState): string {
  return en.setup.toleranceNote(understood.setup.targetForceN ? en.setup.toleranceFromTarget : '±\u00a020\u00a0%');
}

function endsField({ state, onceKnown, enter }: PlannerRail) {
  const pair = [...state.entered.ends].toSorted().join(' ');
  const value = pair === 'unknown unknown' ? 'unknown' : pair === 'pulley pulley' ? 'pulley' : pair === 'clip clip' ? 'clip' : pair;
  const isKnown = KNOWN_PAIRS.some((known) => known === value);
  const choices = [...KNOWN_PAIRS, ...(isKnown ? [] : [value])].map((one) => ({
    value: one,
    text: words.bothEnds[one as keyof typeof words.bothEnds] ?? words.bothEnds.other,
  }));
  const chosen = (one: string): void => {
    if (one === 'clip pulley') enter({ ends: ['clip', 'pulley'] });
    else if (one === 'unknown' || one === 'pulley' || one === 'clip') enter({ ends: [one, one] });
  };
  return selectField({ id: 'ends', value, choices, describedBy: onceKnown ? 'ends-note' : undefined, onChosen: chosen });
}
