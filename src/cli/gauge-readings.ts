/** The table of a calibration: readings under forces or masses, checked cell by cell. */

import { localGravity, type Place } from '../core/gauge/gravity.ts';
import type { Direction, LoadedReading, SharedForceDoubt } from '../core/gauge/loaded-reading.ts';
import { cellNumber, readTable, type TableRow } from '../core/table.ts';
import type { GaugeFault, Wanted } from '../words/gauge-cli-en.ts';

export interface GaugeReadings {
  readonly kind: 'readings';
  readonly rows: readonly LoadedReading[];
  readonly shared: SharedForceDoubt;
  readonly byMass: boolean;
}

export interface GaugeFaults {
  readonly kind: 'faults';
  readonly faults: readonly GaugeFault[];
}

export const GAUGE_COLUMNS = ['reading', 'force_n', 'mass_g', 'u_force_n', 'u_mass_g', 'direction', 'series', 'note'] as const;
type Column = (typeof GAUGE_COLUMNS)[number];

/** @param table.place  where the masses hung, for gravity */
export function gaugeReadings({
  text,
  path,
  place,
}: {
  text: string;
  path: string;
  place?: Place | undefined;
}): GaugeReadings | GaugeFaults {
  const table = readTable(text);
  if (table.kind === 'table-fault') return { kind: 'faults', faults: [{ what: 'table', path, fault: table }] };
  const has = (column: Column): boolean => table.columns.includes(column);
  const faults: GaugeFault[] = table.columns
    .filter((column) => !(GAUGE_COLUMNS as readonly string[]).includes(column))
    .map((column) => ({ what: 'column', path, column, columns: GAUGE_COLUMNS }));
  if (!has('reading')) faults.push({ what: 'no-column', path, column: 'reading' });
  if (!has('force_n') && !has('mass_g')) faults.push({ what: 'no-column', path, column: 'force_n (or mass_g)' });
  if (has('force_n') && has('mass_g')) faults.push({ what: 'both-columns', path, columns: ['force_n', 'mass_g'] });
  if (has('u_force_n') && !has('force_n')) faults.push({ what: 'u-without-value', path, column: 'u_force_n', needs: 'force_n' });
  if (has('u_mass_g') && !has('mass_g')) faults.push({ what: 'u-without-value', path, column: 'u_mass_g', needs: 'mass_g' });
  if (faults.length > 0) return { kind: 'faults', faults };

  const byMass = has('mass_g');
  const gravity = localGravity(place);
  const factor = byMass ? gravity.value / 1000 : 1;
  const [load, u] = byMass ? (['mass_g', 'u_mass_g'] as const) : (['force_n', 'u_force_n'] as const);
  const rows = table.rows.map((row): LoadedReading => {
    const number = (column: Column, wanted: Wanted, isNeeded: boolean): number | undefined => {
      const cell = row.cells.get(column);
      if (cell === undefined) {
        if (isNeeded) faults.push({ what: 'no-cell', path, row: row.number, column });
        return undefined;
      }
      const decimal = cellNumber(cell, table.separator);
      if (decimal.kind === 'decimal' && (wanted === 'number' || decimal.value >= 0)) return decimal.value;
      const why = decimal.kind === 'no-decimal' && decimal.why === 'ambiguous' ? 'unambiguous' : wanted;
      faults.push({ what: 'cell', path, row: row.number, column, text: cell, wanted: why });
      return undefined;
    };
    const reading = number('reading', 'number', true) ?? 0;
    const forceN = (number(load, 'number-from-0', true) ?? 0) * factor;
    const forceU = number(u, 'number-from-0', false);
    return {
      row: row.number,
      reading,
      forceN,
      forceUN: forceU === undefined ? undefined : forceU * factor,
      direction: directionOf(row, path, faults),
      series: row.cells.get('series')?.trim(),
    };
  });
  if (faults.length > 0) return { kind: 'faults', faults };
  return { kind: 'readings', rows, byMass, shared: { relative: byMass ? gravity.standardUncertainty / gravity.value : 0, offsetN: 0 } };
}

function directionOf(row: TableRow, path: string, faults: GaugeFault[]): Direction | undefined {
  const text = row.cells.get('direction');
  const word = text?.trim().toLowerCase();
  if (word === undefined || word === 'up' || word === 'down') return word;
  faults.push({ what: 'cell', path, row: row.number, column: 'direction', text: text!, wanted: 'direction' });
  return undefined;
}
