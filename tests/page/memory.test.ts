/** The last setup comes back after a reload; where nothing can be kept, or damage comes back, the page works all the same. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

describe('the last setup', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('is remembered over a reload', async () => {
    const listen = await ListenPage.open(browser);
    expect(await listen.textbox('Span length').inputValue()).toBe('');
    await listen.belt().selectOption({ label: 'My own belt' });
    await listen.textbox('Linear density').fill('8,4 g/m');
    await listen.textbox('Span length').fill('5.9 in');
    await listen.textbox('Target from').fill('6');
    await listen.textbox('Target to').fill('9');
    await listen.textbox('Target to').press('Enter');
    await listen.page.reload();
    expect(await listen.textbox('Linear density').inputValue()).toBe('8,4 g/m');
    expect(await listen.textbox('Span length').inputValue()).toBe('5.9 in');
    expect(await listen.textbox('Target to').inputValue()).toBe('9');
    expect(await listen.page.getByText(/Expect \d+ to \d+\sHz on this span/u).isVisible()).toBe(true);
  });

  it('goes with everything else that is removed', async () => {
    const listen = await ListenPage.open(browser);
    await listen.textbox('Span length').fill('123');
    await listen.textbox('Span length').press('Enter');
    const isKept = () => listen.page.evaluate(() => localStorage.getItem('spanwright.last-setup') !== null);
    expect(await isKept()).toBe(true);
    await listen.page.goto(`${listen.page.url().split('#')[0]}#/settings`);
    await listen.button('Remove everything').click();
    await listen.button('Remove it all').click();
    await expect.poll(isKept).toBe(false);
    await listen.page.goto(`${listen.page.url().split('#')[0]}#/listen`);
    await listen.page.reload();
    expect(await listen.textbox('Span length').inputValue()).toBe('');
  });

  it('is read, like all else at the start, without a try at what the policy forbids', async () => {
    const listen = await ListenPage.open(browser, {
      before: () => {
        const seen: string[] = [];
        Object.assign(window, { violations: seen });
        document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
          seen.push(`${violatedDirective} ${blockedURI}`),
        );
      },
    });
    await listen.textbox('Span length').waitFor();
    expect(await listen.page.evaluate(() => (window as unknown as { violations: string[] }).violations)).toEqual([]);
  });

  it.each(['{', '[]', '{"version":1,"setup":{"beltId":7}}', '{"version":99,"setup":{}}'])(
    'that is damaged is left aside: %s',
    async (kept) => {
      const listen = await ListenPage.open(browser);
      await listen.textbox('Span length').fill('123');
      await listen.textbox('Span length').press('Enter');
      await listen.page.evaluate((text) => {
        for (const key of Object.keys(localStorage)) localStorage.setItem(key, text);
      }, kept);
      await listen.page.reload();
      expect(await listen.textbox('Span length').inputValue()).toBe('');
      expect(await listen.reading()).toContain('No reading yet');
      expect(listen.complaints).toEqual([]);
    },
  );

  it('is not needed: a browser that forbids storage still shows the page', async () => {
    const listen = await ListenPage.open(browser, {
      before: () =>
        Object.defineProperty(window, 'localStorage', {
          get: () => {
            throw new DOMException('forbidden', 'SecurityError');
          },
        }),
    });
    await listen.textbox('Span length').fill('180');
    await listen.textbox('Span length').press('Enter');
    expect(await listen.reading()).toContain('No reading yet');
    expect(listen.complaints).toEqual([]);
  });
});
