/** Hands the whole document to the browser as a file to be saved. */

import { fileText } from '../../../shared/document/file.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { nowAt } from './new-item.ts';

export function saveDocument(document: KeptDocument): void {
  const savedAt = nowAt();
  saveFile(new Blob([fileText(document, savedAt)], { type: 'application/json' }), `spanwright-${savedAt.slice(0, 10)}.json`);
}

/** A download needs no permission and works everywhere. */
export function saveFile(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // some browsers read it only after the click is over
}
