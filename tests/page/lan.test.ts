/** The page over a certificate made on this computer, as a phone meets it: a warning first, then a microphone, but nothing kept for offline. */

import { mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { certificateFor } from '../../src/setup/certificate.mjs';
import { serve } from '../../src/setup/serve.mjs';
import { openBrowser, truthOf } from '../support/listen-page.ts';

/** A name that no browser trusts by itself, unlike localhost. */
const NAME = 'workbench.test';

describe('over a certificate of our own', () => {
  let folder: string;
  let server: Server;
  let browser: Browser;
  let page: Page;
  let address: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'lan-page-'));
    const tls = await certificateFor({ names: [NAME], folder });
    server = await serve({ folder: fileURLToPath(new URL('../../dist/app', import.meta.url)), host: '127.0.0.1', tls });
    address = `https://${NAME}:${(server.address() as AddressInfo).port}/`;
    browser = await openBrowser({ microphone: 'plain-150mm.wav', more: [`--host-resolver-rules=MAP ${NAME} 127.0.0.1`] });
    page = await (await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-GB' })).newPage();
    page.setDefaultTimeout(15_000);
  });
  afterAll(async () => {
    await browser.close();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('warns, and goes on when told', async () => {
    await expect(page.goto(address)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID');
    const listen = page.getByRole('button', { name: 'Listen' });
    // What Chromium takes on its warning page for 'go on', once that page listens.
    await expect
      .poll(
        async () => {
          if (!page.url().startsWith(address) || !(await listen.isVisible())) await page.keyboard.type('thisisunsafe', { delay: 30 });
          return listen.isVisible();
        },
        { timeout: 20_000, interval: 1000 },
      )
      .toBe(true);
  });

  it('may use the microphone and reads the span', async () => {
    const truth = truthOf('plain-150mm');
    await page.getByRole('button', { name: 'Listen' }).click();
    await page.getByRole('status', { name: 'Reading' }).getByText(/Hz/u).first().waitFor();
    const heard = (await page.getByRole('status', { name: 'Reading' }).textContent()) ?? '';
    const frequencyHz = Number(/([\d.]+)\s*Hz/u.exec(heard)?.[1]);
    expect(Math.abs(frequencyHz / truth.frequencyHz - 1)).toBeLessThan(0.005);
  });

  it('may keep the screen on', async () => {
    expect(await page.evaluate(async () => (await navigator.wakeLock.request('screen')).type)).toBe('screen');
  });

  it('cannot be kept for offline: the browser takes no service worker over such a certificate', async () => {
    const said = await page.evaluate(() =>
      navigator.serviceWorker.register('./offline.js').then(
        () => 'taken',
        (fault: unknown) => String(fault),
      ),
    );
    expect(said).toContain('SSL certificate error');
  });
});
