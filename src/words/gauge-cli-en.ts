/** Every sentence of the gauge command. */

import { assertNever } from '../core/outcome.ts';
import { formatPercent } from '../core/quantity.ts';
import { DEFAULT_TOLERANCE_RELATIVE } from '../core/setup.ts';
import type { TableFault } from '../core/table.ts';
import { tableFaultText } from './cli-en.ts';

/** What is wrong with a command or with its table of readings. */
export type GaugeFault =
  | { readonly what: 'no-readings' }
  | { readonly what: 'stray-file'; readonly file: string }
  | { readonly what: 'bad-option'; readonly option: string; readonly text: string; readonly wanted: Wanted }
  | { readonly what: 'height-without-latitude' }
  | { readonly what: 'no-such-row'; readonly row: number; readonly rows: number }
  | { readonly what: 'not-text'; readonly path: string }
  | { readonly what: 'table'; readonly path: string; readonly fault: TableFault }
  | { readonly what: 'column'; readonly path: string; readonly column: string; readonly columns: readonly string[] }
  | { readonly what: 'no-column'; readonly path: string; readonly column: string }
  | { readonly what: 'both-columns'; readonly path: string; readonly columns: readonly [string, string] }
  | { readonly what: 'u-without-value'; readonly path: string; readonly column: string; readonly needs: string }
  | { readonly what: 'no-cell'; readonly path: string; readonly row: number; readonly column: string }
  | {
      readonly what: 'cell';
      readonly path: string;
      readonly row: number;
      readonly column: string;
      readonly text: string;
      readonly wanted: Wanted;
    };

export type Wanted = 'number' | 'number-from-0' | 'share' | 'fit' | 'row' | 'direction' | 'latitude' | 'height' | 'unambiguous';

const WANTED: Readonly<Record<Wanted, string>> = {
  number: 'not a number. Write one such as 5.4.',
  'number-from-0': 'not a number from 0 on. Write one such as 5.4.',
  share: 'not a share above 0. Write one such as 10%.',
  fit: 'none of auto, line, quadratic, saturating, spline.',
  row: 'not the number of a row. Rows of data count from 1.',
  direction: 'neither up nor down.',
  latitude: 'not a latitude from -90 to 90 degrees.',
  height: 'not a height such as 300m.',
  unambiguous: 'a number that may hold thousands or decimals. Write it with a decimal point and without a thousands sign.',
};

const rowText = (row: number): string => (row === 0 ? 'line of names' : `row ${row}`);

export function gaugeFaultText(fault: GaugeFault): string {
  switch (fault.what) {
    case 'no-readings':
      return 'Name a table of readings with --readings. --help tells more.';
    case 'stray-file':
      return `${fault.file}: the table of readings follows --readings.`;
    case 'bad-option':
      return `${fault.option}: '${fault.text}' is ${WANTED[fault.wanted]}`;
    case 'height-without-latitude':
      return '--height: gravity needs --latitude too.';
    case 'no-such-row':
      return `--drop: there is no row ${fault.row}. The table has ${fault.rows}.`;
    case 'not-text':
      return `${fault.path}: It is not text in UTF-8. Save the table as CSV in UTF-8.`;
    case 'table':
      return `${fault.path}, ${rowText(fault.fault.row)}, column ${fault.fault.column}: ${tableFaultText(fault.fault)}`;
    case 'column':
      return `${fault.path}, ${rowText(0)}, column ${fault.column}: There is no such column. There are: ${fault.columns.join(', ')}.`;
    case 'no-column':
      return `${fault.path}, ${rowText(0)}: The column ${fault.column} is missing.`;
    case 'both-columns':
      return `${fault.path}, ${rowText(0)}: The columns ${fault.columns.join(' and ')} exclude each other; keep one.`;
    case 'u-without-value':
      return `${fault.path}, ${rowText(0)}, column ${fault.column}: It belongs to ${fault.needs}, which is missing.`;
    case 'no-cell':
      return `${fault.path}, row ${fault.row}, column ${fault.column}: The cell is empty.`;
    case 'cell':
      return `${fault.path}, row ${fault.row}, column ${fault.column}: '${fault.text}' is ${WANTED[fault.wanted]}`;
    default:
      return assertNever(fault);
  }
}

export const gaugeCliEn = {
  curve: 'Curve',
  scatter: 'Scatter',
  figures: 'Figures, in the manner of ISO 376 and ASTM E74 and no certificate',
  chart: 'Chart',
  asked: 'Asked for',
  outliers: 'Rows that break the pattern (they stay in unless dropped)',
  notes: 'To look at',
  reading: 'reading',
  force: 'force',
  interval: '95 % interval',
  worst: 'at the worst load',
  scatterText: (deviation: string, degrees: number): string => `${deviation} divisions, ${degrees} degrees of freedom`,
  row: (row: number, text: string): string => `row ${row}: ${text}`,
  stop: (rows: readonly number[], reading: string): string =>
    `row${rows.length > 1 ? 's' : ''} ${rows.join(', ')} held at a stop near ${reading}, left out of the curve`,
  dropped: (rows: readonly number[]): string => `row${rows.length > 1 ? 's' : ''} ${rows.join(', ')} dropped as told`,
  gravityAssumed: 'masses were turned into forces with standard gravity; --latitude makes it the local one',
  names: {
    repeatabilityRelative: 'repeatability',
    reproducibilityRelative: 'reproducibility',
    reversibilityRelative: 'reversibility',
    interpolationErrorRelative: 'interpolation',
    zeroReading: 'zero reading',
    lowestForceN: 'lowest force',
  },
  notTold: '–',
} as const;

export const gaugeHelp = (): string => `Proves a gauge: fits its readings under hung weights, and turns readings into forces.

  npm run --silent gauge -- --readings RUN.csv [options]

  --readings RUN.csv   columns reading, and force_n or mass_g; if at hand u_force_n or u_mass_g (standard
                       uncertainty of the weight, shared by its repeats), direction (up, down), series, note
  --fit KIND           auto, line, quadratic, saturating, spline; auto unless told
  --through-origin     no force reads 0
  --tolerance 20%      the doubt that still serves, of the force; ${formatPercent(DEFAULT_TOLERANCE_RELATIVE)} unless told
  --drop ROW           leave a row out; may be given more than once
  --convert 5.4        a reading to turn into a force; may be given more than once
  --latitude 48        for gravity where masses are given; --height 300m above the sea
  --json               one JSON object on one line
  --help               this text

Rows of data count from 1. Rows that break the pattern are named and stay in unless dropped. Rows held at
a stop are left out of the curve, and the verified range ends below them. Where both directions were run,
the interval covers either. Without uncertainty columns the fit is ordinary least squares.

Exit status: 0 answered, 1 the table could not be read or carries no curve, 2 the command or the table was
not understood.
`;
