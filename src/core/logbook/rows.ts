/** The time line as rows of a list: readings of several belts taken together stand in one row, everything else in a row of its own. */

import type { EventKind, Logged, LoggedEvent, LoggedReading } from './time-line.ts';

export interface ReadingsRow {
  readonly kind: 'readings';
  readonly id: string;
  readonly atS: number;
  /** Latest reading of each belt, by belt id. */
  readonly byBelt: ReadonlyMap<string, LoggedReading>;
  readonly temperatureC?: number | undefined;
  readonly note: string;
}

interface EventRow {
  readonly kind: EventKind;
  readonly id: string;
  readonly atS: number;
  readonly event: LoggedEvent;
}

export type Row = ReadingsRow | EventRow;

/** Readings of different belts within this time of each other are one visit to the machine. */
const ONE_VISIT_S = 2 * 3600;

/** Latest first. A belt that is read again begins a new row, so that no reading is hidden. */
export function rowsOf(logged: readonly Logged[]): readonly Row[] {
  const rows: Row[] = [];
  let visit: LoggedReading[] = [];
  const close = () => {
    if (visit.length > 0) rows.push(visitRow(visit));
    visit = [];
  };
  for (const one of [...logged].sort((a, b) => a.atS - b.atS || (a.id < b.id ? -1 : 1))) {
    if (one.kind !== 'reading') {
      close();
      rows.push({ kind: one.kind, id: one.id, atS: one.atS, event: one });
      continue;
    }
    const first = visit[0];
    if (first && (one.atS - first.atS > ONE_VISIT_S || visit.some(({ beltId }) => beltId === one.beltId))) close();
    visit.push(one);
  }
  close();
  return rows.reverse();
}

function visitRow(visit: readonly LoggedReading[]): ReadingsRow {
  const last = visit.at(-1)!;
  return {
    kind: 'readings',
    id: last.id,
    atS: last.atS,
    byBelt: new Map(visit.map((reading) => [reading.beltId, reading])),
    temperatureC: visit.find(({ temperatureC }) => temperatureC !== undefined)?.temperatureC,
    note: visit.flatMap(({ note }) => (note ? [note] : [])).join(' '),
  };
}

/** What a list may be narrowed to. */
export interface Narrowing {
  readonly kinds: ReadonlySet<Row['kind']>;
  /** Words that all have to occur, whatever the capitals; empty: any. */
  readonly find: string;
  /** Text of a row to look in, as the person sees it. */
  readonly textOf: (row: Row) => string;
}

export function narrowed(rows: readonly Row[], { kinds, find, textOf }: Narrowing): readonly Row[] {
  const words = find.toLowerCase().split(/\s+/u).filter(Boolean);
  return rows.filter((row) => {
    if (!kinds.has(row.kind)) return false;
    if (words.length === 0) return true;
    const text = textOf(row).toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
