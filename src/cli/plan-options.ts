/** Options of the plan command, read and checked. */

import type { CatalogueBelt } from '../core/belt/catalogue.ts';
import type { ForceRange } from '../core/setup.ts';
import type { UsageFault } from '../words/cli-en.ts';
import { type OptionNames, splitArguments } from './arguments.ts';
import { spanOptions, TELLING_NAMES } from './span-options.ts';
import type { ToldTake } from './told.ts';
import { type Usage, usage } from './usage.ts';
import { toldForces, toldQuantity } from './values.ts';

export interface PlanOptions {
  readonly kind: 'options';
  readonly told: ToldTake;
  readonly forceN: ForceRange;
  readonly lowestHz?: number | undefined;
  readonly json: boolean;
}

const NAMES: OptionNames = {
  ...TELLING_NAMES,
  '--force': 'value',
  '--lowest-hz': 'value',
  '--json': 'flag',
  '--help': 'flag',
  '-h': 'flag',
};

/** Every fault of a value is told at once; of the shape of the command the first alone. */
export function planOptions(
  words: readonly string[],
  catalogue: readonly CatalogueBelt[],
): PlanOptions | { readonly kind: 'help' } | Usage {
  const split = splitArguments(words, NAMES);
  if (split.kind === 'usage') return split;
  const { options, files } = split;
  if (options.has('--help') || options.has('-h')) return { kind: 'help' };
  const faults: UsageFault[] = [];
  const { told, read } = spanOptions(options, { catalogue, faults });
  const forceN = read('--force', toldForces);
  const lowestHz = read('--lowest-hz', (text) => toldQuantity(text, { kind: 'frequency', defaultUnit: 'Hz' }))?.value;
  if (!options.has('--force')) faults.push({ what: 'needs-option', options: ['--force'] });
  if (!options.has('--belt') && !options.has('--density')) faults.push({ what: 'needs-option', options: ['--belt', '--density'] });
  if (files.length > 0) faults.push({ what: 'no-files-wanted', files });
  return faults.length > 0 || forceN === undefined
    ? usage(...faults)
    : { kind: 'options', told, forceN, lowestHz, json: options.has('--json') };
}
