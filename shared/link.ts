/**
 * A setup as a link: every field as it was typed, readable, after the `#` of the page's address, so that no server is told. What comes in by
 * a link may be cut, old or hostile; it is checked here, and the fault is named.
 */

import { linkedBeltSchema } from './link-belt.ts';
import { z } from './schema.ts';

/** Fields are typed texts; none holds more. */
const LONGEST_TEXT = 120;
/** Codes for cameras hold some 2,900 characters; a setup has a tenth of that. */
export const LONGEST_LINK = 2000;
const VERSION = '1';

/** What cannot stand in a field: control characters, signs that turn the writing round, and what a broken encoding leaves behind. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\u2028\u2029\ufffd]/u;
const text = z
  .string()
  .max(LONGEST_TEXT)
  .refine((value) => !UNPRINTABLE.test(value));
const end = z.enum(['unknown', 'pulley', 'idler', 'clip', 'bench']);

const fields = {
  beltId: text.min(1),
  linearDensity: text,
  toothPitch: text,
  bendingStiffness: text,
  spanLength: text,
  spanKnownTo: text,
  targetFrom: text,
  targetTo: text,
  forceUnit: text.min(1),
  tolerance: text,
  ends: z.tuple([end, end]),
  lie: z.enum(['edge', 'flat']).optional(),
  /** The kept belt that `beltId` names, where the other device may not have it. */
  keptBelt: linkedBeltSchema.optional(),
  weighing: z
    .strictObject({ beltId: text, kind: z.enum(['piece', 'loop']), length: text, mass: text, scaleStep: text, density: text })
    .optional(),
} as const;

const linkedSetupSchema = z.strictObject(fields);
export type LinkedSetup = z.output<typeof linkedSetupSchema>;

/** Short names in the link, by field; never change once published. */
const NAMES = {
  belt: 'beltId',
  density: 'linearDensity',
  pitch: 'toothPitch',
  stiffness: 'bendingStiffness',
  span: 'spanLength',
  known: 'spanKnownTo',
  from: 'targetFrom',
  to: 'targetTo',
  unit: 'forceUnit',
  tolerance: 'tolerance',
  ends: 'ends',
  lie: 'lie',
  weighed: 'weighing',
  own: 'keptBelt',
} as const satisfies Record<string, keyof LinkedSetup>;

/** What a field holds where the link does not name it. */
const UNNAMED: LinkedSetup = {
  beltId: 'own',
  linearDensity: '',
  toothPitch: '',
  bendingStiffness: '',
  spanLength: '',
  spanKnownTo: '1',
  targetFrom: '',
  targetTo: '',
  forceUnit: 'N',
  tolerance: '',
  ends: ['unknown', 'unknown'],
};

const WEIGHING_PARTS = ['kind', 'length', 'mass', 'scaleStep', 'density', 'beltId'] as const;

/** @returns `v=1&belt=…`: what follows the `?` */
export function linkOf(setup: LinkedSetup): string {
  const parts: string[] = [`v=${VERSION}`];
  for (const [name, field] of Object.entries(NAMES)) {
    const value = textOf(setup, field);
    if (value !== textOf(UNNAMED, field)) parts.push(`${name}=${encodeURIComponent(value)}`);
  }
  return parts.join('&');
}

function textOf(setup: LinkedSetup, field: keyof LinkedSetup): string {
  const value = setup[field];
  if (value === undefined) return '';
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.join(',');
  if (field === 'keptBelt') return JSON.stringify(value);
  const weighing = value as NonNullable<LinkedSetup['weighing']>;
  return WEIGHING_PARTS.map((part) => encodeURIComponent(weighing[part]).replaceAll('~', '%7E')).join('~');
}

/** `field`: the name as it stands in the link. */
export type LinkFault =
  | { readonly kind: 'link-fault'; readonly why: 'too-long' | 'empty' | 'other-version' }
  | { readonly kind: 'link-fault'; readonly why: 'unknown-field' | 'field-twice' | 'bad-field' | 'bad-encoding'; readonly field: string };

/** @param query  what follows the `?`, as it stands in the address */
export function readLink(query: string): LinkedSetup | LinkFault {
  if (query.length > LONGEST_LINK) return { kind: 'link-fault', why: 'too-long' };
  const told = new Map<string, string>();
  for (const part of query.split('&').filter((one) => one !== '')) {
    const at = part.indexOf('=');
    const name = at < 0 ? part : part.slice(0, at);
    const value = decoded(at < 0 ? '' : part.slice(at + 1));
    const field = shown(name);
    if (name !== 'v' && !Object.hasOwn(NAMES, name)) return { kind: 'link-fault', why: 'unknown-field', field };
    if (told.has(name)) return { kind: 'link-fault', why: 'field-twice', field };
    if (value === undefined) return { kind: 'link-fault', why: 'bad-encoding', field };
    told.set(name, value);
  }
  if (told.size === 0) return { kind: 'link-fault', why: 'empty' };
  if (told.get('v') !== VERSION) return { kind: 'link-fault', why: 'other-version' };
  const setup: Record<string, unknown> = { ...UNNAMED };
  for (const [name, field] of Object.entries(NAMES)) {
    const value = told.get(name);
    if (value !== undefined) setup[field] = heldBy(field, value);
  }
  const checked = linkedSetupSchema.safeParse(setup);
  if (checked.success) return checked.data;
  const field = checked.error.issues[0]?.path[0];
  const name = Object.entries(NAMES).find(([, of]) => of === field)?.[0] ?? '';
  return { kind: 'link-fault', why: 'bad-field', field: name };
}

function heldBy(field: keyof LinkedSetup, value: string): unknown {
  if (field === 'ends') return value.split(',');
  if (field === 'keptBelt') return parsed(value);
  if (field !== 'weighing') return value;
  const parts = value.split('~').map(decoded);
  return parts.length === WEIGHING_PARTS.length ? Object.fromEntries(WEIGHING_PARTS.map((part, index) => [part, parts[index]])) : value;
}

function parsed(value: string): unknown {
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
}

function decoded(value: string): string | undefined {
  try {
    return decodeURIComponent(value);
  } catch {
    return undefined;
  }
}

/** A name from a link is told to a person only as far as it is plain. */
const shown = (name: string): string => name.replace(/[^\w.-]/gu, '?').slice(0, 24);
