/** Every sentence of the command line in English, and the closed lists of what it may have to say. Reasons and WAV files have tables of their own. */

import { assertNever, type Grade } from '../core/outcome.ts';
import { formatInterval, formatPercent, formatQuantity, type QuantityFault, type QuantityKind, unitsOf } from '../core/quantity.ts';
import { ASSUMED_UNCERTAINTY as ASSUMED, DEFAULT_TOLERANCE_RELATIVE } from '../core/setup.ts';
import type { TableFault } from '../core/table.ts';

/** Why text is not the value that was asked for. */
export type ValueFault =
  | { readonly why: QuantityFault['why']; readonly kind: QuantityKind; readonly unit?: string | undefined }
  | { readonly why: 'not-a-range' }
  | { readonly why: 'range-upside-down' }
  | { readonly why: 'not-a-fixity' }
  | { readonly why: 'not-a-lie' }
  | { readonly why: 'ends-or-decimal' };

/** Everything that can be wrong with a command before a recording is opened. */
export type UsageFault =
  | { readonly what: 'no-command'; readonly command: string; readonly commands: readonly string[] }
  | { readonly what: 'unknown-option'; readonly option: string }
  | { readonly what: 'missing-value'; readonly option: string }
  | { readonly what: 'unexpected-value'; readonly option: string }
  | { readonly what: 'option-twice'; readonly option: string }
  | { readonly what: 'no-files' }
  | { readonly what: 'one-folder' }
  | { readonly what: 'no-files-wanted'; readonly files: readonly string[] }
  /** One of them at least. */
  | { readonly what: 'needs-option'; readonly options: readonly string[] }
  | { readonly what: 'bad-value'; readonly option: string; readonly text: string; readonly fault: ValueFault }
  | { readonly what: 'unknown-belt'; readonly id: string; readonly ids: readonly string[] }
  | { readonly what: 'batch-not-read'; readonly path: string; readonly fault: FileFault }
  | { readonly what: 'batch-not-text'; readonly path: string }
  | { readonly what: 'batch-table'; readonly path: string; readonly fault: TableFault }
  | { readonly what: 'batch-column'; readonly path: string; readonly column: string; readonly columns: readonly string[] }
  | { readonly what: 'batch-no-file-column'; readonly path: string }
  | { readonly what: 'batch-no-file'; readonly path: string; readonly row: number }
  | {
      readonly what: 'batch-cell';
      readonly path: string;
      readonly row: number;
      readonly column: string;
      readonly text: string;
      readonly fault: ValueFault;
    };

/** Why the bytes of a file could not be had. */
export type FileFault =
  | { readonly why: 'missing' }
  | { readonly why: 'folder' }
  | { readonly why: 'not-permitted' }
  | { readonly why: 'not-a-file' }
  | { readonly why: 'too-big'; readonly bytes: number; readonly limitBytes: number }
  | { readonly why: 'unreadable'; readonly code: string };

const NAMES: Readonly<Record<QuantityKind, string>> = {
  length: 'a length',
  'linear-density': 'a linear density',
  force: 'a force',
  mass: 'a mass',
  stiffness: 'a bending stiffness',
  frequency: 'a frequency',
  percent: 'a share',
  number: 'a number',
};

const EXAMPLES: Readonly<Record<QuantityKind, string>> = {
  length: '180mm',
  'linear-density': '8.4g/m',
  force: '8N',
  mass: '8.4g',
  stiffness: '1.2e-4',
  frequency: '110Hz',
  percent: '10%',
  number: '0.5',
};

const listed = (words: readonly string[]): string => words.filter((word) => word !== '').join(', ');

/** What is wrong with a text, and what would do; completes '… is'. */
function valueFaultText(fault: ValueFault): string {
  switch (fault.why) {
    case 'empty':
      return `empty. Write ${NAMES[fault.kind]} such as ${EXAMPLES[fault.kind]}.`;
    case 'not-a-number':
      return `not ${NAMES[fault.kind]}. Write one such as ${EXAMPLES[fault.kind]}.`;
    case 'ambiguous-number':
      return 'a number that may hold thousands or decimals. Write it with a decimal point and without a thousands sign.';
    case 'unknown-unit': {
      const units = listed(unitsOf(fault.kind));
      return `not ${NAMES[fault.kind]}: ${units === '' ? `'${fault.unit}' does not belong there` : `the unit '${fault.unit}' is not one of ${units}`}.`;
    }
    case 'needs-tooth-pitch':
      return 'in teeth, which have a length only with --belt.';
    case 'not-positive':
      return 'not above 0.';
    case 'not-a-range':
      return 'not two forces. Write them such as 5N..40N.';
    case 'range-upside-down':
      return 'not a range from low to high.';
    case 'not-a-fixity':
      return 'not a fixity. Write a number from 0 (hinged) to 1 (clamped), or pulley, idler, clamp or unknown; or two with a comma, one for each end.';
    case 'not-a-lie':
      return 'neither edge nor flat.';
    case 'ends-or-decimal':
      return "either one number or both ends. Write 0.1 (or 1.0) for the number, or '0;1' in quotes for the ends.";
    default:
      return assertNever(fault);
  }
}

export function tableFaultText(fault: TableFault): string {
  switch (fault.why) {
    case 'empty':
      return 'It holds no line with the names of the columns.';
    case 'unclosed-quote':
      return 'A quote is opened there and never closed.';
    case 'text-after-quote':
      return 'There is text after the closing quote.';
    case 'too-many-cells':
      return 'There are more cells than columns.';
    case 'column-without-name':
      return 'The column has no name.';
    case 'column-twice':
      return 'Two columns have this name.';
    default:
      return assertNever(fault.why);
  }
}

const rowText = (row: number): string => (row === 0 ? 'line of names' : `row ${row}`);

/** One line for each fault of a command. */
export function usageFaultText(fault: UsageFault): string {
  switch (fault.what) {
    case 'no-command':
      return `There is no command '${fault.command}'. There is: ${listed(fault.commands)}.`;
    case 'unknown-option':
      return `${fault.option}: there is no such option. --help lists them; a file of that name may follow --.`;
    case 'missing-value':
      return `${fault.option}: its value is missing.`;
    case 'unexpected-value':
      return `${fault.option}: takes no value.`;
    case 'option-twice':
      return `${fault.option}: was given twice.`;
    case 'no-files':
      return 'Name at least one WAV file, or a table of them with --batch. --help tells more.';
    case 'no-files-wanted':
      return `This command reads no recordings: ${listed(fault.files)}.`;
    case 'needs-option':
      return `${fault.options.join(' or ')} is needed. --help tells more.`;
    case 'one-folder':
      return 'Name one folder of takes. --help tells more.';
    case 'bad-value':
      return `${fault.option}: '${fault.text}' is ${valueFaultText(fault.fault)}`;
    case 'unknown-belt':
      return `--belt: there is no belt '${fault.id}'. There are: ${listed(fault.ids)}.`;
    case 'batch-not-read':
      return `--batch: ${fault.path}: ${fileFaultText(fault.fault)}`;
    case 'batch-not-text':
      return `--batch: ${fault.path}: It is not text in UTF-8. Save the table as CSV in UTF-8.`;
    case 'batch-table':
      return `${fault.path}, ${rowText(fault.fault.row)}, column ${fault.fault.column}: ${tableFaultText(fault.fault)}`;
    case 'batch-column':
      return `${fault.path}, ${rowText(0)}, column ${fault.column}: There is no such column. There are: ${listed(fault.columns)}.`;
    case 'batch-no-file-column':
      return `${fault.path}, ${rowText(0)}: The column file is missing.`;
    case 'batch-no-file':
      return `${fault.path}, row ${fault.row}, column file: The file is not named.`;
    case 'batch-cell':
      return `${fault.path}, row ${fault.row}, column ${fault.column}: '${fault.text}' is ${valueFaultText(fault.fault)}`;
    default:
      return assertNever(fault);
  }
}

const inMegabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;

/** Why a file could not be opened, as a sentence. */
export function fileFaultText(fault: FileFault): string {
  switch (fault.why) {
    case 'missing':
      return 'There is no such file.';
    case 'folder':
      return 'It is a folder, not a file.';
    case 'not-permitted':
      return 'It may not be read: permission is missing.';
    case 'not-a-file':
      return 'It is a device, not a file.';
    case 'too-big':
      return `It has ${inMegabytes(fault.bytes)}; up to ${inMegabytes(fault.limitBytes)} are read. Cut out the plucks and measure that.`;
    case 'unreadable':
      return `It could not be read from its place (${fault.code}).`;
    default:
      return assertNever(fault);
  }
}

/** A fault of the program itself, met while one file was measured; the other files are still answered. */
export const brokenText = (detail: string): string => `It could not be measured because of a fault in the program (${detail}).`;

const GRADE_WORDS: Readonly<Record<Grade, string>> = { trusted: 'trusted', doubtful: 'doubtful', unusable: 'unusable' };

export const cliEn = {
  columns: {
    file: 'File',
    force: 'Force',
    interval: '95 % interval',
    frequency: 'Frequency',
    grade: 'Grade',
    sound: 'Sound',
    plucks: 'Plucks',
  },
  grade: (grade: Grade): string => GRADE_WORDS[grade],
  pluck: (number: number, startS: string): string => `  pluck ${number} at ${startS}`,
  plucksUsed: (used: number, heard: number): string => (used === heard ? String(heard) : `${used} of ${heard}`),
  leftOut: 'left out',
  notTold: '–',
  between: 'to',
  above: (bound: string): string => `above ${bound}`,
  below: (bound: string): string => `below ${bound}`,
  nothing: 'nothing heard',
  notRead: 'not read',
  note: (note: string): string => `Note: ${note}.`,
  expect: (force: string, { valueHz, lowHz, highHz }: { valueHz: number; lowHz: number; highHz: number }): string =>
    `${force} should ring at ${formatQuantity(valueHz, 'Hz', { significantDigits: 3 })}, in 95 % of cases from ${formatInterval({ low: lowHz, high: highHz, unit: 'Hz', between: 'to' })}.`,
  frequencyNeeds: 'Without --span, and --belt or --density, no frequency follows from a force.',
  forceNeeds: 'Without --span, and --belt or --density, a frequency is all that sound can tell.',
};

/** What --help prints. */
export function measureHelp(belts: readonly { readonly id: string; readonly label: string }[]): string {
  const width = Math.max(...belts.map(({ id }) => id.length));
  const span = formatQuantity(ASSUMED.spanLengthM * 1000, 'mm', { atMostDigits: 3 });
  return `Measures how tight a belt is from recordings of its plucked span.

  npm run --silent measure -- [options] FILE.wav ...

  --span 180mm         free belt from tangent point to tangent point (mm, cm, m, in, ft, teeth)
  --belt ID            a belt of the catalogue below
  --density 8.4g/m     mass of the belt for each metre (g/m, kg/m); beats the belt's own
  --stiffness 1.2e-4   bending stiffness in N m²; beats the belt's own
  --fixity 0.5         how the ends are held, 0 hinged to 1 clamped, or one of pulley, idler, clamp,
                       unknown; 0,1 or clamp,pulley tells each end
  --lie edge|flat      how the wide face of the belt lies; flat, it hangs through and rings higher
  --tolerance 10%      the doubt that still serves; ${formatPercent(DEFAULT_TOLERANCE_RELATIVE)} unless told
  --expect 5N..40N     where to look for the force (N, kN, lbf, kgf, ozf); never pulls the answer
  --batch TAKES.csv    a table of recordings: file, span_mm, density_g_per_m, stiffness_n_m2, fixity,
                       tolerance_percent, u_span_mm, u_density_g_per_m, u_stiffness_n_m2, u_fixity
  --frequency 112Hz    a first partial that was read elsewhere: its force, without a file
  --force 8N           a force: the first partial to expect
  --json               one JSON object on one line for each file
  --help               this text

Options may stand before or after the files; after -- everything is a file. Of a table only the column
file is needed; its paths count from the table's folder, and an empty cell is taken from the option.
With files on the line too, they come before those of the table.

A value may carry its standard uncertainty: 180mm+-0.5mm or 180mm+-1%. Without one it is taken as
${span} of the span, ${formatPercent(ASSUMED.linearDensityRelative)} of the density, ${formatPercent(ASSUMED.bendingStiffnessRelative)} of the stiffness, ${ASSUMED.endFixity} of the fixity
and ${formatPercent(ASSUMED.frequencyRelative, { decimals: 1 })} of a frequency. The belt is taken to lie on edge, so that it does not sag, unless --lie tells.

What was typed is answered before the files. With --json, --force gives {"told":"8N","expected":{forceN,
frequencyHz,frequencyLowHz,frequencyHighHz}} (null without span or belt), --frequency gives
{"told":"112Hz","reading":{...}}, a reading as of a file; its soundGrade says only that nothing speaks
against a sound that was not heard.

JSON figures are rounded to six digits. Exit status: 0 all files were read, 1 some could not be, 2 the
command was not understood.

Belts:
${belts.map(({ id, label }) => `  ${id.padEnd(width)}  ${label}`).join('\n')}
`;
}
