/** What a file would change in what is kept: merged version by version, or put in its place; and the difference in a person's terms. */

import { type KeptDocument, ordered, SECTION_NAMES, type SectionName, VERSIONED_SECTIONS } from '../../../shared/document.ts';
import { mergedVersions, sortedOut } from '../../core/logbook/merge.ts';
import { contentText, type Item, stampOf } from '../../core/logbook/versions.ts';

type Versions = readonly Item[];

/** All versions of a section: those in use, and those that were made beside them. */
const versionsOf = (document: KeptDocument, section: SectionName): Versions => [
  ...(document[section] as Versions),
  ...document.rivals.filter((rival) => rival.section === section).map(({ item }) => item as Item),
];

/** Nothing is lost: where both sides changed an item apart from each other, the other version stays as a rival until a person chooses. */
export function mergedDocument(current: KeptDocument, incoming: KeptDocument): KeptDocument {
  const rivals: unknown[] = [];
  const sections = VERSIONED_SECTIONS.map((section) => {
    const { items, conflicts } = sortedOut(mergedVersions(versionsOf(current, section), versionsOf(incoming, section)));
    for (const conflict of conflicts) for (const item of conflict.rivals) rivals.push({ id: rivalId(item), section, item });
    return [section, ordered(items as never)];
  });
  return { ...(Object.fromEntries(sections) as unknown as KeptDocument), rivals: rivals as KeptDocument['rivals'] };
}

const rivalId = (item: Item): string => `${item.id}.${stampOf(item).split('~')[1] ?? ''}`;

/** The items of one section by what becomes of them. */
export interface SectionChange {
  readonly section: SectionName;
  readonly added: readonly Item[];
  readonly changed: readonly Item[];
  readonly removed: readonly Item[];
  readonly same: number;
}

/** Sections with nothing before and after are left out. */
export function documentChanges(before: KeptDocument, after: KeptDocument): readonly SectionChange[] {
  return SECTION_NAMES.map((section) => {
    const old = new Map((before[section] as readonly Item[]).map((item) => [item.id, item]));
    const [added, changed]: [Item[], Item[]] = [[], []];
    let same = 0;
    for (const item of after[section] as readonly Item[]) {
      const was = old.get(item.id);
      if (!was) added.push(item);
      else if (contentText(was) !== contentText(item)) changed.push(item);
      else same += 1;
      old.delete(item.id);
    }
    return { section, added, changed, removed: [...old.values()], same };
  }).filter(({ added, changed, removed, same }) => added.length + changed.length + removed.length + same > 0);
}
