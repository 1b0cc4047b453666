/** What is kept stays kept: over a tab that is killed in the middle of a write, over a second tab, a full store, and a browser that keeps nothing. */

import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { SpanwrightApp } from '../../src/ui/app.ts';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

/** Adds one gauge and one entry in one change, again and again, and says after each that it is kept. */
async function addPairs(page: Page, count: number, onKept: (index: number) => void): Promise<void> {
  await page.exposeFunction('isKept', onKept);
  await page.evaluate((until) => {
    const { kept } = document.querySelector<SpanwrightApp>('spanwright-app')!.workbench;
    const made = { at: '2026-03-02T08:15:00.000Z', zone: 'UTC' };
    const item = (index: number) => ({ id: `n${index}`, made, changedAt: made.at });
    const add = async () => {
      for (let index = 0; index < until; index += 1) {
        const gauge = { ...item(index), name: `gauge ${index}` };
        const entry = { ...item(index), happened: made, kind: 'note' as const, text: `entry ${index}`, machineBeltIds: [] };
        const isKept = await kept.change((one) => ({ ...one, gauges: [...one.gauges, gauge], entries: [...one.entries, entry] }));
        if (isKept) (window as unknown as { isKept: (index: number) => void }).isKept(index);
      }
    };
    void add();
  }, count);
}

const countsIn = (page: Page) =>
  page.evaluate(async () => {
    const { kept } = document.querySelector<SpanwrightApp>('spanwright-app')!.workbench;
    await kept.opened;
    const ids = (items: readonly { id: string }[]) => items.map(({ id }) => id).sort();
    return { gauges: ids(kept.document.gauges), entries: ids(kept.document.entries), damaged: kept.keeping.damaged.length };
  });

describe('what is kept', () => {
  let browser: Browser;

  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it('is whole, and has all that was said to be kept, after a tab was killed in the middle of a write', async () => {
    const listen = await ListenPage.open(browser);
    const told: number[] = [];
    await addPairs(listen.page, 5000, (index) => told.push(index));
    await expect.poll(() => told.length, { timeout: 30_000 }).toBeGreaterThan(20);
    const devtools = await listen.context.newCDPSession(listen.page);
    void devtools.send('Page.crash').catch(() => {}); // it dies before it can answer
    await listen.page.waitForEvent('crash');
    const tellsUpTo = told.length;

    const again = await listen.context.newPage();
    await again.goto(inject('pageAddress'));
    const { gauges, entries, damaged } = await countsIn(again);
    expect(gauges).toEqual(entries); // both halves of every change, or none
    expect(gauges.length).toBeGreaterThanOrEqual(tellsUpTo);
    expect(gauges.length).toBeLessThan(5000); // it was indeed in the middle
    expect(damaged).toBe(0);
    await listen.close();
  });

  it('is the same in two tabs, and each adds to the other’s', async () => {
    const listen = await ListenPage.open(browser);
    const [one, other] = [listen.page, await listen.context.newPage()];
    const address = `${inject('pageAddress')}#/machines`;
    await one.goto(address);
    await other.goto(address);
    await one.getByRole('button', { name: 'Bed-slinger' }).click();
    await other.getByRole('link', { name: 'My bed-slinger' }).click();
    await other.getByRole('textbox', { name: 'Name of the machine' }).fill('Long bed');
    await other.getByRole('textbox', { name: 'Name of the machine' }).press('Enter');
    await one.getByRole('heading', { name: 'Long bed' }).waitFor();
    await one.getByRole('textbox', { name: 'What it is' }).fill('the one by the door');
    await one.getByRole('textbox', { name: 'What it is' }).press('Enter');
    await other.getByText('Bed-slinger, the one by the door').waitFor();
    await other.getByRole('heading', { name: 'Long bed' }).waitFor();
    expect(listen.complaints).toEqual([]);
    await listen.close();
  });

  it('says at once when there is no room, offers a file of it, and keeps it when there is room again', async () => {
    const listen = await ListenPage.open(browser);
    const { page } = listen;
    const devtools = await listen.context.newCDPSession(page);
    const origin = new URL(inject('pageAddress')).origin;
    await page.goto(`${inject('pageAddress')}#/machines`);
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await page.getByRole('button', { name: 'Single loop' }).click();
    await page.getByRole('alert').getByText('There is no room left to keep this.').waitFor();
    await page.getByText('One change is only in this page.').waitFor();
    await page.getByRole('heading', { name: 'My axis' }).waitFor(); // and the work goes on

    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save a file' }).click()]);
    const file = JSON.parse(readFileSync(await download.path(), 'utf8')) as { machines: { name: string }[] };
    expect(file.machines.map(({ name }) => name)).toEqual(['My axis']);

    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    await page.reload();
    await page.getByRole('heading', { name: 'My axis' }).waitFor();
    await listen.close();
  });

  it('says so where the browser keeps nothing, and measures all the same', async () => {
    const before = () => {
      Object.defineProperty(IDBFactory.prototype, 'open', {
        value: () => {
          throw new DOMException('not allowed here', 'SecurityError');
        },
      });
    };
    const listen = await ListenPage.open(browser, { before });
    await listen.page.getByRole('alert').getByText('This browser keeps nothing for this page.').waitFor();
    await listen.button('Play the demo take').click();
    await listen.page.getByText('Reading, three plucks, demo').waitFor({ timeout: 30_000 });
    await listen.close();
  });
});
