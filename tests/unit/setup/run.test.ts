/** The real script in a project of a few files; its builder writes down what it was asked to build, so that every build can be counted. */

import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const SETUP = fileURLToPath(new URL('../../../src/setup', import.meta.url));

/** Stands in for the builder: the program it makes tells its arguments and what it is, and ends as its last argument says. */
const BUILDER = `
const { appendFileSync, existsSync, mkdirSync, writeFileSync } = require('node:fs');
const after = (name) => process.argv[process.argv.indexOf(name) + 1];
appendFileSync('builds.txt', after('--ssr') + '\\n');
if (existsSync('broken')) { process.stderr.write('does not build'); process.exit(1); }
mkdirSync(after('--outDir'), { recursive: true });
writeFileSync(after('--outDir') + '/main.js', \`
  process.stdout.write(JSON.stringify(process.argv.slice(2)));
  process.exit(Number(process.argv.at(-1)) || 0);
\`);
`;

const LOCK = JSON.stringify({ packages: { '': {}, 'node_modules/one': { version: '1.2.3' } } });

let root: string;

function put(path: string, text = ''): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

/** Sets when a file or folder was last changed, in minutes from now. */
const changed = (path: string, minutes: number) => {
  const atS = Date.now() / 1000 + 60 * minutes;
  utimesSync(join(root, path), atS, atS);
};

const run = (...argumentList: string[]) =>
  spawnSync(process.execPath, [join(root, 'src/setup/run.mjs'), ...argumentList], { encoding: 'utf8', cwd: tmpdir() });

const builds = () => (existsSync(join(root, 'builds.txt')) ? readFileSync(join(root, 'builds.txt'), 'utf8').trim().split('\n') : []);

const SOURCES = [
  'src/cli/main.ts',
  'src/core/deep/measure.ts',
  'shared/belts.json',
  'tests/support/make-fixtures.ts',
  'tests/bench/main.ts',
];

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'run-'));
  mkdirSync(join(root, 'src/setup'), { recursive: true });
  for (const name of readdirSync(SETUP)) copyFileSync(join(SETUP, name), join(root, 'src/setup', name));
  for (const path of [...SOURCES, 'vite.config.ts']) put(path);
  put('package-lock.json', LOCK);
  put('node_modules/.package-lock.json', LOCK);
  put('node_modules/vite/bin/vite.js', BUILDER);
  for (const path of readdirSync(root, { recursive: true, encoding: 'utf8' })) changed(path, -60);
});

afterEach(() => rmSync(root, { recursive: true }));

describe('a program of ours', () => {
  it('is built where it is missing, silently, and then run with its arguments and its end', () => {
    const { stdout, stderr, status } = run('measure', 'a file.wav', '--span', '150mm', '3');
    expect(stdout).toBe(JSON.stringify(['measure', 'a file.wav', '--span', '150mm', '3']));
    expect([stderr, status]).toEqual(['', 3]);
    expect(builds()).toEqual(['src/cli/main.ts']);
  });

  it('is not built again while nothing changed', () => {
    for (let i = 0; i < 3; i++) expect(run('measure').status).toBe(0);
    expect(builds()).toHaveLength(1);
  });

  it.each(['src/cli/main.ts', 'src/core/deep/measure.ts', 'shared/belts.json', 'vite.config.ts', 'package-lock.json'])(
    'is built again after a change of %s, and only once',
    (path) => {
      run('measure');
      changed('dist/cli/main.js', -30);
      run('measure');
      expect(builds()).toHaveLength(1);
      changed(path, -10);
      expect(run('measure').status).toBe(0);
      expect(run('measure').status).toBe(0);
      expect(builds()).toHaveLength(2);
    },
  );

  it('is built again where a file was taken away', () => {
    run('measure');
    changed('dist/cli/main.js', -30);
    rmSync(join(root, 'src/core/deep/measure.ts'));
    run('measure');
    expect(builds()).toHaveLength(2);
  });

  it('does not care for what it is not made of', () => {
    run('measure');
    changed('dist/cli/main.js', -30);
    for (const path of ['tests/support/make-fixtures.ts', 'tests/bench/main.ts']) changed(path, -10);
    run('measure');
    expect(builds()).toHaveLength(1);
    run('fixtures');
    changed('dist/fixtures/main.js', -30);
    run('fixtures');
    expect(builds()).toEqual(['src/cli/main.ts', 'tests/support/make-fixtures.ts', 'tests/support/make-fixtures.ts']);
  });

  it('leaves nothing of the building behind', () => {
    run('measure');
    changed('dist/cli/main.js', -30);
    changed('shared/belts.json', -10);
    run('measure');
    expect(readdirSync(join(root, 'dist'))).toEqual(['cli']);
  });

  it('that cannot be built says why and does not run what is stale', () => {
    run('measure');
    put('broken');
    changed('dist/cli/main.js', -30);
    changed('src/cli/main.ts', -10);
    const { stdout, stderr, status } = run('measure');
    expect([stdout, status]).toEqual(['', 1]);
    expect(stderr).toContain('does not build');
  });
});

it.each([[[]], [['no-such']], [['constructor']]])('%o is no program; the programs are named', (argumentList) => {
  const { stdout, stderr, status } = run(...argumentList);
  expect([stdout, status]).toEqual(['', 2]);
  expect(stderr).toMatch(/There are: .*measure/u);
  expect(builds()).toEqual([]);
});
