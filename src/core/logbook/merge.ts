/** Merges what two devices kept, by id and ancestry, without loss: where both changed an item, both versions stay until a person chooses. */

import { canonicalText, changed, contentText, type Item, stampOf } from './versions.ts';

/** One id of a merged section: the version in use, and those that were made beside it. */
export interface Conflict<T extends Item> {
  readonly id: string;
  readonly used: T;
  /** At least one, latest first. */
  readonly rivals: readonly T[];
}

/** Later time first; of one time the greater text, so that every device chooses alike. */
function inOrder(a: Item, b: Item): number {
  if (a.changedAt !== b.changedAt) return a.changedAt < b.changedAt ? 1 : -1;
  const [one, other] = [contentText(a), contentText(b)];
  if (one === other) return 0;
  return one < other ? 1 : -1;
}

/** The same content with two ancestries is one version with both. */
function joined<T extends Item>(a: T, b: T): T {
  const earlier = [...new Set([...(a.earlier ?? []), ...(b.earlier ?? [])])].sort();
  if (earlier.length === 0) return a;
  return { ...a, earlier };
}

/**
 * All versions of both sides but those from which another one was made. Several versions of one id stay where neither was made from the
 * other; `sortedOut` tells which is used.
 *
 * Commutative, associative and idempotent up to order, which is by id, then latest first: a set of versions grows, and what a later
 * version has replaced falls out whichever way it comes in.
 */
export function mergedVersions<T extends Item>(...sides: readonly (readonly T[])[]): readonly T[] {
  const versions = new Map<string, T>();
  for (const item of sides.flat()) {
    const key = `${item.id}\n${stampOf(item)}`;
    const same = versions.get(key);
    versions.set(key, same ? joined(same, item) : joined(item, item));
  }
  const replaced = new Set<string>();
  for (const { id, earlier } of versions.values()) for (const stamp of earlier ?? []) replaced.add(`${id}\n${stamp}`);
  const left = [...versions].filter(([key]) => !replaced.has(key)).map(([, item]) => item);
  return left.sort((a, b) => (a.id === b.id ? inOrder(a, b) : a.id < b.id ? -1 : 1));
}

export interface SortedOut<T extends Item> {
  /** One for each id: the version in use. */
  readonly items: readonly T[];
  readonly conflicts: readonly Conflict<T>[];
}

/** Which of the versions are in use, and where a person has to choose. */
export function sortedOut<T extends Item>(versions: readonly T[]): SortedOut<T> {
  const byId = new Map<string, T[]>();
  for (const item of versions) byId.set(item.id, [...(byId.get(item.id) ?? []), item]);
  const items: T[] = [];
  const conflicts: Conflict<T>[] = [];
  for (const [id, same] of byId) {
    const [used, ...rivals] = same.sort(inOrder);
    items.push(used!);
    if (rivals.length > 0) conflicts.push({ id, used: used!, rivals });
  }
  return { items, conflicts };
}

/** The version that ends a conflict: it has the chosen content and was made from all of them, so that every device that merges it agrees. */
export function settled<T extends Item>({ used, rivals }: Conflict<T>, chosen: T, now: string): T {
  const all = [used, ...rivals];
  const next = changed(chosen, {}, now);
  const ancestors = new Set([...all.flatMap(({ earlier }) => earlier ?? []), ...all.map(stampOf)]);
  return { ...next, earlier: [...ancestors].sort() };
}

/** What stands differently in two versions, field by field, for showing them side by side. */
export interface FieldDifference {
  /** Names down to the field, such as `target.lowN`. */
  readonly path: string;
  readonly one: unknown;
  readonly other: unknown;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export function differences(one: unknown, other: unknown, path = ''): readonly FieldDifference[] {
  if (isRecord(one) && isRecord(other)) {
    const names = [...new Set([...Object.keys(one), ...Object.keys(other)])].filter((name) => path !== '' || !ANCESTRY.includes(name));
    return names.sort().flatMap((name) => differences(one[name], other[name], path === '' ? name : `${path}.${name}`));
  }
  return canonicalText(one ?? null) === canonicalText(other ?? null) ? [] : [{ path, one, other }];
}

const ANCESTRY: readonly string[] = ['changedAt', 'earlier'];
