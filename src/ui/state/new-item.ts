/** What a new item begins with: an id of its own, and the moment in UTC with the zone of the clock on the wall. */

import type { When } from '../../../shared/document/common.ts';

/** Random, 122 bits; also where the page is not secure and the browser hides its own. */
export function newId(): string {
  if ('randomUUID' in crypto) return crypto.randomUUID();
  const bytes = [...(crypto as Crypto).getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [bytes.slice(0, 8), bytes.slice(8, 12), bytes.slice(12, 16), bytes.slice(16, 20), bytes.slice(20)].join('-');
}

export const nowAt = (): string => new Date().toISOString();

export const nowWhen = (): When => ({ at: nowAt(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC' });

export interface NewItem {
  readonly id: string;
  readonly made: When;
  readonly changedAt: string;
}

export function newItem(): NewItem {
  const made = nowWhen();
  return { id: newId(), made, changedAt: made.at };
}
