/**
 * What the page may cost, measured on its build: `npm run budget` prints each figure beside its limit, and ends with 1 where one is over. Size comes
 * from the files; the rest from a Chromium on this machine, so that a busy machine shows.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromiumArguments } from './chromium.mjs';
import { ensureChromium, installPackages, root, runTool } from './install.mjs';
import { serve } from './serve.mjs';

/** In bytes, milliseconds, frames a second. A phone on a slow network fetches 120 kB in about 2 s; 50 ms is what a finger feels as delay. */
const MOST_SCRIPT_BYTES = 120_000;
const MOST_INTERACTIVE_MS = 1000;
const LEAST_FRAMES_PER_S = 50;
const MOST_TASK_MS = 50;
/** One slow opening is the machine's; the middle of a few is the page's. */
const OPENINGS = 5;
/** Files below this are told together. */
const TOLD_FROM_BYTES = 1500;

const folder = join(root, 'dist/app');
const STATIC_IMPORT = /(?:\bfrom|\bimport)\s*["']\.\/([\w.-]+\.js)["']/gu;

/** Scripts that the page needs before it stands: those that its HTML names, and all that they import without being asked. */
function firstScripts() {
  const html = readFileSync(join(folder, 'index.html'), 'utf8');
  const wanted = [...html.matchAll(/(?:src|href)="\.\/assets\/([\w.-]+\.js)"/gu)].map(([, name]) => name);
  const sizes = new Map();
  for (let name = wanted.pop(); name !== undefined; name = wanted.pop()) {
    if (sizes.has(name)) continue;
    const text = readFileSync(join(folder, 'assets', name));
    sizes.set(name, gzipSync(text, { level: 9 }).length);
    for (const [, next] of text.toString('utf8').matchAll(STATIC_IMPORT)) wanted.push(next);
  }
  return [...sizes].sort(([, a], [, b]) => b - a);
}

let isOver = false;

function tell(what, figure, limit, holds) {
  isOver ||= !holds;
  process.stdout.write(`${what.padEnd(44)} ${figure.padStart(9)}   ${limit.padEnd(18)} ${holds ? 'ok' : 'over'}\n`);
}

function tellSize() {
  const scripts = firstScripts();
  const total = scripts.reduce((sum, [, bytes]) => sum + bytes, 0);
  for (const [name, bytes] of scripts.filter(([, bytes]) => bytes >= TOLD_FROM_BYTES)) {
    process.stdout.write(`  ${name.padEnd(42)} ${(bytes / 1000).toFixed(1).padStart(6)} kB\n`);
  }
  const small = scripts.filter(([, bytes]) => bytes < TOLD_FROM_BYTES);
  const smallBytes = small.reduce((sum, [, bytes]) => sum + bytes, 0);
  process.stdout.write(`  ${`${small.length} smaller ones`.padEnd(42)} ${(smallBytes / 1000).toFixed(1).padStart(6)} kB\n`);
  tell(
    'script of the first load, gzip',
    `${(total / 1000).toFixed(1)} kB`,
    `at most ${MOST_SCRIPT_BYTES / 1000} kB`,
    total <= MOST_SCRIPT_BYTES,
  );
}

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** From the start of the navigation until the button stands that starts a take. */
async function interactiveMs(browser, address) {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(address, { waitUntil: 'commit' });
  await page.getByRole('button', { name: 'Play the demo take' }).waitFor();
  const ms = await page.evaluate(() => performance.now());
  await context.close();
  return ms;
}

/** Runs in the page: counts frames, and keeps the longest task, until the figures are asked for. */
function startWatch() {
  const watch = { frames: 0, longestMs: 0, startMs: performance.now() };
  const frame = () => {
    watch.frames += 1;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) watch.longestMs = Math.max(watch.longestMs, duration);
  }).observe({ type: 'longtask' });
  globalThis.budgetWatch = watch;
}

/** Frames a second and the longest task while the demo take is heard, from the click to its reading of three plucks. */
async function listening(browser, address) {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(address);
  const button = page.getByRole('button', { name: 'Play the demo take' });
  await button.waitFor();
  await page.evaluate(startWatch);
  await button.click();
  await page.getByText('Reading, three plucks, demo').waitFor();
  const figures = await page.evaluate(() => {
    const { frames, longestMs, startMs } = globalThis.budgetWatch;
    return { framesPerS: (1000 * frames) / (performance.now() - startMs), longestMs };
  });
  await context.close();
  return figures;
}

installPackages();
const executablePath = ensureChromium();
if (runTool('vite/bin/vite.js', ['build', '--logLevel', 'error']) !== 0) process.exit(1);
tellSize();

const { chromium } = await import('playwright-core');
const server = await serve({ folder });
const browser = await chromium.launch({ executablePath, chromiumSandbox: false, args: chromiumArguments() });
try {
  const address = `http://localhost:${server.address().port}/`;
  const openings = [];
  for (let opening = 0; opening < OPENINGS; opening++) openings.push(await interactiveMs(browser, address));
  const openMs = median(openings);
  tell(
    `ready for a take, middle of ${OPENINGS} openings`,
    `${openMs.toFixed(0)} ms`,
    `under ${MOST_INTERACTIVE_MS} ms`,
    openMs < MOST_INTERACTIVE_MS,
  );
  const { framesPerS, longestMs } = await listening(browser, address);
  tell(
    'frames while the demo take is heard',
    `${framesPerS.toFixed(0)} /s`,
    `at least ${LEAST_FRAMES_PER_S} /s`,
    framesPerS >= LEAST_FRAMES_PER_S,
  );
  const task = longestMs === 0 ? 'none' : `${longestMs.toFixed(0)} ms`;
  tell('longest task over 50 ms meanwhile', task, `under ${MOST_TASK_MS} ms`, longestMs < MOST_TASK_MS);
} finally {
  await browser.close();
  server.close();
}
process.exit(isOver ? 1 : 0);
