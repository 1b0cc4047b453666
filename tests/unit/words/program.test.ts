import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { PROGRAM_VERSION } from '../../../src/words/program.ts';

it('is the version that the package has', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
  expect(PROGRAM_VERSION).toBe(version);
});
