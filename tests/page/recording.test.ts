/** Recordings instead of a microphone: chosen, dropped, without a pluck, and unreadable. */

import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { figuresIn, fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

describe('a recording', () => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    listen = await ListenPage.open(browser);
  });

  it('that is chosen is read at once', async () => {
    await listen.describe(truth);
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(async () => figuresIn(await listen.reading()), { timeout: 20_000 }).toBeDefined();
    const found = figuresIn(await listen.reading())!;
    expect(Math.abs(found.forceN - truth.forceN)).toBeLessThanOrEqual(found.forceU95N);
    expect(Math.abs(found.frequencyHz / truth.frequencyHz - 1)).toBeLessThan(0.003);
    expect(await listen.page.getByText('three plucks in plain-150mm.wav').isVisible()).toBe(true);
    expect(listen.complaints).toEqual([]);
  });

  it('that is dropped on the page is read at once', async () => {
    await listen.describe(truth);
    const base64 = readFileSync(fixturePath('plain-150mm.wav')).toString('base64');
    const dropped = await listen.page.evaluateHandle(async (content) => {
      const bytes = Uint8Array.from(atob(content), (sign) => sign.charCodeAt(0));
      const transfer = new DataTransfer();
      transfer.items.add(new File([bytes], 'dropped.wav', { type: 'audio/wav' }));
      return transfer;
    }, base64);
    await listen.page.locator('body').dispatchEvent('dragover', { dataTransfer: dropped });
    expect(await listen.page.getByText('Let go to open the recording').isVisible()).toBe(true);
    await listen.page.locator('body').dispatchEvent('drop', { dataTransfer: dropped });
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 20_000 }).toBeCloseTo(truth.forceN, 0);
  });

  it('without a pluck gives no figure and says what was heard', async () => {
    await listen.describe(truth);
    await listen.recording().setInputFiles(fixturePath('pink-noise.wav'));
    await expect.poll(() => listen.reading(), { timeout: 20_000 }).toContain('nothing heard');
    expect(await listen.reading()).not.toMatch(/\d\s*N\b/u);
  });

  it('that is broken says what is wrong with it, and the next one is read', async () => {
    await listen.describe(truth);
    await listen.recording().setInputFiles(fixturePath('broken-header.wav'));
    await expect.poll(() => listen.reading(), { timeout: 20_000 }).toContain('This file could not be read');
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(async () => figuresIn(await listen.reading()), { timeout: 20_000 }).toBeDefined();
  });
});
