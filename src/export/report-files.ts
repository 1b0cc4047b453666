/** A report as files: the readings and events as one table that spreadsheets open, and all of it as JSON. */

import type { Report, ReportedEvent, ReportedReading } from '../core/logbook/report.ts';
import { type Separator, writeTable } from '../core/table.ts';

const COLUMNS = [
  'time_utc',
  'kind',
  'belt',
  'force_n',
  'force_low_n',
  'force_high_n',
  'frequency_hz',
  'grade',
  'temperature_c',
  'note',
  'id',
] as const;

type Cells = readonly (string | number | undefined)[];

/**
 * Readings and events in order of time, oldest first. Cells that a spreadsheet would run as a formula are disarmed by the table's writer.
 *
 * @param separator  semicolons where the reader's decimal sign is a comma
 */
export function readingsCsv({ readings, events }: Report, separator: Separator = ','): string {
  const rows = [...readings.map(readingCells), ...events.map(eventCells)].sort((a, b) => (String(a[0]) < String(b[0]) ? -1 : 1));
  return writeTable({ columns: COLUMNS, rows, separator });
}

const isoOf = (atS: number): string => new Date(atS * 1000).toISOString();
/** Far below any uncertainty. */
const rounded = (value: number | undefined): number | undefined => (value === undefined ? undefined : Number(value.toPrecision(6)));
const orEmpty = (text: string): string | undefined => (text === '' ? undefined : text);

const readingCells = (reading: ReportedReading): Cells => [
  isoOf(reading.atS),
  'reading',
  reading.beltName,
  rounded(reading.forceN?.value),
  rounded(reading.forceN?.low),
  rounded(reading.forceN?.high),
  rounded(reading.frequencyHz),
  reading.grade,
  rounded(reading.temperatureC),
  orEmpty(reading.note),
  reading.id,
];

const eventCells = (event: ReportedEvent): Cells => [
  isoOf(event.atS),
  event.kind,
  orEmpty(event.beltNames.join(' ')),
  rounded(event.forceN?.value),
  rounded(event.forceN?.low),
  rounded(event.forceN?.high),
  undefined,
  undefined,
  rounded(event.temperatureC),
  orEmpty(event.text),
  event.id,
];

/** Everything of the report; names as in `core/logbook/report.ts`. */
export const reportJson = (report: Report): string =>
  `${JSON.stringify({ format: 'spanwright report', version: 1, ...report }, undefined, 1)}\n`;
