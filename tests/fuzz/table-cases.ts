/** Tables of takes and of gauge readings: wrong columns, cells that are no numbers, loads that no fit can bear. */

import { BATCH_COLUMNS, batchTakes } from '../../src/cli/batch.ts';
import { gaugeJson } from '../../src/cli/gauge-json.ts';
import { GAUGE_COLUMNS, gaugeReadings } from '../../src/cli/gauge-readings.ts';
import { gaugeTable } from '../../src/cli/gauge-table.ts';
import { calibrate } from '../../src/core/gauge/calibration.ts';
import type { LoadedReading } from '../../src/core/gauge/loaded-reading.ts';
import { suspicionsOf } from '../../src/core/gauge/suspicions.ts';
import { writeTable } from '../../src/core/table.ts';
import { usageFaultText } from '../../src/words/cli-en.ts';
import { gaugeFaultText } from '../../src/words/gauge-cli-en.ts';
import { noCalibrationText, suspicionText } from '../../src/words/gauge-en.ts';
import { type Draw, damagedText, numberText, TEXTS } from './hostile.ts';
import { want, wantNoNaN, wantSentence } from './wanted.ts';

const PATH = 'case.csv';

/** Some of the columns, now and then twice or unknown, and rows below them that fit or do not. */
function tableText(columns: readonly string[], draw: Draw, cell: (column: string) => string): string {
  const named = columns.filter(() => draw.chance(0.6));
  if (draw.chance(0.08)) named.push(draw.pick([...columns, ...TEXTS]));
  const rows = Array.from({ length: draw.below(6) }, () => named.map((column) => (draw.chance(0.1) ? draw.pick(TEXTS) : cell(column))));
  const text = writeTable({ columns: named, rows, separator: draw.pick([',', ';']) });
  return draw.chance(0.4) ? damagedText(text, draw) : text;
}

/** The words of a fault that are the table's own. */
const quotedIn = (fault: object): readonly string[] =>
  ['text', 'column', 'unit']
    .flatMap((name) => Object.entries(fault).flatMap(([key, value]) => (key === name ? [String(value)] : [])))
    .concat('fault' in fault && typeof fault.fault === 'object' && fault.fault ? quotedIn(fault.fault) : []);

export function batchCase(draw: Draw): void {
  const columns = draw.chance(0.8) ? ['file', ...BATCH_COLUMNS] : BATCH_COLUMNS;
  const text = tableText([...new Set(columns)], draw, (column) => (column === 'file' ? 'take.wav' : numberText(draw)));
  const takes = batchTakes({ text, path: PATH, told: {} });
  wantNoNaN(takes);
  if (!('kind' in takes)) return;
  want(takes.faults.length > 0, 'refused without a fault');
  for (const fault of takes.faults) wantSentence(usageFaultText(fault), { quoted: quotedIn(fault) });
}

export function gaugeTableCase(draw: Draw): void {
  const columns = GAUGE_COLUMNS.filter((column) => column !== draw.pick(['force_n', 'mass_g', 'note'] as const));
  const text = tableText(columns, draw, (column) => (column === 'direction' ? draw.pick(['up', 'down', 'UP', 'x']) : numberText(draw)));
  const readings = gaugeReadings({ text, path: PATH });
  wantNoNaN(readings);
  if (readings.kind === 'readings') return;
  want(readings.faults.length > 0, 'refused without a fault');
  for (const fault of readings.faults) wantSentence(gaugeFaultText(fault), { quoted: quotedIn(fault) });
}

/** Readings that the table would let pass, and that are hard to fit: far apart, all alike, at the ends of the range of numbers. */
export function calibrationCase(draw: Draw): void {
  const scale = draw.pick([1e-300, 1e-12, 1e-3, 1, 1, 1, 1e6, 1e12, 1e300]);
  const span = draw.pick([0, 1e-12, 1, 1, 1]);
  const rows = Array.from({ length: 2 + draw.below(12) }, (_, index): LoadedReading => {
    const forceN = draw.chance(0.05) ? draw.pick([0, 5e-324, 1e300]) : Math.abs(scale * (1 + index * span));
    const reading = draw.chance(0.05) ? draw.pick([0, -1e300, 1e300]) : forceN * 3 + (draw.chance(0.5) ? draw.gaussian() * scale * 0.1 : 0);
    const direction = draw.pick([undefined, undefined, 'up', 'down'] as const);
    return { row: index + 1, reading, forceN, direction, forceUN: draw.chance(0.2) ? forceN * draw.pick([0, 0.01, 10]) : undefined };
  });
  const asked = [rows[0]!.reading, draw.between(-10, 100), 1e300];
  const kind = draw.pick(['auto', 'auto', 'line', 'quadratic', 'saturating', 'spline'] as const);
  const calibration = calibrate({ rows, kind, throughOrigin: draw.chance(0.3), toleranceRelative: draw.pick([1e-9, 0.05, 1]) });
  if (calibration.kind === 'no-calibration') {
    wantSentence(noCalibrationText(calibration.why));
    return;
  }
  const notes = suspicionsOf(calibration, rows).map(suspicionText);
  for (const note of notes) wantSentence(note);
  const json = gaugeJson(calibration, asked, [], notes);
  wantNoNaN(json);
  const table = gaugeTable(calibration, asked, [], notes);
  want(!/NaN|undefined/u.test(table), `the table prints what is no figure: ${/.*(?:NaN|undefined).*/u.exec(table)?.[0]}`);
}
