/** The whole way by keyboard alone, and the keys that stand for buttons. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const nameOfFocus = (listen: ListenPage): Promise<string> =>
  listen.page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const labels = active instanceof HTMLInputElement || active instanceof HTMLSelectElement ? active.labels : null;
    if (active?.closest('nav')) return `place ${active.textContent?.trim()}`;
    return active?.getAttribute('aria-label') ?? labels?.[0]?.textContent?.trim() ?? active?.textContent?.trim() ?? '';
  });

/** Presses Tab until a control of this name has the focus, past the places of the bar; fails after going round. */
async function tabTo(listen: ListenPage, name: string): Promise<readonly string[]> {
  const passed: string[] = [];
  for (let press = 0; press < 40; press += 1) {
    await listen.page.keyboard.press('Tab');
    const found = await nameOfFocus(listen);
    passed.push(found);
    if (found === name) return passed;
  }
  throw new Error(`no ${name} among ${passed.join(', ')}`);
}

describe('by keyboard alone', () => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser({ microphone: 'plain-150mm.wav' });
    listen = await ListenPage.open(browser);
  });
  afterAll(() => browser.close());

  it('reaches every control: setup, Listen, then the rest', async () => {
    const passed = await tabTo(listen, 'Open a recording');
    const wanted = ['Belt', 'Span length', 'Known to ±', 'Target from', 'Target to', 'Unit of force', 'Ends, stiffness, tolerance'];
    const order = [...wanted, 'Microphone', 'Listen', 'Play the demo take', 'Open a recording'].map((name) => passed.indexOf(name));
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('types, listens, undoes and starts over without a pointer', async () => {
    await listen.page.reload();
    await tabTo(listen, 'Belt');
    await listen.page.keyboard.press('End'); // the last entry is the own belt
    await tabTo(listen, 'Linear density');
    await listen.page.keyboard.type(`${truth.linearDensityKgPerM * 1000}`);
    await tabTo(listen, 'Span length');
    await listen.page.keyboard.type('150');
    await tabTo(listen, 'Listen');
    await listen.page.keyboard.press('Enter');
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 30_000 }).toBeCloseTo(truth.forceN, 0);
    await expect.poll(() => listen.page.getByText('3 plucks', { exact: true }).isVisible(), { timeout: 30_000 }).toBe(true);
    await listen.page.keyboard.press('l');
    await listen.button('Listen').waitFor();
    await listen.page.keyboard.press('u');
    await expect.poll(() => listen.page.getByText('Reading, two plucks').isVisible()).toBe(true);
    await tabTo(listen, 'Start over');
    await listen.page.keyboard.press('Space');
    await expect.poll(() => listen.reading()).toContain('No reading yet');
  });

  it('fires no key while someone types', async () => {
    await listen.textbox('Span length').focus();
    await listen.page.keyboard.type('lu');
    expect(await listen.button('Listen').isVisible()).toBe(true);
    expect(await listen.textbox('Span length').inputValue()).toContain('lu');
  });

  it('opens the cautions and leaves them with Esc', async () => {
    await listen.button('Cautions').focus();
    await listen.page.keyboard.press('Enter');
    expect(await listen.page.getByRole('dialog', { name: 'Cautions' }).isVisible()).toBe(true);
    await listen.page.keyboard.press('l');
    await listen.page.keyboard.press('Escape');
    expect(await listen.page.getByRole('dialog').isVisible()).toBe(false);
    expect(await listen.button('Listen').isVisible()).toBe(true);
  });
});
