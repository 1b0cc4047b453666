/** `npm run fixtures`: writes every synthesised recording of `fixtures/` with its truth beside it, the same bytes each time. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { allFixtures } from './all-fixtures.ts';
import { type FixtureTruth, truthText } from './fixture-truth.ts';
import { type KindTruth, kindFixtures } from './kind-fixtures.ts';

function writeFixtures(folder: string): void {
  mkdirSync(folder, { recursive: true });
  let byteCount = 0;
  const fixtures = allFixtures();
  const kinds = kindFixtures();
  const write = (name: string, bytes: Uint8Array, truth: FixtureTruth | KindTruth) => {
    writeFileSync(join(folder, `${name}.wav`), bytes);
    writeFileSync(join(folder, `${name}.json`), truthText(truth));
    byteCount += bytes.length;
  };
  for (const { name, bytes, truth } of fixtures) write(name, bytes, truth);
  for (const { name, bytes, truth } of kinds) write(name, bytes, truth);
  process.stdout.write(`${fixtures.length + kinds.length} fixtures, ${(byteCount / 1e6).toFixed(2)} MB, in ${folder}\n`);
}

writeFixtures(process.argv[3] ?? 'fixtures');
