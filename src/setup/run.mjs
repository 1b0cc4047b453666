/** Runs a program of ours from its build, which it makes anew, silently, where it is missing or stale: `node src/setup/run.mjs NAME …`. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { installPackages, root, runTool } from './install.mjs';

const COMMAND_LINE = { entry: 'src/cli/main.ts', built: 'dist/cli', sources: ['src', 'shared'] };
const PROGRAMS = {
  measure: COMMAND_LINE,
  agreement: COMMAND_LINE,
  plan: COMMAND_LINE,
  gauge: COMMAND_LINE,
  fixtures: { entry: 'tests/support/make-fixtures.ts', built: 'dist/fixtures', sources: ['src', 'shared', 'tests/support'] },
  fuzz: { entry: 'tests/fuzz/main.ts', built: 'dist/fuzz', sources: ['src', 'shared', 'tests/support', 'tests/fuzz'] },
  bench: { entry: 'tests/bench/main.ts', built: 'dist/bench', sources: ['src', 'shared', 'tests/support', 'tests/bench'] },
};
const ALWAYS = ['package-lock.json', 'vite.config.ts'];

function newest(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(found.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function isStale({ built, sources }) {
  const script = `${root}${built}/main.js`;
  if (!existsSync(script)) return true;
  const builtAt = statSync(script).mtimeMs;
  return [...sources, ...ALWAYS].some((source) => newest(`${root}${source}`) > builtAt);
}

/** Builds beside the place and moves it there, so that a command started meanwhile never meets half a build. */
function build({ entry, built }) {
  const place = `${root}${built}`;
  const fresh = `${place}-${process.pid}`;
  const options = ['--ssr', entry, '--outDir', fresh, '--logLevel', 'error', '--mode', 'program'];
  if (runTool('vite/bin/vite.js', ['build', ...options], { quiet: true }) !== 0) process.exit(1);
  rmSync(place, { recursive: true, force: true });
  try {
    renameSync(fresh, place);
  } catch {
    rmSync(fresh, { recursive: true, force: true }); // another command was faster; its build is the same
  }
}

const [name = '', ...argumentList] = process.argv.slice(2);
const program = Object.hasOwn(PROGRAMS, name) ? PROGRAMS[name] : undefined;
if (!program) {
  process.stderr.write(`There is no program ${name}. There are: ${Object.keys(PROGRAMS).join(', ')}.\n`);
  process.exit(2);
}
if (isStale(program)) {
  installPackages({ quiet: true });
  build(program);
}
const result = spawnSync(process.execPath, [`${root}${program.built}/main.js`, name, ...argumentList], { stdio: 'inherit' });
process.exit(result.status ?? 1);
