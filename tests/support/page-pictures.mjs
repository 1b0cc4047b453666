/**
 * `node tests/support/page-pictures.mjs [FOLDER]`: takes the pictures of README from the built page after its demo take, into
 * `fixtures/` unless told otherwise. Builds the page first; needs a Chromium, as the tests do.
 */
import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { chromiumArguments } from '../../src/setup/chromium.mjs';
import { ensureChromium, installPackages, root, runTool } from '../../src/setup/install.mjs';
import { serve } from '../../src/setup/serve.mjs';

const PICTURES = [
  { name: 'page-wide.png', viewport: { width: 1280, height: 800 }, colorScheme: 'light' },
  { name: 'page-phone.png', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
];

async function takePicture(browser, address, path, options) {
  const context = await browser.newContext({ ...options, locale: 'en-GB', reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(address);
  await page.getByRole('button', { name: 'Play the demo take' }).click();
  await page.getByText('Reading, three plucks, demo').waitFor();
  await page.getByRole('button', { name: 'Listen' }).waitFor(); // the take has ended by itself
  await page.evaluate(() => {
    document.activeElement?.blur();
    scrollTo(0, 0);
  });
  await page.screenshot({ path });
  await context.close();
  process.stdout.write(`${path}, ${Math.round(statSync(path).size / 1000)} kB\n`);
}

installPackages();
const executablePath = ensureChromium();
if (runTool('vite/bin/vite.js', ['build', '--logLevel', 'warn']) !== 0) process.exit(1);
const folder = process.argv[2] ?? join(root, 'fixtures');
mkdirSync(folder, { recursive: true });
const server = await serve({ folder: join(root, 'dist/app') });
const browser = await chromium.launch({ executablePath, chromiumSandbox: false, args: chromiumArguments() });
for (const { name, ...options } of PICTURES) {
  await takePicture(browser, `http://localhost:${server.address().port}/`, join(folder, name), options);
}
await browser.close();
server.close();
