/** The machine in the setup of Listen: which span of it is plucked, chosen from all that are kept, and its names. */

import { html, nothing } from 'lit';
import { isAlive } from '../../../shared/document/common.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { EnteredPlace, EnteredSetup } from '../../ports.ts';
import { machinesEn as words } from '../../words/machines-en.ts';
import type { Figures } from '../format.ts';
import { selectField } from '../parts/select-field.ts';
import { enteredForSpan, placeOn } from '../state/span-of-machine.ts';

const NONE = '';
const keyOf = ({ machineId, machineBeltId, spanId = '' }: EnteredPlace): string => [machineId, machineBeltId, spanId].join(' ');

/** Nothing as long as no machine is kept. */
export function machineRow(document: KeptDocument, entered: EnteredSetup, enter: (change: Partial<EnteredSetup>) => void) {
  const places = document.machines.filter(isAlive).flatMap((machine) =>
    machine.belts.flatMap((belt) =>
      belt.spans.map((span) => ({
        place: { machine, belt, span },
        key: keyOf({ machineId: machine.id, machineBeltId: belt.id, spanId: span.id }),
        text: words.on.option(machine.name, belt.name, span.name),
      })),
    ),
  );
  if (places.length === 0) return nothing;
  const on = placeOn(document, entered.on);
  const key = entered.on && on ? keyOf(entered.on) : NONE;
  const choices = [{ value: NONE, text: words.on.none }, ...places.map(({ key: value, text }) => ({ value, text }))];
  // The belt of a machine at a length that none of its spans has.
  if (on && !on.span) choices.push({ value: key, text: words.on.title(on.machine.name, on.belt.name) });
  const chosen = (value: string) => {
    const found = places.find((one) => one.key === value);
    if (found) enter(enteredForSpan(found.place));
    else if (value === NONE) enter({ on: undefined });
  };
  return html`<div class="row">
    <label class="label" for="on">${words.on.label}</label>
    <div>${selectField({ id: 'on', value: key, choices, onChosen: chosen })}</div>
  </div>`;
}

export interface PlaceTitle {
  readonly title: string;
  readonly note: string;
}

/** 'Dovetable, belt A', and where on it. */
export function placeTitle(document: KeptDocument, { on }: EnteredSetup, figures: Figures): PlaceTitle | undefined {
  const place = placeOn(document, on);
  if (!place) return undefined;
  const { machine, belt, span } = place;
  const at = span?.carriageM;
  const carriage = at && words.carriageNote(figures.typed(at.x * 1000, 'mm'), figures.typed(at.y * 1000, 'mm'));
  const note = [span?.name, span?.carriageNote ?? (carriage && words.on.carriage(carriage))].filter((text) => text).join(', ');
  return { title: words.on.title(machine.name, belt.name), note };
}
