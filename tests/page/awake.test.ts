/** The screen is kept on while the page listens, in a real browser: asked for with the microphone, let go with it. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

declare global {
  interface Window {
    screenHolds: WakeLockSentinel[];
  }
}

describe('the screen', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser({ microphone: 'plain-150mm.wav' });
  });
  afterAll(() => browser.close());

  it('is held from Listen to Stop', async () => {
    const listen = await ListenPage.open(browser, {
      viewport: { width: 390, height: 844 },
      before: () => {
        window.screenHolds = [];
        const request = navigator.wakeLock.request.bind(navigator.wakeLock);
        navigator.wakeLock.request = async (type) => {
          const hold = await request(type);
          window.screenHolds.push(hold);
          return hold;
        };
      },
    });
    const holds = () => listen.page.evaluate(() => window.screenHolds.map(({ released }) => released));
    expect(await holds()).toEqual([]);
    await listen.button('Listen').click();
    await expect.poll(holds).toEqual([false]);
    await listen.button('Stop').click();
    await expect.poll(holds, { timeout: 15_000 }).toEqual([true]);
    expect(listen.complaints).toEqual([]);
  });
});
