/**
 * The one document that a person keeps: everything in it, its version, and how an older one becomes a current one. Each section holds items
 * with an id of their own; the store keeps one row for each.
 */

import { keptBeltSchema } from './document/belt.ts';
import { idSchema } from './document/common.ts';
import { keptEntrySchema } from './document/entry.ts';
import { keptGaugeSchema } from './document/gauge.ts';
import { machineSchema } from './document/machine.ts';
import { keptTakeSchema } from './document/take.ts';
import { z } from './schema.ts';

/** Goes up by one with each change of shape that older files do not fit; `MIGRATIONS` then gets a step. */
export const DOCUMENT_VERSION = 1;

const MERGED = {
  machines: machineSchema,
  belts: keptBeltSchema,
  takes: keptTakeSchema,
  gauges: keptGaugeSchema,
  entries: keptEntrySchema,
} as const;

/** A version of an item that two devices changed apart from each other, kept beside the one in use until a person chooses. */
const rivalSchema = z.discriminatedUnion('section', [
  z.strictObject({ id: idSchema, section: z.literal('machines'), item: MERGED.machines }),
  z.strictObject({ id: idSchema, section: z.literal('belts'), item: MERGED.belts }),
  z.strictObject({ id: idSchema, section: z.literal('takes'), item: MERGED.takes }),
  z.strictObject({ id: idSchema, section: z.literal('gauges'), item: MERGED.gauges }),
  z.strictObject({ id: idSchema, section: z.literal('entries'), item: MERGED.entries }),
]);

/** The sections, each with the schema of one item. Items of one section have ids of their own. */
export const SECTIONS = { ...MERGED, rivals: rivalSchema } as const;
/** Sections whose items have versions. */
export const VERSIONED_SECTIONS = Object.keys(MERGED) as readonly (keyof typeof MERGED)[];

export type SectionName = keyof typeof SECTIONS;
export const SECTION_NAMES = Object.keys(SECTIONS) as readonly SectionName[];

export type Item<Name extends SectionName> = z.infer<(typeof SECTIONS)[Name]>;
export type KeptDocument = { readonly [Name in SectionName]: readonly Item<Name>[] };

export const EMPTY_DOCUMENT: KeptDocument = { machines: [], belts: [], takes: [], gauges: [], entries: [], rivals: [] };

/** The one order of a section, wherever it was read from: as the items were made. */
export const ordered = <T extends { readonly id: string; readonly made?: { readonly at: string } | undefined }>(
  items: readonly T[],
): readonly T[] => items.toSorted((a, b) => (a.made?.at ?? '').localeCompare(b.made?.at ?? '') || a.id.localeCompare(b.id));

/** Sections of any version, unchecked. */
export type RawDocument = Readonly<Record<string, readonly unknown[]>>;

/** Step n makes a document of version n + 1 from one of version n; it must leave nothing out. */
export type Migration = (document: RawDocument) => RawDocument;
export const MIGRATIONS: Readonly<Record<number, Migration>> = {};

/**
 * @param version  of the document as it stands, at most `to`
 * @throws RangeError where a step is missing
 */
export function migrated(
  document: RawDocument,
  version: number,
  { to = DOCUMENT_VERSION, steps = MIGRATIONS }: { to?: number; steps?: Readonly<Record<number, Migration>> } = {},
): RawDocument {
  let current = document;
  for (let step = version; step < to; step += 1) {
    const migrate = steps[step];
    if (!migrate) throw new RangeError(`no step from document version ${step}`);
    current = migrate(current);
  }
  return current;
}
