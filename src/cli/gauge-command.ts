/** The gauge command: a table of readings under known forces in, curve, verified range, chart and conversions out. */

import { resolve } from 'node:path';
import { type Calibration, calibrate } from '../core/gauge/calibration.ts';
import type { LoadedReading } from '../core/gauge/loaded-reading.ts';
import { slipGuess } from '../core/gauge/slip-guess.ts';
import { suspicionsOf } from '../core/gauge/suspicions.ts';
import { fileFaultText, usageFaultText } from '../words/cli-en.ts';
import { gaugeFaultText, gaugeHelp, gaugeCliEn as words } from '../words/gauge-cli-en.ts';
import { noCalibrationText, readingText, slipText, suspicionText } from '../words/gauge-en.ts';
import { gaugeJson, type Named } from './gauge-json.ts';
import { type GaugeOptions, gaugeOptions } from './gauge-options.ts';
import { gaugeReadings } from './gauge-readings.ts';
import { gaugeTable } from './gauge-table.ts';
import type { ExitCode, Terminal } from './measure-command.ts';
import { printable } from './printable.ts';
import { fileBytes } from './read-file.ts';

/** A table of readings is typed by hand; more is something else. */
const MOST_BYTES = 20_000_000;

/** @param words  what follows the name of the command */
export async function gaugeCommand(given: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const refuse = (lines: readonly string[]): ExitCode => {
    for (const line of lines) terminal.complain(`${printable(line)}\n`);
    return 2;
  };
  const options = gaugeOptions(given);
  if (options.kind === 'usage') return refuse(options.faults.map(usageFaultText));
  if (options.kind === 'faults') return refuse(options.faults.map(gaugeFaultText));
  if (options.help) {
    terminal.answer(gaugeHelp());
    return 0;
  }
  const file = options.readings;
  const noAnswer = (text: string): ExitCode => {
    terminal.complain(`${printable(file)}: ${text}\n`);
    if (options.json) terminal.answer(`${JSON.stringify({ file, error: text })}\n`);
    return 1;
  };
  const read = await fileBytes(resolve(terminal.folder, file), MOST_BYTES);
  if (read.kind === 'file-fault') return noAnswer(fileFaultText(read.fault));
  const text = decoded(read.bytes);
  if (text === undefined) return refuse([gaugeFaultText({ what: 'not-text', path: file })]);
  const readings = gaugeReadings({ text, path: file, place: options.place });
  if (readings.kind === 'faults') return refuse(readings.faults.map(gaugeFaultText));
  const missing = options.drop.filter((row) => row > readings.rows.length);
  if (missing.length > 0) return refuse(missing.map((row) => gaugeFaultText({ what: 'no-such-row', row, rows: readings.rows.length })));

  const rows = readings.rows.filter(({ row }) => !options.drop.includes(row));
  const { fit: kind, throughOrigin, toleranceRelative } = options;
  const calibration = calibrate({ rows, kind, throughOrigin, toleranceRelative, shared: readings.shared });
  if (calibration.kind === 'no-calibration') return noAnswer(noCalibrationText(calibration.why));
  const outliers = outliersOf(calibration);
  const notes = [...notesOf(calibration, rows), ...toldNotes(options, readings.byMass)];
  const print = options.json
    ? `${JSON.stringify(gaugeJson(calibration, options.convert, outliers, notes))}\n`
    : gaugeTable(calibration, options.convert, outliers, notes);
  terminal.answer(print);
  return 0;
}

function outliersOf({ slips, step, direction, components }: Calibration): readonly Named[] {
  const deviation = Math.sqrt(components.scatter.variance);
  return slips.map(({ row, reading, expected }) => ({
    row,
    text: slipText({ reading, expected, step, guess: slipGuess({ reading, expected, step, direction, deviation }) }),
  }));
}

function notesOf(calibration: Calibration, rows: readonly LoadedReading[]): readonly string[] {
  const { stop, step } = calibration;
  return [...(stop ? [words.stop(stop.rows, readingText(stop.reading, step))] : []), ...suspicionsOf(calibration, rows).map(suspicionText)];
}

const toldNotes = ({ drop, place }: GaugeOptions, byMass: boolean): readonly string[] => [
  ...(drop.length > 0 ? [words.dropped([...drop])] : []),
  ...(byMass && !place ? [words.gravityAssumed] : []),
];

/** UTF-8 with or without a byte order mark; undefined where the bytes are something else. */
function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
