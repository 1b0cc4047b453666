/** From a reading that is doubted to its remedy: what each would give, and the best one taken up at once, on a wide page and on a phone. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { figuresIn, fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 } },
  { name: 'phone', viewport: { width: 390, height: 844 } },
])('a doubted reading, $name', ({ name, viewport }) => {
  const truth = truthOf('short-stiff-60mm');
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser, { viewport });
    await listen.textbox('Span length').fill('60');
    await listen.recording().focus();
    await listen.recording().setInputFiles(fixturePath('short-stiff-60mm.wav'));
    await vi.waitFor(async () => expect(figuresIn(await listen.reading())).toBeDefined(), { timeout: 20_000 });
  });
  afterAll(() => browser.close());

  it('says what each remedy would give, to the ear as a table', async () => {
    const table = listen.page.getByRole('table', { name: 'What each remedy would give' });
    await table.waitFor({ state: 'attached' }); // reckoned beside the page
    const rows = await table.getByRole('row').allTextContents();
    expect(rows.length).toBeGreaterThan(3);
    expect(rows[1]).toContain('as it is now');
    for (const row of rows.slice(2)) expect(row).toMatch(/±\s[\d.]+\sN/u);
  });

  it('has one main action: the best remedy', async () => {
    expect(await listen.page.locator('button.solid:visible').allTextContents()).toEqual(['Weigh this belt']);
    if (name === 'wide') expect(await listen.button('Weigh this belt').isVisible()).toBe(true);
  });

  it('leads to where the belt is weighed, and the same pluck is read anew', async () => {
    const before = figuresIn(await listen.reading())!;
    await listen.button('Weigh this belt').click();
    const field = listen.textbox('Length of the piece');
    expect(await field.evaluate((input) => (input.getRootNode() as ShadowRoot).activeElement === input)).toBe(true);
    await listen.page.keyboard.type('500');
    await listen.textbox('Mass shown').fill(String(truth.linearDensityKgPerM * 500));
    await listen.textbox('Step of the scale').fill('0.01');
    await listen.button('Use it').click();
    await expect.poll(async () => figuresIn(await listen.reading())?.forceU95N, { timeout: 10_000 }).toBeLessThan(before.forceU95N);
    const after = figuresIn(await listen.reading())!;
    expect(Math.abs(after.forceN - truth.forceN)).toBeLessThanOrEqual(after.forceU95N);
    expect(await listen.reading()).not.toContain('Nobody has weighed');
    expect(listen.complaints).toEqual([]);
  });
});

describe('the setup beside a reading', () => {
  it('rests as a summary, its fields still within reach by their names', async () => {
    const browser = await openBrowser();
    const listen = await ListenPage.open(browser);
    await listen.describe(truthOf('plain-150mm'));
    await listen.recording().focus();
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(async () => figuresIn(await listen.reading()), { timeout: 20_000 }).toBeDefined();
    const before = figuresIn(await listen.reading())!;
    expect(await listen.page.getByText(/150\smm ±\s1\smm/u).isVisible()).toBe(true);
    await listen.button('Change').click();
    expect(await listen.textbox('Span length').isVisible()).toBe(true);
    await listen.button('Done').click();
    await listen.textbox('Span length').fill('300');
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 10_000 }).toBeGreaterThan(3.5 * before.forceN);
    for (const name of ['Linear density', 'Span length', 'Target from', 'Target to'])
      expect(await listen.textbox(name).count(), name).toBe(1);
    expect(await listen.belt().count()).toBe(1);
    await browser.close();
  });
});
