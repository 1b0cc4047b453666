/** Reads NIST's Statistical Reference Datasets (https://www.itl.nist.gov/div898/strd/, public domain) as they stand in `shared/nist`. */

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const read = (name: string): readonly string[] =>
  readFileSync(fileURLToPath(new URL(`../../shared/nist/${name}.dat`, import.meta.url)), 'utf8').split(/\r?\n/u);

const numbersOf = (line: string): readonly number[] =>
  line
    .trim()
    .split(/\s+/u)
    .filter((word) => word !== '')
    .map(Number);

/** Rows of the two columns y, x. */
export function nistData(name: string): readonly { readonly y: number; readonly x: number }[] {
  const lines = read(name);
  const head = lines.findLastIndex((line) => /^Data:\s+y\s+x/u.test(line));
  return lines
    .slice(head + 1)
    .map(numbersOf)
    .filter((row) => row.length === 2 && row.every(Number.isFinite))
    .map(([y, x]) => ({ y: y!, x: x! }));
}

/** Certified coefficients with their standard deviations, in order. */
export const nistCoefficients = (name: string): readonly { readonly value: number; readonly deviation: number }[] =>
  read(name)
    .filter((line) => /^\s+B\d\s/u.test(line))
    .map((line) => numbersOf(line.replace(/^\s+B\d/u, '')))
    .map(([value, deviation]) => ({ value: value!, deviation: deviation! }));

/** Certified residual standard deviation; printed beside its name or below it. */
export function nistResidualDeviation(name: string): number {
  const lines = read(name);
  const at = lines.findIndex((line) => /Standard Deviation\s+[\d.]/u.test(line) && !/B\d/u.test(line));
  return Number(/Standard Deviation\s+([\d.E+-]+)/u.exec(lines[at]!)![1]);
}

/** The instruments of the analysis of variance, column by column. */
export function nistColumns(name: string): readonly (readonly number[])[] {
  const lines = read(name);
  const head = lines.findLastIndex((line) => /^Data:/u.test(line));
  const rows = lines
    .slice(head + 1)
    .map(numbersOf)
    .filter((row) => row.length > 2 && row.every((value) => Number.isFinite(value) && !Number.isInteger(value)));
  return rows[0]!.map((_, column) => rows.map((row) => row[column]!));
}

/** Digits in which two numbers agree, NIST's logarithm of the relative error; 15 where they are equal. */
export const digitsAgreeing = (found: number, certified: number): number =>
  found === certified ? 15 : Math.min(15, -Math.log10(Math.abs(found - certified) / (certified === 0 ? 1 : Math.abs(certified))));
