/** Targets on the machine page: as a frequency, computed from what moves, none at all; and the card that is printed. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Locator } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { machinesEn } from '../../src/words/machines-en.ts';
import { targetsEn } from '../../src/words/targets-en.ts';
import { ListenPage, openBrowser } from '../support/listen-page.ts';

describe('targets', () => {
  let browser: Browser;
  let listen: ListenPage;
  const belt = (): Locator => listen.page.locator('machine-belt').first();
  const fill = async (name: string, text: string): Promise<void> => {
    const field = belt().getByLabel(name, { exact: true });
    await field.fill(text);
    await field.press('Enter');
  };
  const serious = async (): Promise<readonly string[]> => {
    const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  };

  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser);
    await listen.page.goto(`${listen.page.url()}#/machines`);
    await listen.button(machinesEn.addDemo).click();
    await belt().getByText(targetsEn.window).click();
  });
  afterAll(() => browser.close());

  it('computes the window that stands beside it by hand', async () => {
    await fill('Moving mass, x', '300 g');
    await fill('Acceleration, x', '4');
    await fill('Friction, x', '1');
    await fill('Moving mass, y, gantry with carriage', '0.8 kg');
    await fill('Acceleration, y', '3');
    await fill('Friction, y', '1.5');
    await fill('Whole belt', '1200');
    await fill('Shortest motor to carriage', '60');
    // By hand: (0.3 · 4 + 1 + 0.8 · 3 + 1.5)/2 = 3.05 N; share 1140/1200 = 0.95; low 3.05 · 1.15 = 3.5075; belt 26.2 − 3.05 · 0.95 = 23.30
    const result = belt().locator('machine-window').getByRole('status');
    await expect.poll(() => result.textContent()).toMatch(/Between 3\.5 and 23\sN/u);
    expect(await result.textContent()).toMatch(/loses 95\s% of it/u);
    await result.getByRole('button', { name: targetsEn.use }).click();
    await expect.poll(() => belt().getByRole('textbox', { name: 'Target from' }).inputValue()).toBe('3.51');
    expect(await belt().getByRole('textbox', { name: 'Target to' }).inputValue()).toBe('23.3');
    expect(await serious()).toEqual([]);
  });

  it('says where there is no window, and which bound stands in the way', async () => {
    await fill('Acceleration, x', '60');
    await fill('Acceleration, y', '40');
    const result = belt().locator('machine-window').getByRole('status');
    await expect.poll(() => result.textContent()).toContain(targetsEn.noWindow);
    expect(await result.textContent()).toContain(targetsEn.change.belt);
    expect(await result.getByRole('button').count()).toBe(0);
  });

  it('takes a frequency on a span and keeps it one', async () => {
    await belt().getByLabel(machinesEn.targetUnit).selectOption('Hz');
    await fill('Target from', '80');
    await fill('Target to', '95');
    await fill(targetsEn.onSpan, '180');
    await expect.poll(() => belt().locator('machine-target #note').textContent()).toContain('whatever the belt weighs');
    await listen.page.reload();
    await belt().waitFor();
    expect(await belt().getByLabel(machinesEn.targetUnit).inputValue()).toBe('Hz');
    expect(await belt().getByRole('textbox', { name: 'Target from' }).inputValue()).toBe('80');
    expect(await belt().getByRole('textbox', { name: 'Target to' }).inputValue()).toBe('95');
  });

  it('prints a card with span, force and frequency for each belt', async () => {
    await listen.page.getByRole('link', { name: targetsEn.card.page }).click();
    await listen.page.getByRole('heading', { name: 'Target card, Dovetable' }).waitFor();
    const rows = await listen.page.locator('target-card tbody tr').allTextContents();
    expect(rows.length).toBeGreaterThanOrEqual(2);
    expect(rows[0]).toMatch(/A.*180\smm.*N.*80\.0 to 95\.0\sHz/su);
    expect(rows.at(-1)).toMatch(/B.*6 to 9\sN.*Hz/su);
    expect(await serious()).toEqual([]);
    await listen.page.emulateMedia({ media: 'print' });
    expect(await listen.button(targetsEn.card.print).isVisible()).toBe(false);
    expect(listen.complaints).toEqual([]);
  });
});
