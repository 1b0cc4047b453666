/** What a browser's store throws, as the closed list that the page knows. */

import type { KeepingFailure } from '../ports.ts';

const WHY: Readonly<Record<string, KeepingFailure['why']>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer',
  SecurityError: 'forbidden',
  InvalidStateError: 'forbidden', // some browsers' private windows
};

/** @param fault  whatever was thrown; a missing store throws too, since it is no object then */
export function keepingFailure(fault: unknown): KeepingFailure {
  const name = fault instanceof Error || fault instanceof DOMException ? fault.name : '';
  const detail = fault instanceof Error || fault instanceof DOMException ? fault.message || fault.name : String(fault);
  const why = globalThis.indexedDB ? (WHY[name] ?? 'failed') : 'forbidden';
  return { kind: 'keeping-failure', why, detail };
}
