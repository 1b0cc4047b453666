/** Every way in which a microphone is not to be had: each says what is so and what to do, and the page goes on. */

import type { Browser } from 'playwright';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

describe('a microphone that is not to be had', () => {
  let browser: Browser;
  afterEach(() => browser.close());

  it('denied: says how to allow it, and a recording still works', async () => {
    browser = await openBrowser({ grant: false });
    const listen = await ListenPage.open(browser, { permissions: [] });
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading()).toContain('The microphone is blocked');
    expect(await listen.reading()).toContain('choose Allow, then try again');
    await listen.describe(truthOf('plain-150mm'));
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(() => listen.reading(), { timeout: 20_000 }).toMatch(/N\s±/u);
  });

  it('none: says so', async () => {
    browser = await openBrowser({ device: false });
    const listen = await ListenPage.open(browser);
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading()).toContain('No microphone found');
  });

  it('in use: says so, and the next try works', async () => {
    browser = await openBrowser();
    const listen = await ListenPage.open(browser, {
      before: () => {
        const { mediaDevices } = navigator;
        const open = mediaDevices.getUserMedia.bind(mediaDevices);
        let tries = 0;
        mediaDevices.getUserMedia = (constraints) =>
          tries++ === 0 ? Promise.reject(new DOMException('Could not start audio source', 'NotReadableError')) : open(constraints);
      },
    });
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading()).toContain('Another program holds the microphone');
    await listen.button('Listen').click();
    await listen.button('Stop').waitFor();
    expect(await listen.reading()).not.toContain('Another program');
  });

  it('while the browser asks, the page says so and lets go of the question', async () => {
    browser = await openBrowser();
    const listen = await ListenPage.open(browser, {
      before: () => {
        navigator.mediaDevices.getUserMedia = () => new Promise(() => {});
      },
    });
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading()).toContain('Allow the microphone');
    await listen.button('Not now').click();
    await expect.poll(() => listen.reading()).toContain('No reading yet');
  });

  it('unplugged while it listens: says so and is ready for another', async () => {
    browser = await openBrowser();
    const listen = await ListenPage.open(browser, {
      before: () => {
        const { mediaDevices } = navigator;
        const open = mediaDevices.getUserMedia.bind(mediaDevices);
        mediaDevices.getUserMedia = async (constraints) => {
          const stream = await open(constraints);
          Object.assign(window, { unplug: () => stream.getAudioTracks()[0]?.dispatchEvent(new Event('ended')) });
          return stream;
        };
      },
    });
    await listen.button('Listen').click();
    await listen.button('Stop').waitFor();
    await listen.page.evaluate(() => (window as unknown as { unplug(): void }).unplug());
    await expect.poll(() => listen.reading()).toContain('The microphone went away');
    await listen.button('Listen').waitFor();
  });

  it('insecure page: says where it may listen', async () => {
    const { port } = new URL(inject('pageAddress'));
    browser = await openBrowser({ more: ['--host-resolver-rules=MAP workshop.test 127.0.0.1, MAP localhost 127.0.0.1'] });
    const served = await reachable(browser, `http://workshop.test:${port}/`);
    expect(served).toBe(true);
    const listen = await ListenPage.open(browser, { address: `http://workshop.test:${port}/` });
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading()).toContain('This page may not listen');
  });
});

/** The test server may listen on the other loopback address only. */
async function reachable(browser: Browser, address: string): Promise<boolean> {
  const page = await browser.newPage();
  const answer = await page.goto(address).catch(() => undefined);
  await page.close();
  return answer?.ok() ?? false;
}
