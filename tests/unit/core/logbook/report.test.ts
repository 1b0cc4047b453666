/** The report as plain data, and as files: nothing is left out, and no cell runs in a spreadsheet. */

import { describe, expect, it } from 'vitest';
import { outlookOf } from '../../../../src/core/logbook/outlook.ts';
import { reportOf } from '../../../../src/core/logbook/report.ts';
import { readTable } from '../../../../src/core/table.ts';
import { readingsCsv, reportJson } from '../../../../src/export/report-files.ts';
import { DAY_S, event, reading, START_S } from './logged.ts';

const days = [0, 4, 9, 15, 22, 30];
const logged = [
  ...days.map((day) => reading('a', day, 8 - 0.01 * day, { temperatureC: 18 })),
  ...days.map((day) => reading('b', day + 0.01, 7.9 - 0.012 * day)),
  event('adjusted', 12, ['b'], '=HYPERLINK("http://example.org","B")'),
  event('note', 13, [], 'two lines,\n"quoted"; and more'),
];
const belts = [
  { id: 'a', name: '@A', targetForceN: { lowN: 6, highN: 9 } },
  { id: 'b', name: 'B', targetForceN: { lowN: 6, highN: 9 } },
];
const outlook = outlookOf({ logged, belts, pairs: [{ oneId: 'a', otherId: 'b', toleranceRelative: 0.05 }], nowS: START_S + 31 * DAY_S });
const report = reportOf({
  madeAt: '2027-04-01T10:00:00.000Z',
  program: '0.1.0',
  machineName: 'Dovetable',
  machineNote: 'pen plotter',
  logged,
  outlook,
  budgetOf: (id) =>
    id === 'a-30'
      ? [
          { input: 'frequency', forceUN: 0.01, share: 0.1 },
          { input: 'span length', forceUN: 0.1, share: 0.9 },
        ]
      : [],
  gauges: [{ name: 'Brass fork' }],
});

describe('report', () => {
  it('holds every reading and event, latest first, with the last of each belt', () => {
    expect(report.readings.length).toBe(12);
    expect(report.readings[0]!.beltName).toBe('B');
    expect(report.events.map(({ kind }) => kind)).toEqual(['note', 'adjusted']);
    expect(report.belts[0]!.last!.id).toBe('a-30');
    expect(report.belts[0]!.budget.map(({ input }) => input)).toEqual(['span length', 'frequency']);
    expect(report.pairs[0]!.last!.value).toBeCloseTo(7.54 / 7.7 - 1, 10);
  });

  it('tells the course of a belt per month, and what an event did', () => {
    expect(report.belts[0]!.course!.perMonthN).toBeCloseTo(-0.304, 2);
    const adjusted = report.events.find(({ kind }) => kind === 'adjusted')!;
    expect(adjusted.changes.map(({ beltName }) => beltName)).toEqual(['B']);
  });
});

describe('readings as CSV', () => {
  it.each([',', ';'] as const)('come back whole with %s', (separator) => {
    const table = readTable(readingsCsv(report, separator));
    if (table.kind !== 'table') throw new Error(table.why);
    expect(table.rows.length).toBe(14);
    expect(table.rows[0]!.cells.get('kind')).toBe('reading');
    const note = table.rows.find(({ cells }) => cells.get('kind') === 'note')!;
    expect(note.cells.get('note')).toBe('two lines,\n"quoted"; and more');
    const times = table.rows.map(({ cells }) => cells.get('time_utc')!);
    expect(times).toEqual([...times].sort());
  });

  it('disarm what a spreadsheet would run', () => {
    const lines = readingsCsv(report).split('\r\n');
    for (const line of lines) expect(line).not.toMatch(/(?:^|,)"?[=+@\t]/u);
    expect(readingsCsv(report)).toContain("'=HYPERLINK");
    expect(readingsCsv(report)).toContain("'@A");
  });
});

describe('report as JSON', () => {
  it('is all of it', () => {
    const { format, version, ...all } = JSON.parse(reportJson(report));
    expect({ format, version }).toEqual({ format: 'spanwright report', version: 1 });
    expect(all).toEqual(JSON.parse(JSON.stringify(report)));
  });
});
