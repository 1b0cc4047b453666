/** What a file should have held where a schema stopped, in plain words beside the path: 'a number is needed'. */
import type { z } from '../schema.ts';

const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of values',
};

/** Names from a file are told only as far as they are plain. */
const shown = (name: string): string => `‘${name.replace(/[^\w.-]/gu, '?').slice(0, 24)}’`;

const sized = (
  bound: 'at least' | 'at most',
  { origin, limit, inclusive }: { origin: string; limit: string; inclusive?: boolean | undefined },
) => {
  if (origin === 'string') return `text of ${bound} ${limit} characters is needed`;
  if (origin === 'array' || origin === 'set') return `a list of ${bound} ${limit} items is needed`;
  if (inclusive === false) return `a number ${bound === 'at least' ? 'above' : 'below'} ${limit} is needed`;
  return `a number of ${bound} ${limit} is needed`;
};

/** Schemas of ours say in their own words what a form or a rule wants. */
const isOwn = ({ code }: z.core.$ZodIssue): boolean => code === 'invalid_format' || code === 'custom';

export function wantedText(issue: z.core.$ZodIssue): string {
  if (!issue.message.startsWith('Invalid') && isOwn(issue)) return issue.message;
  switch (issue.code) {
    case 'invalid_type':
      return `${TYPES[issue.expected] ?? 'another kind of value'} is needed`;
    case 'too_small':
      return sized('at least', { origin: issue.origin, limit: String(issue.minimum), inclusive: issue.inclusive });
    case 'too_big':
      return sized('at most', { origin: issue.origin, limit: String(issue.maximum), inclusive: issue.inclusive });
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')} is needed`;
    case 'unrecognized_keys':
      return `${issue.keys.slice(0, 3).map(shown).join(', ')} is not known here`;
    case 'invalid_format':
      return issue.format === 'datetime' ? 'a time such as 2026-03-02T08:15:00Z is needed' : 'the text has another form than is needed';
    case 'invalid_union':
      return 'the kind named here is not known, or does not fit what stands beside it';
    default:
      return 'the value does not fit';
  }
}
