/** The demo take, for someone without a belt in hand: the real chain at its own speed, then back to the person's own setup. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoTake } from '../../src/core/synthesis/demo.ts';
import { figuresIn, ListenPage, openBrowser } from '../support/listen-page.ts';

describe('the demo take', () => {
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser);
    await listen.textbox('Span length').fill('222');
    await listen.button('Play the demo take').click();
    await listen.button('Listen').waitFor({ timeout: 30_000 }); // it stops by itself
  });
  afterAll(() => browser.close());

  it('gives the force that it was made with, from three plucks', async () => {
    const { forceN } = demoTake().truth.span;
    const found = figuresIn(await listen.reading())!;
    expect(Math.abs(found.forceN - forceN)).toBeLessThanOrEqual(found.forceU95N);
    expect(await listen.page.getByText('Reading, three plucks, demo').isVisible()).toBe(true);
  });

  it('fills in its setup and marks it', async () => {
    expect(await listen.page.getByText('demo', { exact: true }).isVisible()).toBe(true);
    expect(await listen.textbox('Span length').inputValue()).toBe('180');
    expect(await listen.textbox('Target from').inputValue()).toBe('6');
    expect(await listen.textbox('Target to').inputValue()).toBe('9');
  });

  it('leads back to the own belt, as it was before', async () => {
    await listen.button('Now your own belt').click();
    await expect.poll(() => listen.reading()).toContain('No reading yet');
    expect(await listen.textbox('Span length').inputValue()).toBe('222');
    expect(await listen.textbox('Target from').inputValue()).toBe('');
  });

  it('needs neither microphone nor another origin', () => {
    expect(listen.complaints).toEqual([]);
  });
});
