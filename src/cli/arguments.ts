/** Splits a command line into options and files. Strict: what is not known is a fault, never a file. */

import { type Usage, usage } from './usage.ts';

/** Name of each option with its dashes, and whether a value follows it; `values`: it may be given more than once. */
export type OptionNames = Readonly<Record<string, 'value' | 'values' | 'flag'>>;

export interface Arguments {
  readonly kind: 'arguments';
  /** Text of each option that was given; a flag has the empty text. */
  readonly options: ReadonlyMap<string, string>;
  /** Texts of each option that may be given more than once, in order. */
  readonly lists: ReadonlyMap<string, readonly string[]>;
  readonly files: readonly string[];
}

/**
 * Options may stand before, between and after files, as `--span 150mm` or `--span=150mm`; after `--` everything is a file.
 *
 * A value may begin with one dash, as a negative number does, but not with two.
 */
export function splitArguments(words: readonly string[], names: OptionNames): Arguments | Usage {
  const options = new Map<string, string>();
  const lists = new Map<string, string[]>();
  const files: string[] = [];
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index]!;
    if (word === '--') {
      files.push(...words.slice(index + 1));
      break;
    }
    if (!word.startsWith('-') || word === '-') {
      files.push(word);
      continue;
    }
    const equals = word.indexOf('=');
    const option = equals < 0 ? word : word.slice(0, equals);
    const kind = Object.hasOwn(names, option) ? names[option] : undefined;
    if (!kind) return usage({ what: 'unknown-option', option });
    if (options.has(option)) return usage({ what: 'option-twice', option });
    if (kind === 'flag') {
      if (equals >= 0) return usage({ what: 'unexpected-value', option });
      options.set(option, '');
      continue;
    }
    const value = equals < 0 ? words[index + 1] : word.slice(equals + 1);
    if (value === undefined || value === '' || (equals < 0 && value.startsWith('--'))) return usage({ what: 'missing-value', option });
    if (kind === 'values') lists.set(option, [...(lists.get(option) ?? []), value]);
    else options.set(option, value);
    if (equals < 0) index += 1;
  }
  return { kind: 'arguments', options, lists, files };
}
