/** Between the document and the rows that it is kept in: what is read is checked, what is written is only what has changed. */

import { type KeptDocument, ordered, type RawDocument, SECTION_NAMES, SECTIONS, type SectionName } from '../../shared/document.ts';
import type { DamagedItem, OpenedDocument } from '../ports.ts';

export interface Row {
  readonly section: string;
  readonly id: string;
  readonly item: unknown;
}

const isSection = (name: string): name is SectionName => Object.hasOwn(SECTIONS, name);

/** A row that cannot be read is named and left where it is; one of a section that nobody knows likewise. */
export function documentOf(rows: readonly Row[]): OpenedDocument {
  const sections = Object.fromEntries(SECTION_NAMES.map((name) => [name, [] as unknown[]])) as Record<SectionName, unknown[]>;
  const damaged: DamagedItem[] = [];
  for (const { section, id, item } of rows) {
    if (!isSection(section)) continue;
    const checked = SECTIONS[section].safeParse(item);
    if (checked.success) sections[section].push(checked.data);
    else damaged.push({ section, id, path: (checked.error.issues[0]?.path ?? []).map(String).join('.') });
  }
  const inOrder = SECTION_NAMES.map((name) => [name, ordered(sections[name] as { id: string }[])]);
  return { kind: 'opened', document: Object.fromEntries(inOrder) as KeptDocument, damaged };
}

export interface RowChanges {
  readonly put: readonly Row[];
  readonly remove: readonly (readonly [section: string, id: string])[];
}

/** Items are compared by identity: a pure change leaves alone what it does not touch. */
export function rowChanges(before: KeptDocument, after: KeptDocument): RowChanges {
  const put: Row[] = [];
  const remove: (readonly [string, string])[] = [];
  for (const section of SECTION_NAMES) {
    if (before[section] === after[section]) continue;
    const old = new Map<string, unknown>(before[section].map((item) => [item.id, item]));
    for (const item of after[section]) {
      if (old.get(item.id) !== item) put.push({ section, id: item.id, item: writable(section, item) });
      old.delete(item.id);
    }
    for (const id of old.keys()) remove.push([section, id]);
  }
  return { put, remove };
}

/** What could not be read again must not be written: a number that is none would be found only when it is too late. */
function writable(section: SectionName, item: unknown): unknown {
  const checked = SECTIONS[section].safeParse(item);
  if (checked.success) return checked.data;
  const [issue] = checked.error.issues;
  throw new RangeError(`${section} cannot keep this: ${issue?.path.join('.')}: ${issue?.message}`);
}

/** Rows of any version as sections of items, for a migration, and back. */
export function rawOf(rows: readonly Row[]): RawDocument {
  const sections: Record<string, unknown[]> = {};
  for (const { section, item } of rows) {
    sections[section] ??= [];
    sections[section].push(item);
  }
  return sections;
}

export function rowsOf(document: RawDocument): readonly Row[] {
  return Object.entries(document).flatMap(([section, items]) => items.map((item) => ({ section, id: (item as { id: string }).id, item })));
}
