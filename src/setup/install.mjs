/** Installs what is missing: the packages of the lock file, and for the tests a browser. Node built-ins only. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findChromium } from './chromium.mjs';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Runs a command in the project's folder; its output goes where ours goes unless told `quiet`, then it is shown only on failure. */
export function run(command, argumentList, { quiet = false, env = {} } = {}) {
  const result = spawnSync(command, argumentList, {
    cwd: root,
    stdio: quiet ? 'pipe' : 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32' && command === 'npm',
    encoding: 'utf8',
  });
  if (quiet && result.status !== 0) process.stderr.write(`${result.stdout ?? ''}${result.stderr ?? ''}${result.error?.message ?? ''}\n`);
  return result.status ?? 1;
}

/** Runs the script of an installed package with this very Node. */
export const runTool = (script, argumentList, options) =>
  run(process.execPath, [`${root}node_modules/${script}`, ...argumentList], options);

/** The lock file that npm last installed says for each package what the project's own lock file says. */
function packagesAreCurrent() {
  const installed = `${root}node_modules/.package-lock.json`;
  if (!existsSync(installed)) return false;
  const wanted = JSON.parse(readFileSync(`${root}package-lock.json`, 'utf8')).packages;
  const present = JSON.parse(readFileSync(installed, 'utf8')).packages;
  return Object.entries(wanted).every(([path, { version, optional }]) => path === '' || optional || present[path]?.version === version);
}

export function installPackages({ quiet = false } = {}) {
  if (packagesAreCurrent()) return;
  if (!quiet) process.stdout.write('Installing packages.\n');
  if (run('npm', ['ci', '--no-audit', '--no-fund'], { quiet }) !== 0) {
    process.stderr.write('The packages could not be installed. Check the network and run the same command again.\n');
    process.exit(1);
  }
}

const NO_BROWSER = `No Chromium, Chrome or Edge was found, and the tests need one.
Install one of them, or set CHROMIUM to the path of its program, and run npm test again.
On Debian or Ubuntu: sudo apt-get install chromium
`;

/** An existing browser, else the one of the system's package manager where we may use it, else a clear instruction. */
export function ensureChromium() {
  const mayInstall = process.platform === 'linux' && process.getuid?.() === 0;
  if (!findChromium() && mayInstall && spawnSync('apt-get', ['--version']).status === 0) {
    process.stdout.write('Installing Chromium for the browser tests.\n');
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], { quiet: true, env });
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { quiet: true, env });
  }
  const path = findChromium();
  if (!path) {
    process.stderr.write(NO_BROWSER);
    process.exit(1);
  }
  return path;
}
