/** Bytes of a file, or why they could not be had: the one place of the command line that opens files. */

import { readFile, stat } from 'node:fs/promises';
import type { FileFault } from '../words/cli-en.ts';

/** Some 90 minutes of one channel at 48 kHz and 16 bits; more is no take of a few plucks. */
export const MOST_BYTES = 512_000_000;

export type FileBytes = { readonly kind: 'bytes'; readonly bytes: Uint8Array } | { readonly kind: 'file-fault'; readonly fault: FileFault };

const FAULTS: Readonly<Record<string, FileFault['why']>> = {
  ENOENT: 'missing',
  ENOTDIR: 'missing',
  EISDIR: 'folder',
  EACCES: 'not-permitted',
  EPERM: 'not-permitted',
};

const no = (fault: FileFault): FileBytes => ({ kind: 'file-fault', fault });

export async function fileBytes(path: string, limitBytes = MOST_BYTES): Promise<FileBytes> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) return no({ why: 'folder' });
    if (!found.isFile() && !found.isFIFO()) return no({ why: 'not-a-file' }); // a device may never end
    if (found.size > limitBytes) return no({ why: 'too-big', bytes: found.size, limitBytes });
    return { kind: 'bytes', bytes: await readFile(path) };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    const why = FAULTS[code];
    return no(why === 'missing' || why === 'folder' || why === 'not-permitted' ? { why } : { why: 'unreadable', code });
  }
}
