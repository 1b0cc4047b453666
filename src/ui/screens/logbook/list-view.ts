/** Rows of the time line as the list shows and finds them. */

import type { WatchedBelt, WatchedPair } from '../../../core/logbook/outlook.ts';
import type { ReadingsRow, Row } from '../../../core/logbook/rows.ts';
import type { LoggedReading } from '../../../core/logbook/time-line.ts';
import { formatNumber } from '../../../core/quantity.ts';
import { logbookEn as words } from '../../../words/logbook-en.ts';
import type { Figures } from '../../format.ts';
import type { ListedEntry } from '../../parts/entry-list.ts';
import type { Dates } from './dates.ts';

export interface ListView {
  readonly belts: readonly WatchedBelt[];
  readonly pairs: readonly WatchedPair[];
  readonly nowS: number;
  readonly dates: Dates;
  readonly figures: Figures;
}

/** More belts than this leave the figures no room; the others stand in the note. */
const MOST_COLUMNS = 3;

/** '11.8 ± 0.5', bounds where only those were told. */
export function forceText({ forceN, grade }: LoggedReading, figures: Figures): string {
  if (!forceN) return '';
  const figure = grade === 'unusable' ? undefined : figures.force(forceN);
  return figure ? `${figure.value}\u00a0±\u00a0${figure.doubt}` : figures.bounds(forceN);
}

/** '−3.7 %': the other of the first pair against the one, where both were read. */
function matchText({ byBelt }: ReadingsRow, pairs: readonly WatchedPair[], { format }: Figures): string {
  const [pair] = pairs;
  const [one, other] = pair ? [byBelt.get(pair.oneId)?.forceN, byBelt.get(pair.otherId)?.forceN] : [];
  return one && other ? `${formatNumber(100 * (other.value / one.value - 1), { decimals: 1, format })}\u00a0%` : '';
}

const temperatureText = (celsius: number | undefined, { format }: Figures): string =>
  celsius === undefined ? '' : `${formatNumber(celsius, { decimals: 0, format })}\u00a0°C`;

export function listedEntries(rows: readonly Row[], view: ListView, isNarrow: boolean) {
  const { belts, pairs, figures } = view;
  const inColumns = belts.slice(0, MOST_COLUMNS);
  const hasMatch = pairs.length > 0;
  const columns = {
    date: words.columns.date,
    kind: words.columns.kind,
    figures: [
      ...inColumns.map(({ name }) => (isNarrow ? name : words.columns.force(name))),
      ...(hasMatch ? [isNarrow ? '' : words.columns.match] : []),
    ],
    note: words.columns.note,
  };
  const entries = rows.map((row): ListedEntry => {
    const base = { id: row.id, date: view.dates.day(row.atS, view.nowS), kind: words.rowKinds[row.kind], note: noteOf(row, view) };
    if (row.kind !== 'readings') return { ...base, figures: columns.figures.map(() => '') };
    const forces = inColumns.map(({ id }) => {
      const reading = row.byBelt.get(id);
      return reading ? forceText(reading, figures) : '';
    });
    return { ...base, figures: [...forces, ...(hasMatch ? [matchText(row, pairs, figures)] : [])] };
  });
  return { columns, entries };
}

function noteOf(row: Row, { belts, figures }: ListView): string {
  const nameOf = (id: string) => belts.find((belt) => belt.id === id)?.name ?? '';
  if (row.kind === 'readings') {
    const others = belts.slice(MOST_COLUMNS).flatMap(({ id, name }) => {
      const reading = row.byBelt.get(id);
      return reading ? [`${name}\u00a0${forceText(reading, figures)}`] : [];
    });
    return [temperatureText(row.temperatureC, figures), ...others, row.note].filter(Boolean).join(', ');
  }
  const { text, beltIds, forceN, temperatureC } = row.event;
  const force =
    forceN &&
    (forceN.u95 === undefined ? figures.rough(forceN.value, 'N') : `${figures.force(forceN)!.value} ± ${figures.force(forceN)!.doubt} N`);
  return [beltIds.map(nameOf).filter(Boolean).join(', '), force, temperatureText(temperatureC, figures), text].filter(Boolean).join(': ');
}

/** Everything of a row that somebody may look for. */
export function rowText(row: Row, view: ListView): string {
  const names = row.kind === 'readings' ? [...row.byBelt.keys()].map((id) => view.belts.find((belt) => belt.id === id)?.name ?? '') : [];
  const forces = row.kind === 'readings' ? [...row.byBelt.values()].map((reading) => forceText(reading, view.figures)) : [];
  return [
    view.dates.day(row.atS, view.nowS),
    view.dates.moment(row.atS),
    words.rowKinds[row.kind],
    ...names,
    ...forces,
    noteOf(row, view),
  ].join(' ');
}
