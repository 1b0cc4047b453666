/** Weighing on the page: one press from the setup, a density with its doubt, kept over a reload; what cannot be read is named and nothing is lost. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

const FIXED = ['Belt', 'Linear density', 'Span length', 'Target from', 'Target to', 'Open a recording'];

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 }, colorScheme: 'light' },
  { name: 'phone', viewport: { width: 320, height: 700 }, colorScheme: 'dark' },
] as const)('weighing, $name', ({ viewport, colorScheme }) => {
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser, { viewport, colorScheme });
    listen.page.setDefaultTimeout(10_000);
  });
  afterAll(() => browser.close());

  it('names what cannot be read and keeps what was typed', async () => {
    await listen.page.getByRole('button', { name: 'Weigh it' }).click();
    await listen.textbox('Length of the piece').fill('500');
    await listen.textbox('Mass shown').fill('3 parrots');
    await listen.textbox('Step of the scale').fill('0.01');
    await listen.button('Use it').click();
    const dialog = listen.page.getByRole('dialog', { name: 'Weigh it' });
    expect(await dialog.textContent()).toContain('The unit parrots is not known here.');
    expect(await listen.textbox('Length of the piece').inputValue()).toBe('500');
    expect(await listen.textbox('Mass shown').evaluate((input) => input.matches(':focus'))).toBe(true);
    await listen.button('Leave it').click();
    await listen.button('Weigh it').click();
    expect(await listen.textbox('Mass shown').inputValue()).toBe('3 parrots');
  });

  it('asks where the catalogue says otherwise', async () => {
    await listen.textbox('Mass shown').fill('38.7');
    await listen.button('Use it all the same').waitFor();
    expect(await listen.page.getByText(/Is it this pitch and this width/u).isVisible()).toBe(true);
  });

  it('keeps the fixed names of the page unambiguous, and axe finds nothing serious', async () => {
    for (const name of FIXED) expect(await listen.page.getByLabel(name).count(), name).toBe(name === 'Linear density' ? 0 : 1);
    const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
    expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')).toEqual([]);
    expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });

  it('gives a density with its doubt, which the setup takes and a reload keeps', async () => {
    await listen.textbox('Mass shown').fill('3.87');
    await listen.page.getByText(/this belt: 7\.74\d\sg\/m\s±\s0\.0\d+\sg\/m/u).waitFor();
    await listen.button('Use it').click();
    const told = listen.page.getByText(/7\.74\d\sg\/m\s±\s0\.0\d+\sg\/m, weighed/u);
    await told.waitFor();
    await listen.page.reload();
    await told.waitFor();
    await listen.button('Weigh it again').click();
    expect(await listen.textbox('Mass shown').inputValue()).toBe('3.87');
    await listen.button('Leave it').click();
    await listen.button('Back to the catalogue').click();
    await listen.page
      .getByText(/10\s%|20\s%/u)
      .first()
      .waitFor();
    expect(listen.complaints).toEqual([]);
  });

  it('counts the teeth of a loop', async () => {
    await listen.button('Weigh it').click();
    await listen.page.getByRole('combobox', { name: 'On the scale lies' }).selectOption('a closed loop');
    await listen.textbox('Teeth of the loop').fill('99.5');
    await listen.page.getByText('Write a whole number of teeth.').waitFor();
    await listen.textbox('Teeth of the loop').fill('250');
    await listen.textbox('Mass shown').fill('3.9');
    await listen.textbox('Step of the scale').fill('0.1');
    await listen.page.getByText(/this belt: 7\.8\d?\sg\/m/u).waitFor();
    await listen.page.keyboard.press('Escape');
  });
});

describe('how the span is held', () => {
  it('tells ends by kind and how it lies, and a reload keeps both', async () => {
    const browser = await openBrowser();
    const listen = await ListenPage.open(browser);
    listen.page.setDefaultTimeout(10_000);
    const choice = (name: string) => listen.page.getByRole('combobox', { name });
    await listen.page.getByText('Ends, stiffness, tolerance').click();
    expect(await choice('First end').locator('option').allTextContents()).toEqual([
      'not known',
      'runs round a toothed pulley',
      'runs round a smooth idler',
      'held in a clip or clamp',
    ]);
    await choice('Second end').selectOption('runs round a smooth idler');
    await choice('How it lies').selectOption('flat');
    await listen.page.reload();
    await listen.page.getByText('Ends, stiffness, tolerance').click();
    expect(await choice('Second end').inputValue()).toBe('idler');
    expect(await choice('How it lies').inputValue()).toBe('flat');
    await browser.close();
  });
});
