/** The frame: places are reached by address, by link and by key, and listening goes on in the others. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

describe('large figures', () => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser({ microphone: 'plain-150mm.wav' });
    listen = await ListenPage.open(browser);
  });
  afterAll(() => browser.close());

  it('go on with the take that is being heard, and come back to it', async () => {
    await listen.describe(truth);
    await listen.button('Listen').click();
    await listen.button('Stop').waitFor();
    await listen.page.keyboard.press('f');
    await listen.page.getByRole('heading', { name: 'Large figures' }).waitFor();
    expect(listen.page.url()).toContain('#/listen/far');
    await expect.poll(() => listen.reading(), { timeout: 30_000 }).toMatch(/[\d.]+ newtons, plus or minus [\d.]+\. \w+\. [\d.]+ hertz/u);
    await listen.page.getByText('Listening, 3 plucks.').waitFor({ timeout: 30_000 });
    await listen.page.keyboard.press('Escape');
    await listen.button('Stop').click();
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 30_000 }).toBeCloseTo(truth.forceN, 0);
    expect(listen.complaints).toEqual([]);
  });

  // Letters are read with ease from 200 times their height (common practice, no source): 10 mm at 2 m, and a digit is 0.7 of its size. A CSS pixel is
  // 0.26 mm on a laptop, and about 0.17 mm on a phone, where the figure alone keeps to that.
  it.each([
    { name: 'laptop', viewport: { width: 1280, height: 800 }, force: 208, doubt: 54 },
    { name: 'phone', viewport: { width: 390, height: 844 }, force: 104, doubt: 65 },
  ])('stand whole on a $name and large enough for two metres', async ({ viewport, force, doubt }) => {
    const { page } = listen;
    await page.setViewportSize(viewport);
    await page.keyboard.press('f');
    await page.getByRole('heading', { name: 'Large figures' }).waitFor();
    const sizeOf = (selector: string) =>
      page.locator(`far-screen ${selector}`).evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));
    expect(await sizeOf('.figure.force')).toBeGreaterThanOrEqual(force);
    expect(await sizeOf('.doubt')).toBeGreaterThanOrEqual(doubt);
    for (const selector of ['.figure.force', '.doubt', '.grade', 'force-ruler']) {
      const box = (await page.locator(`far-screen ${selector}`).boundingBox())!;
      expect([box.x >= 0, box.y >= 0, box.x + box.width <= viewport.width, box.y + box.height <= viewport.height]).toEqual([
        true,
        true,
        true,
        true,
      ]);
    }
    await page.keyboard.press('Escape');
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  it('open by their address', async () => {
    await listen.page.goto(`${listen.page.url().replace(/#.*/u, '')}#/listen/far`);
    await listen.page.reload();
    await listen.page.getByRole('heading', { name: 'Large figures' }).waitFor();
    expect(await listen.reading()).toContain('No reading yet');
    await listen.page.keyboard.press('f');
    await listen.page.getByRole('navigation', { name: 'Places' }).waitFor();
    expect(await listen.page.title()).toBe('Listen, Spanwright');
  });
});
