/** Versions that two devices made apart from each other: which stand beside each other, and what a person's choice makes of them. */

import { type KeptDocument, type SectionName, VERSIONED_SECTIONS } from '../../../shared/document.ts';
import { type Conflict, settled } from '../../core/logbook/merge.ts';
import type { Item } from '../../core/logbook/versions.ts';

export interface RivalVersions extends Conflict<Item> {
  readonly section: SectionName;
}

export function rivalVersions(document: KeptDocument): readonly RivalVersions[] {
  return VERSIONED_SECTIONS.flatMap((section) => {
    const rivals = document.rivals.filter((rival) => rival.section === section).map(({ item }) => item as Item);
    return [...new Set(rivals.map(({ id }) => id))].flatMap((id) => {
      const used = (document[section] as readonly Item[]).find((item) => item.id === id);
      return used ? [{ section, id, used, rivals: rivals.filter((rival) => rival.id === id) }] : [];
    });
  });
}

/** The chosen version is in use and the others are gone; it was made from all of them, so that every device that merges it agrees. */
export function withChosen(document: KeptDocument, versions: RivalVersions, chosen: Item, now: string): KeptDocument {
  const { section, id } = versions;
  const next = settled(versions, chosen, now);
  return {
    ...document,
    [section]: (document[section] as readonly Item[]).map((item) => (item.id === id ? next : item)),
    rivals: document.rivals.filter((rival) => rival.section !== section || (rival.item as Item).id !== id),
  };
}
