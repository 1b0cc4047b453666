/** The document as one JSON file: written whole, and read with the path of the first fault where it does not fit. */

import {
  DOCUMENT_VERSION,
  EMPTY_DOCUMENT,
  type KeptDocument,
  MIGRATIONS,
  type Migration,
  migrated,
  ordered,
  type RawDocument,
  SECTION_NAMES,
  SECTIONS,
  type SectionName,
} from '../document.ts';
import { wantedText } from './wanted-text.ts';

/** Tells this program's files from all others. */
export const FILE_FORMAT = 'spanwright document';

export interface SavedFile {
  readonly format: typeof FILE_FORMAT;
  readonly version: number;
  readonly savedAt: string;
}

/** @param savedAt  ISO 8601 in UTC */
export function fileText(document: KeptDocument, savedAt: string): string {
  return `${JSON.stringify({ format: FILE_FORMAT, version: DOCUMENT_VERSION, savedAt, ...document }, null, 1)}\n`;
}

/**
 * Why a file was not taken. `not-json`: with the place that the reader stopped at, in its own words. `foreign`: something else's file. `newer`:
 * of a later version. `fault`: names down to the first thing that does not fit.
 */
export type FileRefusal =
  | { readonly ok: false; readonly why: 'not-json'; readonly detail: string }
  | { readonly ok: false; readonly why: 'foreign' }
  | { readonly ok: false; readonly why: 'newer'; readonly version: number }
  | { readonly ok: false; readonly why: 'fault'; readonly path: string; readonly detail: string };

export type ReadDocument = { readonly ok: true; readonly document: KeptDocument; readonly savedAt?: string | undefined } | FileRefusal;

interface Options {
  readonly version?: number | undefined;
  readonly steps?: Readonly<Record<number, Migration>> | undefined;
}

/** Nothing is taken from a file that has a fault anywhere: half of a document would look whole. */
export function readFileText(text: string, { version: current = DOCUMENT_VERSION, steps = MIGRATIONS }: Options = {}): ReadDocument {
  const parsed = parsedJson(text);
  if (!parsed.ok) return parsed;
  const file = parsed.value;
  if (typeof file !== 'object' || file === null || !('format' in file) || file.format !== FILE_FORMAT) return { ok: false, why: 'foreign' };
  const { format: _, version, savedAt, ...sections } = file as { format: unknown; version?: unknown; savedAt?: unknown };
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fault('version', 'a whole number above zero is needed');
  if (version > current) return { ok: false, why: 'newer', version };
  const notList = Object.entries(sections).find(([, items]) => !Array.isArray(items));
  if (notList) return fault(notList[0], 'a list is needed');
  const deep = tooDeepIn(sections);
  if (deep !== undefined) return fault(deep, 'lists and groups stand inside one another more often than a file of this program has them');
  const checked = checkedSections(migrated(sections as RawDocument, version, { to: current, steps }));
  return 'document' in checked
    ? { ok: true, document: checked.document, savedAt: typeof savedAt === 'string' ? savedAt : undefined }
    : checked;
}

/** Several times what any item needs, and far less than what a checker or a writer that calls itself can bear. */
const DEEPEST = 64;

/** Section and number of the first item that is nested too deeply; looked for without a call for each level. */
function tooDeepIn(sections: object): string | undefined {
  for (const [name, items] of Object.entries(sections)) {
    for (const [index, item] of (items as readonly unknown[]).entries()) {
      let level: readonly unknown[] = [item];
      for (let depth = 0; level.length > 0; depth++) {
        if (depth > DEEPEST) return `${name}.${index}`;
        level = level.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []));
      }
    }
  }
  return undefined;
}

function checkedSections(sections: RawDocument): { readonly document: KeptDocument } | FileRefusal {
  const stranger = Object.keys(sections).find((name) => !Object.hasOwn(SECTIONS, name));
  if (stranger !== undefined) return fault(stranger, 'this section is not known');
  const document: Record<SectionName, readonly unknown[]> = { ...EMPTY_DOCUMENT };
  for (const name of SECTION_NAMES) {
    const items: unknown[] = [];
    const ids = new Set<string>();
    for (const [index, item] of (sections[name] ?? []).entries()) {
      const checked = SECTIONS[name].safeParse(item);
      if (!checked.success) {
        const [issue] = checked.error.issues;
        return fault([name, index, ...(issue?.path ?? [])].map(String).join('.'), issue ? wantedText(issue) : '');
      }
      if (ids.has(checked.data.id)) return fault(`${name}.${index}.id`, 'another item of this section has the same id');
      ids.add(checked.data.id);
      items.push(checked.data);
    }
    document[name] = ordered(items as { id: string }[]);
  }
  return { document: document as KeptDocument };
}

const fault = (path: string, detail: string): FileRefusal => ({ ok: false, why: 'fault', path, detail });

function parsedJson(text: string): { readonly ok: true; readonly value: unknown } | FileRefusal {
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/u, '')) };
  } catch (fault) {
    return { ok: false, why: 'not-json', detail: fault instanceof Error ? fault.message : '' };
  }
}
