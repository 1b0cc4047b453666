/** A table of takes: one file a row with what is told of it; what a row leaves empty is taken from the command line. */

import { readTable, type Separator, type TableRow } from '../core/table.ts';
import type { UsageFault } from '../words/cli-en.ts';
import type { Told, ToldEnd, ToldEnds, ToldTake } from './told.ts';
import { type Usage, usage } from './usage.ts';
import { cellFixity, cellValue, type Value } from './values.ts';

export interface BatchTake {
  /** As the table names it; relative to the table's own folder. */
  readonly file: string;
  readonly told: ToldTake;
}

/** Columns with a number, the factor from the column's unit to SI, and whether 0 is one of its values. */
const NUMBER_COLUMNS = {
  span_mm: { factor: 1e-3, zeroAllowed: false },
  u_span_mm: { factor: 1e-3, zeroAllowed: true },
  density_g_per_m: { factor: 1e-3, zeroAllowed: false },
  u_density_g_per_m: { factor: 1e-3, zeroAllowed: true },
  stiffness_n_m2: { factor: 1, zeroAllowed: false },
  u_stiffness_n_m2: { factor: 1, zeroAllowed: true },
  u_fixity: { factor: 1, zeroAllowed: true },
  tolerance_percent: { factor: 1e-2, zeroAllowed: false },
} as const;

type NumberColumn = keyof typeof NUMBER_COLUMNS;

export const BATCH_COLUMNS: readonly string[] = [
  'file',
  ...Object.keys(NUMBER_COLUMNS).filter((name) => name !== 'u_fixity'),
  'fixity',
  'u_fixity',
];

/**
 * The takes of a table in its order.
 *
 * @param batch.text  the decoded table
 * @param batch.path  names the table in faults
 * @param batch.told  the command line's, for empty cells
 */
export function batchTakes({ text, path, told }: { text: string; path: string; told: ToldTake }): readonly BatchTake[] | Usage {
  const table = readTable(text);
  if (table.kind === 'table-fault') return usage({ what: 'batch-table', path, fault: table });
  const unknown = table.columns.filter((column) => !BATCH_COLUMNS.includes(column));
  if (unknown.length > 0)
    return usage(...unknown.map((column): UsageFault => ({ what: 'batch-column', path, column, columns: BATCH_COLUMNS })));
  if (!table.columns.includes('file')) return usage({ what: 'batch-no-file-column', path });

  const faults: UsageFault[] = [];
  const takes = table.rows.map((row): BatchTake => {
    const file = row.cells.get('file');
    if (file === undefined) faults.push({ what: 'batch-no-file', path, row: row.number });
    return { file: file ?? '', told: takeOfRow(row, { path, told, separator: table.separator, faults }) };
  });
  return faults.length > 0 ? usage(...faults) : takes;
}

interface Reading {
  readonly path: string;
  readonly told: ToldTake;
  readonly separator: Separator;
  /** Where faults are collected. */
  readonly faults: UsageFault[];
}

function takeOfRow(row: TableRow, { path, told, separator, faults }: Reading): ToldTake {
  const cell = <T>(column: string, reader: (text: string) => Value<T>): T | undefined => {
    const text = row.cells.get(column);
    if (text === undefined) return undefined;
    const value = reader(text);
    if (value.ok) return value.value;
    faults.push({ what: 'batch-cell', path, row: row.number, column, text, fault: value.fault });
    return undefined;
  };
  const number = (column: NumberColumn) => cell(column, (text) => cellValue(text, { separator, ...NUMBER_COLUMNS[column] }));
  const pair = (column: NumberColumn, uncertainty: NumberColumn, option: Told | undefined): Told => ({
    value: number(column) ?? option?.value,
    standardUncertainty: number(uncertainty) ?? option?.standardUncertainty,
  });
  const ends = cell('fixity', (text) => cellFixity(text, separator)) ?? told.fixity;
  const endU = number('u_fixity');
  const withU = (end: ToldEnd, option: ToldEnd | undefined): ToldEnd => {
    if ('kind' in end) return end;
    const optionU = option && !('kind' in option) ? option.standardUncertainty : undefined;
    return { value: end.value, standardUncertainty: endU ?? end.standardUncertainty ?? optionU };
  };
  const fixity: ToldEnds | undefined = ends && [withU(ends[0], told.fixity?.[0]), withU(ends[1], told.fixity?.[1])];
  return {
    ...told,
    spanLengthM: pair('span_mm', 'u_span_mm', told.spanLengthM),
    linearDensityKgPerM: pair('density_g_per_m', 'u_density_g_per_m', told.linearDensityKgPerM),
    bendingStiffnessNm2: pair('stiffness_n_m2', 'u_stiffness_n_m2', told.bendingStiffnessNm2),
    fixity,
    toleranceRelative: number('tolerance_percent') ?? told.toleranceRelative,
  };
}
