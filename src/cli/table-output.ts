/** Answers as a table for people: a line for each file, its plucks and its doubts below it. */

import type { ForceN, FrequencyHz, Measurement, PluckReading, Reading, Reason } from '../core/outcome.ts';
import { formatInterval, formatMeasured, formatNumber, formatQuantity } from '../core/quantity.ts';
import { cliEn } from '../words/cli-en.ts';
import { nothingText, reasonName, reasonRemedy, reasonSentence } from '../words/reasons-en.ts';
import { printable } from './printable.ts';

const WIDTHS = { force: 18, interval: 18, frequency: 22, grade: 10, sound: 10 };
const NARROWEST_FILE = 22;
const WIDEST_FILE = 48;

interface Cells {
  readonly file: string;
  readonly force: string;
  readonly interval: string;
  readonly frequency: string;
  readonly grade: string;
  readonly sound: string;
  readonly plucks: string;
}

/** Half the 95 % interval of an unusable reading decides nothing, so that only its bounds are told. */
function forceCells(forceN: ForceN | undefined, grade: Reading['grade']): Pick<Cells, 'force' | 'interval'> {
  if (!forceN) return { force: cliEn.notTold, interval: cliEn.notTold };
  const { value, u95, low, high } = forceN;
  const force = u95 === undefined || grade === 'unusable' ? cliEn.notTold : formatMeasured({ value, u95, unit: 'N' });
  return { force, interval: bounds(low, high) };
}

function bounds(low: number | undefined, high: number | undefined): string {
  const bound = (value: number) => formatQuantity(value, 'N', { significantDigits: 2 });
  if (low !== undefined && high !== undefined) return formatInterval({ low, high, unit: 'N', between: cliEn.between });
  if (low !== undefined) return cliEn.above(bound(low));
  return high === undefined ? cliEn.notTold : cliEn.below(bound(high));
}

const frequencyCell = ({ value, u95 }: FrequencyHz): string => formatMeasured({ value, u95, unit: 'Hz' });

const answerCells = ({ forceN, frequencyHz, grade, soundGrade }: PluckReading | Reading) => ({
  ...forceCells(forceN, grade),
  frequency: frequencyCell(frequencyHz),
  grade: cliEn.grade(grade),
  sound: cliEn.grade(soundGrade),
});

/** Prints lines whose first column fits all the names. */
export class TakeTable {
  readonly #fileWidth: number;

  constructor(files: readonly string[]) {
    const longest = Math.max(0, ...files.map((file) => printable(file).length));
    this.#fileWidth = Math.min(WIDEST_FILE, Math.max(NARROWEST_FILE, longest));
  }

  /** The names of the columns. */
  header(): string {
    return this.#line(cliEn.columns);
  }

  take({ file, measurement, notes }: { file: string; measurement: Measurement; notes: readonly string[] }): string {
    const { outcome, plucks } = measurement;
    const name = printable(file);
    if (outcome.kind === 'nothing') {
      return [this.#remark(name, cliEn.nothing), indented(nothingText(outcome.why)), ...notes.map(noteLine)].join('');
    }
    const used = plucks.filter((pluck) => pluck.used).length;
    const lines = [this.#line({ file: name, ...answerCells(outcome), plucks: cliEn.plucksUsed(used, plucks.length) })];
    if (plucks.length > 1) lines.push(...plucks.map((pluck, index) => this.#pluck(pluck, index + 1)));
    return [...lines, ...outcome.reasons.map(reasonLine), ...notes.map(noteLine)].join('');
  }

  /** The reading of a frequency that was typed. */
  told(text: string, reading: Reading): string {
    const line = this.#line({ file: printable(text), ...answerCells(reading), sound: cliEn.notTold, plucks: cliEn.notTold });
    return [line, ...reading.reasons.map(reasonLine)].join('');
  }

  /** A file that gave no answer; why stands on standard error. */
  notRead(file: string): string {
    return this.#remark(printable(file), cliEn.notRead);
  }

  #pluck(pluck: PluckReading, number: number): string {
    const file = cliEn.pluck(number, `${formatNumber(pluck.sound.startS, { decimals: 2 })}\u00a0s`);
    return this.#line({ file, ...answerCells(pluck), plucks: pluck.used ? '' : cliEn.leftOut });
  }

  #remark(file: string, remark: string): string {
    return this.#line({ file, force: remark, interval: '', frequency: '', grade: '', sound: '', plucks: '' });
  }

  #line({ file, force, interval, frequency, grade, sound, plucks }: Cells): string {
    const cells = [
      file.padEnd(this.#fileWidth),
      force.padEnd(WIDTHS.force),
      interval.padEnd(WIDTHS.interval),
      frequency.padEnd(WIDTHS.frequency),
      grade.padEnd(WIDTHS.grade),
      sound.padEnd(WIDTHS.sound),
      plucks,
    ];
    return `${cells.join('  ').trimEnd()}\n`;
  }
}

const indented = (text: string): string => `    ${text}\n`;
const reasonLine = (reason: Reason): string => indented(`${reasonName(reason)}: ${reasonSentence(reason)} ${reasonRemedy(reason)}`);
const noteLine = (note: string): string => indented(cliEn.note(note));
