/** An entry as it is typed, and what of it can be kept. */

import type { KeptEntry } from '../../../../shared/document/entry.ts';
import type { LoggedEvent } from '../../../core/logbook/time-line.ts';
import { parseQuantity } from '../../../core/quantity.ts';
import { logbookEn } from '../../../words/logbook-en.ts';
import type { Figures } from '../../format.ts';
import { readTemperature, ZERO_CELSIUS_K } from '../../state/temperature.ts';
import { isoMinute } from './dates.ts';

const words = logbookEn.entry;
export type Kind = KeptEntry['kind'];
export const KINDS: readonly Kind[] = ['note', 'adjusted', 'belt-changed', 'gauge-reading', 'temperature'];

export interface Draft {
  readonly id?: string | undefined;
  readonly kind: Kind;
  readonly when: string;
  readonly beltIds: readonly string[];
  readonly text: string;
  readonly force: string;
  readonly temperature: string;
}

/** @param atS  now */
export const emptyDraft = (atS: number): Draft => ({
  kind: 'note',
  when: isoMinute(atS),
  beltIds: [],
  text: '',
  force: '',
  temperature: '',
});

export const draftOf = (event: LoggedEvent, figures: Figures): Draft => ({
  id: event.id,
  kind: event.kind,
  when: isoMinute(event.atS),
  beltIds: event.beltIds,
  text: event.text,
  force: event.forceN ? figures.typed(event.forceN.value) : '',
  temperature: event.temperatureC === undefined ? '' : figures.typed(event.temperatureC),
});

type ReadEntry = Omit<KeptEntry, 'id' | 'made' | 'changedAt' | 'earlier' | 'deletedAt'>;

/** What was typed as an entry, or the sentence that says what is missing. */
export function readEntry(draft: Draft, machineId: string): ReadEntry | string {
  const happenedMs = new Date(draft.when).getTime();
  if (!Number.isFinite(happenedMs) || happenedMs > Date.now() + 60_000) return words.needsWhen;
  const force = parseQuantity(draft.force, { kind: 'force', defaultUnit: 'N' });
  if (draft.kind === 'gauge-reading' && !force.ok) return words.needsForce;
  const celsius = readTemperature(draft.temperature);
  if (celsius === 'unreadable' || (draft.kind === 'temperature' && celsius === undefined)) return words.needsTemperature;
  if (draft.kind === 'note' && draft.text.trim() === '') return words.needsText;
  return {
    kind: draft.kind,
    happened: { at: new Date(happenedMs).toISOString(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC' },
    text: draft.text.trim(),
    machineId,
    machineBeltIds: [...draft.beltIds],
    forceN:
      draft.kind === 'gauge-reading' && force.ok
        ? { value: force.value, u95: force.standardUncertainty } // a typed ± is the half of a 95 % interval
        : undefined,
    temperatureK: celsius === undefined ? undefined : celsius + ZERO_CELSIUS_K,
  };
}
