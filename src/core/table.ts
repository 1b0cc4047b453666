/** Tables as comma- or semicolon-separated text, in and out. Reading names row and column of a fault; writing disarms spreadsheet formulas. */

import { type Decimal, readDecimal } from './quantity/decimal.ts';

export interface Table {
  readonly kind: 'table';
  /** Names of the columns as the first line gives them, without white space around. */
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
  readonly separator: Separator;
}

export type Separator = ',' | ';';

export interface TableRow {
  /** Counts rows of data from 1; blank lines do not count. */
  readonly number: number;
  /** Cell by the name of its column; an empty or missing cell is absent. */
  readonly cells: ReadonlyMap<string, string>;
}

/** Why text is no table. `row` counts as in `TableRow`, 0 is the line of names; `column` is a name, or a number counted from 1. */
export interface TableFault {
  readonly kind: 'table-fault';
  readonly why: 'empty' | 'unclosed-quote' | 'text-after-quote' | 'too-many-cells' | 'column-without-name' | 'column-twice';
  readonly row: number;
  readonly column: string;
}

const BYTE_ORDER_MARK = '\ufeff';
/** Text that a spreadsheet would run as a formula; an apostrophe before it makes it text again. */
const FORMULA = /^'*\s*[=+\-@＝＋－＠\t\r]/u;

interface Cell {
  readonly text: string;
  readonly fault?: 'unclosed-quote' | 'text-after-quote' | undefined;
}

/** Cuts text into lines of cells. Quotes may hold separators and line ends; two quotes inside are one. */
function cellsOf(text: string, separator: Separator): readonly (readonly Cell[])[] {
  const ends = new RegExp(`[${separator}\\r\\n]`, 'gu');
  const opening = /[ \t]*"/uy;
  const lines: Cell[][] = [[]];
  let at = 0;
  while (at <= text.length) {
    opening.lastIndex = at;
    const isQuoted = opening.test(text);
    const { cell, next } = isQuoted ? quotedCell(text, opening.lastIndex, ends) : plainCell(text, at, ends);
    lines[lines.length - 1]!.push(cell);
    if (next >= text.length) break;
    if (text[next] === separator) {
      at = next + 1;
      continue;
    }
    at = next + (text.startsWith('\r\n', next) ? 2 : 1);
    if (at < text.length) lines.push([]);
    else break;
  }
  return lines;
}

/** Where the cell ends: at the next separator or line end from `at` on. */
function endFrom(text: string, at: number, ends: RegExp): number {
  ends.lastIndex = at;
  return ends.exec(text)?.index ?? text.length;
}

function plainCell(text: string, at: number, ends: RegExp): { cell: Cell; next: number } {
  const next = endFrom(text, at, ends);
  return { cell: { text: text.slice(at, next).trim() }, next };
}

/** `at`: the first place inside the quotes. */
function quotedCell(text: string, at: number, ends: RegExp): { cell: Cell; next: number } {
  const closing = /"(?!")|""/gu; // a lone quote closes, a pair stands for one
  closing.lastIndex = at;
  for (let quote = closing.exec(text); quote; quote = closing.exec(text)) {
    if (quote[0] === '""') continue;
    const next = endFrom(text, quote.index + 1, ends);
    const after = text.slice(quote.index + 1, next).trim();
    const inside = text.slice(at, quote.index).replaceAll('""', '"');
    return { cell: { text: inside, fault: after === '' ? undefined : 'text-after-quote' }, next };
  }
  return { cell: { text: '', fault: 'unclosed-quote' }, next: text.length };
}

/** A semicolon outside quotes in the first line makes the semicolon the separator; spreadsheets may also name it in a line of its own. */
function separatorOf(text: string): { separator: Separator; body: string } {
  const named = /^sep=([,;])(?:\r\n|\r|\n|$)/iu.exec(text);
  if (named) return { separator: named[1] as Separator, body: text.slice(named[0].length) };
  const [header = []] = cellsOf(text, ';');
  return { separator: header.length > 1 ? ';' : ',', body: text };
}

/**
 * Reads a table whose first line names its columns.
 *
 * @param text  decoded; may begin with a byte order mark, lines may end in any way
 */
export function readTable(text: string): Table | TableFault {
  const { separator, body } = separatorOf(text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text);
  const lines = cellsOf(body, separator).filter((line) => line.some((cell) => cell.text.trim() !== '' || cell.fault));
  const header = lines[0];
  if (!header) return { kind: 'table-fault', why: 'empty', row: 0, column: '1' };
  const columns = header.map((cell) => cell.text.trim());
  while (columns.length > 1 && columns[columns.length - 1] === '') columns.pop();
  const fault = (why: TableFault['why'], row: number, index: number): TableFault => ({
    kind: 'table-fault',
    why,
    row,
    column: columns[index] || String(index + 1),
  });
  for (const [index, name] of columns.entries()) {
    if (header[index]?.fault) return fault(header[index].fault, 0, index);
    if (name === '') return fault('column-without-name', 0, index);
    if (columns.indexOf(name) !== index) return fault('column-twice', 0, index);
  }
  const rows: TableRow[] = [];
  for (const [before, line] of lines.slice(1).entries()) {
    const number = before + 1;
    const cells = new Map<string, string>();
    for (const [index, cell] of line.entries()) {
      if (cell.fault) return fault(cell.fault, number, index);
      if (cell.text.trim() === '') continue;
      if (index >= columns.length) return fault('too-many-cells', number, index);
      cells.set(columns[index]!, FORMULA.test(cell.text) && cell.text.startsWith("'") ? cell.text.slice(1) : cell.text);
    }
    rows.push({ number, cells });
  }
  return { kind: 'table', columns, rows, separator };
}

/** A number in a cell. Where the semicolon separates, the comma is a decimal sign; where the comma does, 1,234 stays ambiguous. */
export const cellNumber = (text: string, separator: Separator): Decimal =>
  readDecimal(text, separator === ';' ? { decimalSign: 'any' } : {});

export interface TableText {
  readonly columns: readonly string[];
  /** Numbers are written in full, with a comma where the semicolon parts two or more columns, else with a point; undefined is an empty cell. */
  readonly rows: readonly (readonly (string | number | undefined)[])[];
  readonly separator?: Separator | undefined;
}

/** Writes a table that `readTable` reads back; lines end in CR LF (RFC 4180). */
export function writeTable({ columns, rows, separator = ',' }: TableText): string {
  const hasDecimalComma = separator === ';' && columns.length > 1; // one column alone shows no separator to a reader
  const cell = (value: string | number | undefined): string => {
    if (value === undefined) return '';
    if (typeof value === 'number') return hasDecimalComma ? String(value).replace('.', ',') : String(value);
    const safe = FORMULA.test(value) ? `'${value}` : value;
    return /["\r\n,;]|^\s|\s$/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
  };
  return [columns, ...rows].map((line) => `${line.map(cell).join(separator)}\r\n`).join('');
}
