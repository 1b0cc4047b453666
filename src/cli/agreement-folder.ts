/** A folder of takes with their truth beside them: which can be compared, and why the others cannot. */

import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { isWithoutForce, type TakeTruth, takeTruthSchema } from '../../shared/take-truth.ts';
import { agreementEn } from '../words/agreement-en.ts';
import { type FileFault, fileFaultText } from '../words/cli-en.ts';
import { fileBytes } from './read-file.ts';

export interface FolderTake {
  /** Without its ending. */
  readonly name: string;
  readonly path: string;
  readonly truth: TakeTruth;
}

export interface AgreementFolder {
  readonly kind: 'agreement-folder';
  readonly takes: readonly FolderTake[];
  /** A recording that is not compared, with the sentence that says why; a fault is one that somebody has to put right. */
  readonly leftOut: readonly { readonly name: string; readonly why: string; readonly isFault: boolean }[];
}

const MOST_TRUTH_BYTES = 1_000_000;

export async function agreementFolder(
  folder: string,
): Promise<AgreementFolder | { readonly kind: 'file-fault'; readonly fault: FileFault }> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    if (code === 'ENOENT') return { kind: 'file-fault', fault: { why: 'missing' } };
    if (code === 'EACCES' || code === 'EPERM') return { kind: 'file-fault', fault: { why: 'not-permitted' } };
    return { kind: 'file-fault', fault: { why: 'unreadable', code } };
  }
  const takes: FolderTake[] = [];
  const leftOut: { name: string; why: string; isFault: boolean }[] = [];
  for (const file of names.filter((one) => /\.wav$/iu.test(one)).sort()) {
    const name = file.slice(0, -4);
    const read = await truthOf(join(folder, `${name}.json`));
    if (typeof read === 'string') leftOut.push({ name, why: read, isFault: read !== agreementEn.why['no-force'] });
    else takes.push({ name, path: join(folder, file), truth: read });
  }
  return { kind: 'agreement-folder', takes, leftOut };
}

/** The truth, or the sentence that says why there is none. */
async function truthOf(path: string): Promise<TakeTruth | string> {
  const { why } = agreementEn;
  const read = await fileBytes(path, MOST_TRUTH_BYTES);
  if (read.kind === 'file-fault') return read.fault.why === 'missing' ? why['no-truth'] : fileFaultText(read.fault);
  let raw: unknown;
  try {
    raw = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(read.bytes));
  } catch {
    return why['not-json'];
  }
  if (isWithoutForce(raw)) return why['no-force'];
  const checked = takeTruthSchema.safeParse(raw);
  return checked.success ? checked.data : why['bad-truth'](checked.error.issues[0]?.path.join('.') ?? '');
}
