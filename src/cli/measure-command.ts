/** The measure command: recordings in, one answer for each, in order. A file that cannot be read never stops the others. */

import { dirname, resolve } from 'node:path';
import { answerOfFrequency } from '../core/answer.ts';
import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import { frequencyUnderForce } from '../core/force/expected.ts';
import type { Measurement } from '../core/outcome.ts';
import type { Recording } from '../core/samples/recording.ts';
import { readWav } from '../core/samples/wav.ts';
import { ASSUMED_UNCERTAINTY, type SpanSetup } from '../core/setup.ts';
import { brokenText, cliEn, fileFaultText, measureHelp, usageFaultText } from '../words/cli-en.ts';
import { wavFaultText, wavNoteText } from '../words/wav-en.ts';
import { type BatchTake, batchTakes } from './batch.ts';
import { type JsonFault, jsonExpected, jsonTake, jsonTold } from './json.ts';
import { type MeasureOptions, measureOptions, type TypedValue } from './measure-options.ts';
import { printable } from './printable.ts';
import { fileBytes } from './read-file.ts';
import { TakeTable } from './table-output.ts';
import { measured, setupTold, type ToldTake } from './told.ts';
import { type Usage, usage } from './usage.ts';

/** 0: all read. 1: some file could not be read. 2: the command was not understood. */
export type ExitCode = 0 | 1 | 2;

export interface Terminal {
  /** To standard output: the answer and nothing else. */
  readonly answer: (text: string) => void;
  /** To standard error. */
  readonly complain: (text: string) => void;
  /** Where the person typed; relative paths count from here. */
  readonly folder: string;
}

export interface Measuring {
  readonly terminal: Terminal;
  readonly measure: (recording: Recording, setup: SpanSetup) => Measurement;
  readonly catalogue: readonly CatalogueBelt[];
}

interface NamedTake {
  /** As the person named it. */
  readonly file: string;
  readonly path: string;
  readonly told: ToldTake;
}

/** `text`: what is printed, or the sentence that says why there is nothing to print. */
interface Answer {
  readonly kind: 'answer' | 'no-answer';
  readonly text: string;
}

/** @param words  what follows the name of the command */
export async function measureCommand(words: readonly string[], { terminal, measure, catalogue }: Measuring): Promise<ExitCode> {
  const options = measureOptions(words, catalogue);
  if (options.kind === 'usage') return refuse(options, terminal);
  if (options.help) {
    terminal.answer(measureHelp(catalogue));
    return 0;
  }
  const takes = await takesOf(options, terminal.folder);
  if ('kind' in takes) return refuse(takes, terminal);

  const { frequency, force, json } = options;
  const setup = setupTold(options.told, catalogue);
  if (force) terminal.answer(expectedAnswer(force, setup, json));
  const table = new TakeTable([...(frequency ? [frequency.text] : []), ...takes.map(({ file }) => file)]);
  if (!json && (takes.length > 0 || frequency)) terminal.answer(table.header());
  let exitCode: ExitCode = 0;
  let lacksForce = false;
  if (frequency) {
    const frequencyHz = measured(frequency.told, (value) => ASSUMED_UNCERTAINTY.frequencyRelative * value)!;
    const reading = answerOfFrequency({ frequencyHz, setup });
    lacksForce = reading.forceN === undefined;
    terminal.answer(json ? `${JSON.stringify(jsonTold(frequency.text, reading))}\n` : table.told(frequency.text, reading));
  }
  for (const { file, path, told } of takes) {
    const answer = await answerOf(path, (recording, notes) => {
      const measurement = measure(recording, setupTold(told, catalogue));
      const take = { file, measurement, notes };
      lacksForce ||= measurement.outcome.kind === 'reading' && measurement.outcome.forceN === undefined;
      return options.json ? `${JSON.stringify(jsonTake(take))}\n` : table.take(take);
    });
    if (answer.kind === 'no-answer') {
      exitCode = 1;
      terminal.complain(`${printable(file)}: ${answer.text}\n`);
      const fault: JsonFault = { file, error: answer.text };
      terminal.answer(options.json ? `${JSON.stringify(fault)}\n` : table.notRead(file));
      continue;
    }
    terminal.answer(answer.text);
  }
  if (!options.json && lacksForce) terminal.answer(`\n${cliEn.forceNeeds}\n`);
  return exitCode;
}

/** The frequency that a force should give on this span. */
function expectedAnswer({ text, told }: TypedValue, setup: SpanSetup, json: boolean): string {
  const expected = frequencyUnderForce(setup, told.value!);
  if (json) return `${JSON.stringify(jsonExpected(text, told.value!, expected))}\n`;
  return expected ? `${cliEn.expect(printable(text), expected)}\n` : `${cliEn.frequencyNeeds}\n`;
}

/** Files of the command line first, then those of the table. */
async function takesOf(
  { files, batch, told }: Pick<MeasureOptions, 'files' | 'batch' | 'told'>,
  folder: string,
): Promise<readonly NamedTake[] | Usage> {
  const named = files.map((file) => ({ file, path: resolve(folder, file), told }));
  if (batch === undefined) return named;
  const path = resolve(folder, batch);
  const rows = await batchOf({ path, shown: batch, told });
  if ('kind' in rows) return rows;
  return [...named, ...rows.map((row) => ({ ...row, path: resolve(dirname(path), row.file) }))];
}

async function batchOf({ path, shown, told }: { path: string; shown: string; told: ToldTake }): Promise<readonly BatchTake[] | Usage> {
  const read = await fileBytes(path);
  if (read.kind === 'file-fault') return usage({ what: 'batch-not-read', path: shown, fault: read.fault });
  const text = decoded(read.bytes);
  return text === undefined ? usage({ what: 'batch-not-text', path: shown }) : batchTakes({ text, path: shown, told });
}

/** UTF-8 with or without a byte order mark; undefined where the bytes are something else. */
function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** A fault of the program in one file must not cost the answers on the others. */
async function answerOf(path: string, print: (recording: Recording, notes: readonly string[]) => string): Promise<Answer> {
  const read = await fileBytes(path);
  if (read.kind === 'file-fault') return { kind: 'no-answer', text: fileFaultText(read.fault) };
  const wav = readWav(read.bytes);
  if (wav.kind === 'wav-fault') return { kind: 'no-answer', text: wavFaultText(wav) };
  try {
    return { kind: 'answer', text: print(wav.recording, wav.notes.map(wavNoteText)) };
  } catch (error) {
    return { kind: 'no-answer', text: brokenText(printable(error instanceof Error ? error.message : String(error))) };
  }
}

function refuse({ faults }: Usage, terminal: Terminal): ExitCode {
  for (const fault of faults) terminal.complain(`${printable(usageFaultText(fault))}\n`);
  return 2;
}
