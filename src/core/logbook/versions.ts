/** Versions of one kept item: which one was made from which, so that a merge can tell a newer version from a rival one. */

/** Anything that a document keeps under an id. Its other fields are its content. */
export interface Item {
  readonly id: string;
  /** When it was last changed, ISO 8601 in UTC. */
  readonly changedAt: string;
  /** Stamps of the versions that this one was made from, those of the earliest times first. */
  readonly earlier?: readonly string[] | undefined;
}

/** A version remembers so many ancestors; one that is older still is shown as a rival instead of being dropped unseen. */
const MOST_ANCESTORS = 64;

/** JSON with the keys of every object in order, so that equal content is equal text. Fields that are undefined are left out. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((one) => canonicalText(one ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  fields.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, field]) => `${JSON.stringify(name)}:${canonicalText(field)}`).join(',')}}`;
}

/** Content without its ancestry: what a person would call the same. */
export const contentText = ({ earlier: _, ...content }: Item): string => canonicalText(content);

/** 53-bit hash of text in two FNV-1a passes: tells two versions of one item apart, guards against nobody. */
function hash(text: string): string {
  let [a, b] = [0x811c9dc5, 0x01000193];
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ (unit + index), 0x85ebca6b);
  }
  return ((a >>> 0) * 0x200000 + ((b >>> 0) & 0x1fffff)).toString(36);
}

/** Name of one version: its time, and a hash of its content where two devices changed an item in the same millisecond. */
export const stampOf = (item: Item): string => `${item.changedAt}~${hash(contentText(item))}`;

/**
 * The version that a change makes of an item.
 *
 * @param now  ISO 8601 in UTC; a clock that went back still gives a later stamp, since order follows from ancestry
 */
export function changed<T extends Item>(item: T, change: Partial<Omit<T, 'id' | 'changedAt' | 'earlier'>>, now: string): T {
  return { ...item, ...change, changedAt: now, earlier: [...(item.earlier ?? []), stampOf(item)].slice(-MOST_ANCESTORS) };
}

/** Writes into each changed item which version it was made from, whoever changed it. Items that are new or as before stay as they are. */
export function withAncestry<T extends Item>(before: readonly T[], after: readonly T[]): readonly T[] {
  const known = new Map(before.map((item) => [item.id, item]));
  return after.map((item) => {
    const old = known.get(item.id);
    if (!old || old === item || contentText(old) === contentText(item)) return item;
    const stamp = stampOf(old);
    if (item.earlier?.includes(stamp)) return item;
    const ancestors = new Set([...(old.earlier ?? []), ...(item.earlier ?? []), stamp]);
    return { ...item, earlier: [...ancestors].slice(-MOST_ANCESTORS) };
  });
}
