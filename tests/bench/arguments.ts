/** What is asked of the benchmark on its command line. */

import { parseArgs } from 'node:util';

export interface BenchArguments {
  readonly seed: number;
  readonly takesPerKind: number;
  readonly sections: readonly string[];
  /** Names of kinds, belts or not; all where it is missing. */
  readonly kinds?: readonly string[] | undefined;
  /** Print each take that was not right. */
  readonly list: boolean;
  /** How many belts the belt bench is repeated over. */
  readonly belts: number;
}

export const DEFAULT_SEED = 20_250;

export function benchArguments(given: readonly string[], known: readonly string[]): BenchArguments | { readonly fault: string } {
  const { values, positionals } = parseArgs({
    args: [...given],
    options: {
      seed: { type: 'string', default: String(DEFAULT_SEED) },
      takes: { type: 'string', default: '12' },
      belts: { type: 'string', default: '200' },
      section: { type: 'string' },
      kinds: { type: 'string' },
      list: { type: 'boolean', default: false },
    },
    allowPositionals: true,
  });
  const named = [...positionals, ...(values.section?.split(',') ?? [])];
  const sections = named.length > 0 ? named : known;
  const strange = sections.find((section) => !known.includes(section));
  if (strange !== undefined) return { fault: `There is no section ${strange}. There are: ${known.join(', ')}.` };
  const [seed, takesPerKind, belts] = [Number(values.seed), Number(values.takes), Number(values.belts)];
  if (!Number.isInteger(seed) || !Number.isInteger(takesPerKind) || takesPerKind < 1) return { fault: 'Seed and takes are whole numbers.' };
  if (!Number.isInteger(belts) || belts < 1) return { fault: 'Belts is a whole number from 1.' };
  return { seed, takesPerKind, sections, kinds: values.kinds?.split(','), list: values.list, belts };
}
