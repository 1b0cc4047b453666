/** With the server gone: from the second visit on the whole program is there; a newer version waits until the person says so. */

import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../src/setup/serve.mjs';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

const built = fileURLToPath(new URL('../../dist/app', import.meta.url));

describe('without a network', () => {
  let browser: Browser;
  let folder: string;
  let server: Server;
  let address: string;

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'spanwright-'));
    cpSync(built, folder, { recursive: true });
    server = await serve({ folder });
    address = `http://localhost:${(server.address() as AddressInfo).port}/`;
  });
  afterEach(() => {
    stopServer();
    rmSync(folder, { recursive: true });
  });

  const stopServer = (): void => {
    server.closeAllConnections();
    server.close();
  };

  /** The first visit, up to where everything was fetched. */
  async function visited(): Promise<ListenPage> {
    const listen = await ListenPage.open(browser, { address });
    await listen.page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await expect.poll(() => listen.page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    return listen;
  }

  it('opens, measures, and keeps in every place', async () => {
    const { page } = await visited();
    stopServer();
    await page.reload();
    await page.getByRole('button', { name: 'Play the demo take' }).click();
    await page.getByText('Reading, three plucks, demo').waitFor({ timeout: 30_000 });
    const names = await page.getByRole('navigation', { name: 'Places' }).getByRole('link').allInnerTexts();
    for (const name of names) {
      await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name, exact: true }).click();
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      expect(await page.getByText('This place did not open').count(), name).toBe(0);
    }
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByText('it opens and works without a network').waitFor();
    await page.context().close();
  });

  it('holds every file of the build but the maps', async () => {
    const { page } = await visited();
    const kept = await page.evaluate(async () => {
      const [name] = await caches.keys();
      const requests = await (await caches.open(name!)).keys();
      return requests.map(({ url }) => new URL(url).pathname.slice(1));
    });
    const files = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.endsWith('.map') && entry.name !== 'offline.js')
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
    expect([...kept].sort()).toEqual(files.map((name) => (name === 'index.html' ? '' : name)).sort());
    await page.context().close();
  });

  it('waits with a newer version until the person says so', async () => {
    const { page } = await visited();
    const html = readFileSync(join(folder, 'index.html'), 'utf8');
    writeFileSync(join(folder, 'index.html'), html.replace('<spanwright-app>', '<spanwright-app data-build="next">'));
    const worker = readFileSync(join(folder, 'offline.js'), 'utf8');
    writeFileSync(join(folder, 'offline.js'), worker.replace(/VERSION = '(\w+)'/u, "VERSION = 'next'"));
    const isNext = () => page.evaluate(() => document.querySelector('spanwright-app')?.getAttribute('data-build') === 'next');

    await page.reload();
    await page.getByText('A newer version is ready.').waitFor({ timeout: 20_000 });
    expect(await isNext()).toBe(false);
    await page.getByRole('button', { name: 'Use it now' }).click();
    await expect.poll(isNext, { timeout: 20_000 }).toBe(true);
    expect(await page.getByText('A newer version is ready.').count()).toBe(0);
    expect(await page.evaluate(() => caches.keys())).toEqual(['spanwright next']);
    await page.context().close();
  });
});
