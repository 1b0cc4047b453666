import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fileBytes } from '../../../src/cli/read-file.ts';

it('reads bytes, and tells why it cannot', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'read-'));
  const path = join(folder, 'a.wav');
  writeFileSync(path, new Uint8Array([1, 2, 3]));
  expect(await fileBytes(path)).toMatchObject({ kind: 'bytes', bytes: Buffer.from([1, 2, 3]) });
  expect(await fileBytes(path, 2)).toEqual({ kind: 'file-fault', fault: { why: 'too-big', bytes: 3, limitBytes: 2 } });
  expect(await fileBytes(join(folder, 'b.wav'))).toEqual({ kind: 'file-fault', fault: { why: 'missing' } });
  expect(await fileBytes(folder)).toEqual({ kind: 'file-fault', fault: { why: 'folder' } });
  expect(await fileBytes(join(folder, 'x'.repeat(5000)))).toEqual({
    kind: 'file-fault',
    fault: { why: 'unreadable', code: 'ENAMETOOLONG' },
  });
  rmSync(folder, { recursive: true });
});
