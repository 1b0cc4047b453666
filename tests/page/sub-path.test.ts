/** The built page below any path of a static web server, as a hosted copy stands: it loads, listens and asks for nothing outside. */

import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../src/setup/serve.mjs';
import { figuresIn, fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

describe('below a path of its own', () => {
  let folder: string;
  let server: Server;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'sub-path-'));
    mkdirSync(join(folder, 'our workshop'));
    cpSync(fileURLToPath(new URL('../../dist/app', import.meta.url)), join(folder, 'our workshop', 'belts'), { recursive: true });
    server = await serve({ folder });
    address = `http://localhost:${(server.address() as AddressInfo).port}/our%20workshop/belts/`;
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('reads a recording, and every request stays below it', async () => {
    const listen = await ListenPage.open(browser, { address });
    const asked: string[] = [];
    listen.page.on('request', (request) => asked.push(request.url()));
    await listen.page.reload();
    const truth = truthOf('plain-150mm');
    await listen.describe(truth);
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await listen.page.getByRole('status', { name: 'Reading' }).getByText('trusted').first().waitFor();
    const figures = figuresIn(await listen.reading())!;
    expect(Math.abs(figures.forceN - truth.forceN)).toBeLessThan(figures.forceU95N);
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter((url) => !url.startsWith(address) && !/^(?:data|blob):/u.test(url))).toEqual([]);
  });

  it('finds its places there', async () => {
    const listen = await ListenPage.open(browser, { address: `${address}#/listen` });
    await listen.button('Listen').waitFor();
    expect(new URL(listen.page.url()).pathname).toBe('/our%20workshop/belts/');
  });
});
