/** `npm run fixtures`: writes every synthesised recording of `fixtures/` with its truth beside it, the same bytes each time. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { allFixtures } from './all-fixtures.ts';
import { truthText } from './fixture-truth.ts';

function writeFixtures(folder: string): void {
  mkdirSync(folder, { recursive: true });
  let byteCount = 0;
  const fixtures = allFixtures();
  for (const { name, bytes, truth } of fixtures) {
    writeFileSync(join(folder, `${name}.wav`), bytes);
    writeFileSync(join(folder, `${name}.json`), truthText(truth));
    byteCount += bytes.length;
  }
  process.stdout.write(`${fixtures.length} fixtures, ${(byteCount / 1e6).toFixed(2)} MB, in ${folder}\n`);
}

writeFixtures(process.argv[3] ?? 'fixtures');
