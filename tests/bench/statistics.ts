/** Shares with their intervals, and quantiles; nothing of the estimator. */

export interface Share {
  readonly count: number;
  readonly of: number;
  /** Wilson's 95 % interval, 0 to 1. */
  readonly low: number;
  readonly high: number;
}

const Z = 1.959964;

export function share(count: number, of: number): Share {
  if (of === 0) return { count, of, low: 0, high: 1 };
  const part = count / of;
  const middle = (part + Z ** 2 / (2 * of)) / (1 + Z ** 2 / of);
  const half = (Z / (1 + Z ** 2 / of)) * Math.sqrt((part * (1 - part)) / of + Z ** 2 / (4 * of * of));
  return { count, of, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}

export const shareOf = <T>(items: readonly T[], holds: (item: T) => boolean): Share => share(items.filter(holds).length, items.length);

/** Linear between order statistics; undefined of nothing. */
export function quantile(values: readonly number[], part: number): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length === 0) return undefined;
  const at = part * (sorted.length - 1);
  const low = Math.floor(at);
  return sorted[low]! + (at - low) * (sorted[Math.min(low + 1, sorted.length - 1)]! - sorted[low]!);
}

export const median = (values: readonly number[]): number | undefined => quantile(values, 0.5);

export function grouped<T>(items: readonly T[], nameOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = nameOf(item);
    const group = groups.get(name);
    if (group) group.push(item);
    else groups.set(name, [item]);
  }
  return groups;
}
