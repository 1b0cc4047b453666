/** Options of the measure command, read and checked. */

import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import type { UsageFault } from '../words/cli-en.ts';
import { type OptionNames, splitArguments } from './arguments.ts';
import { spanOptions, TELLING_NAMES } from './span-options.ts';
import type { Told, ToldTake } from './told.ts';
import { type Usage, usage } from './usage.ts';
import { toldQuantity } from './values.ts';

export interface MeasureOptions {
  readonly kind: 'options';
  readonly files: readonly string[];
  /** Path of the batch table, as typed. */
  readonly batch?: string | undefined;
  readonly json: boolean;
  readonly help: boolean;
  /** A frequency that was read elsewhere, as typed and in Hz. */
  readonly frequency?: TypedValue | undefined;
  /** A force whose frequency is asked for, as typed and in newtons. */
  readonly force?: TypedValue | undefined;
  /** What holds for every file that a table tells nothing else of. */
  readonly told: ToldTake;
}

export interface TypedValue {
  readonly text: string;
  readonly told: Told;
}

const NAMES: OptionNames = {
  ...TELLING_NAMES,
  '--frequency': 'value',
  '--force': 'value',
  '--batch': 'value',
  '--json': 'flag',
  '--help': 'flag',
  '-h': 'flag',
};

/** Every fault of a value is told at once; of the shape of the command the first alone. */
export function measureOptions(words: readonly string[], catalogue: readonly CatalogueBelt[]): MeasureOptions | Usage {
  const split = splitArguments(words, NAMES);
  if (split.kind === 'usage') return split;
  const { options, files } = split;
  const faults: UsageFault[] = [];
  const { told, read } = spanOptions(options, { catalogue, faults });
  const typed = (option: string, kind: 'frequency' | 'force', defaultUnit: string): TypedValue | undefined => {
    const value = read(option, (text) => toldQuantity(text, { kind, defaultUnit }));
    return value && { text: options.get(option)!, told: value };
  };
  const frequency = typed('--frequency', 'frequency', 'Hz');
  const force = typed('--force', 'force', 'N');
  const help = options.has('--help') || options.has('-h');
  const batch = options.get('--batch');
  const asksWithoutFile = options.has('--frequency') || options.has('--force');
  if (files.length === 0 && batch === undefined && !asksWithoutFile) faults.push({ what: 'no-files' });
  if (faults.length > 0 && !help) return usage(...faults);
  return { kind: 'options', files, batch, json: options.has('--json'), help, frequency, force, told };
}
