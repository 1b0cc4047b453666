/** The agreement command: a folder of takes under known forces in, how sound and weights agree out. */

import { resolve } from 'node:path';
import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import type { Measurement } from '../core/outcome.ts';
import { formatMeasured, formatQuantity } from '../core/quantity.ts';
import type { Recording } from '../core/samples/recording.ts';
import { readWav } from '../core/samples/wav.ts';
import type { SpanSetup } from '../core/setup.ts';
import { type Agreement, agreementOf } from '../core/validation/agreement.ts';
import type { KnownForceTake } from '../core/validation/known-take.ts';
import { knownForceTake, setupOfTold } from '../core/validation/told-take.ts';
import { agreementEn, agreementHelp, agreementSentences } from '../words/agreement-en.ts';
import { cliEn, fileFaultText, usageFaultText } from '../words/cli-en.ts';
import { wavFaultText } from '../words/wav-en.ts';
import { agreementFolder, type FolderTake } from './agreement-folder.ts';
import { splitArguments } from './arguments.ts';
import type { ExitCode, Terminal } from './measure-command.ts';
import { printable } from './printable.ts';
import { fileBytes } from './read-file.ts';

export interface Comparing {
  readonly terminal: Terminal;
  readonly measure: (recording: Recording, setup: SpanSetup) => Measurement;
  readonly catalogue: readonly CatalogueBelt[];
}

export async function agreementCommand(words: readonly string[], { terminal, measure, catalogue }: Comparing): Promise<ExitCode> {
  const split = splitArguments(words, { '--json': 'flag', '--help': 'flag', '-h': 'flag' });
  if (split.kind === 'usage') {
    for (const fault of split.faults) terminal.complain(`${printable(usageFaultText(fault))}\n`);
    return 2;
  }
  if (split.options.has('--help') || split.options.has('-h')) {
    terminal.answer(agreementHelp);
    return 0;
  }
  const [named, ...more] = split.files;
  if (named === undefined || more.length > 0) {
    terminal.complain(`${usageFaultText({ what: 'one-folder' })}\n`);
    return 2;
  }
  const folder = await agreementFolder(resolve(terminal.folder, named));
  if (folder.kind === 'file-fault') {
    terminal.complain(`${printable(named)}: ${fileFaultText(folder.fault)}\n`);
    return 2;
  }
  const complain = (name: string, why: string) => terminal.complain(`${agreementEn.leftOut(printable(name), why)}\n`);
  const faults = folder.leftOut.filter(({ isFault }) => isFault);
  for (const { name, why } of faults) complain(name, why);
  const withoutForce = folder.leftOut.length - faults.length;
  if (withoutForce > 0) terminal.complain(`${agreementEn.withoutForce(withoutForce)}\n`);
  let isFaulty = faults.length > 0;
  const takes: KnownForceTake[] = [];
  for (const take of folder.takes) {
    const heard = await heardTake(take, { measure, catalogue });
    if (typeof heard !== 'string') takes.push(heard);
    else {
      isFaulty = true;
      complain(take.name, heard);
    }
  }
  const agreement = agreementOf(takes);
  const toldDensityKgPerM = oneDensity(takes);
  const sentences = agreementSentences(agreement, { toldDensityKgPerM });
  terminal.answer(split.options.has('--json') ? `${JSON.stringify({ ...agreement, sentences })}\n` : report(takes, agreement, sentences));
  return isFaulty || agreement.compared.length === 0 ? 1 : 0;
}

/** What was heard, or the sentence that says why the file cannot be read. */
async function heardTake(
  { name, path, truth }: FolderTake,
  { measure, catalogue }: Omit<Comparing, 'terminal'>,
): Promise<KnownForceTake | string> {
  const read = await fileBytes(path);
  if (read.kind === 'file-fault') return fileFaultText(read.fault);
  const wav = readWav(read.bytes);
  if (wav.kind === 'wav-fault') return wavFaultText(wav);
  return knownForceTake(name, truth, measure(wav.recording, setupOfTold(truth, catalogue)));
}

/** The density that was told, where all takes share one. */
function oneDensity(takes: readonly KnownForceTake[]): number | undefined {
  const [first, ...others] = new Set(takes.map(({ linearDensityKgPerM }) => linearDensityKgPerM.value));
  return others.length === 0 ? first : undefined;
}

const WIDTHS = { known: 12, heard: 18, difference: 12, held: 10 };
const NARROWEST_NAME = 22;

function report(takes: readonly KnownForceTake[], { compared }: Agreement, sentences: readonly string[]): string {
  const width = Math.max(NARROWEST_NAME, ...takes.map(({ name }) => printable(name).length)) + 2;
  const line = (cells: Readonly<Record<keyof typeof agreementEn.columns, string>>): string =>
    `${cells.name.padEnd(width)}${cells.known.padEnd(WIDTHS.known)}${cells.heard.padEnd(WIDTHS.heard)}${cells.difference.padEnd(WIDTHS.difference)}${cells.held.padEnd(WIDTHS.held)}${cells.grade}\n`;
  const rows = takes.map(({ name, knownForceN, heard }) => {
    const found = compared.find((one) => one.name === name);
    const u95 = heard?.forceN.u95;
    return line({
      name: printable(name),
      known: formatQuantity(knownForceN.value, 'N', { significantDigits: 3 }),
      heard: heard && found && u95 !== undefined ? formatMeasured({ value: heard.forceN.value, u95, unit: 'N' }) : cliEn.notTold,
      difference: found ? agreementEn.difference(found.logRatio) : cliEn.notTold,
      held: found ? agreementEn.held(found.isInside) : agreementEn.refusedCell,
      grade: heard?.grade ?? cliEn.nothing,
    });
  });
  return [...(takes.length > 0 ? [line(agreementEn.columns), ...rows, '\n'] : []), ...sentences.map((sentence) => `${sentence}\n`)].join(
    '',
  );
}
