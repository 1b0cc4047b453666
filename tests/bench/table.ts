/** Tables and figures as they can be quoted in a document. */

import type { Share } from './statistics.ts';

export type Cell = string | number | undefined;

export function table(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const line = (cells: readonly Cell[]) => `| ${cells.map((cell) => cell ?? '-').join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

export const percent = ({ count, of }: Share, digits = 1): string => (of === 0 ? '-' : ((100 * count) / of).toFixed(digits));

/** With its 95 % interval. */
export const percentWithin = (part: Share): string =>
  part.of === 0 ? '-' : `${percent(part)} (${(100 * part.low).toFixed(1)} to ${(100 * part.high).toFixed(1)})`;

export const digits = (value: number | undefined, places: number): string => (value === undefined ? '-' : value.toFixed(places));
