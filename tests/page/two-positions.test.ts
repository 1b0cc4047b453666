/** Two positions as a person meets them: offered where they pay, led through, combined, and refused where the force was not the same. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ListenPage, openBrowser } from '../support/listen-page.ts';
import { recordingAt, TWO_DENSITY } from '../support/two-recordings.ts';

const FORCE_N = 7;
const seriousIn = async ({ page }: ListenPage): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
};
const overhang = ({ page }: ListenPage) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 }, colorScheme: 'dark' },
  { name: 'phone', viewport: { width: 320, height: 700 }, colorScheme: 'light' },
] as const)('two positions, $name', ({ viewport, colorScheme }) => {
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser, { viewport, colorScheme });
    listen.page.setDefaultTimeout(20_000);
  });
  afterAll(() => browser.close());
  const spoken = () => listen.page.getByRole('status', { name: 'Two positions' });

  it('are offered below a reading that they would make surer, with the gain', async () => {
    await listen.belt().selectOption({ label: 'My own belt' });
    await listen.textbox('Linear density').fill(TWO_DENSITY);
    await listen.textbox('Span length').fill('100');
    await listen.textbox('Span length').press('Enter');
    await listen.recording().setInputFiles(recordingAt(100, FORCE_N));
    const offer = listen.page.getByText(/A second position would tell more: at \d+\smm too, ±\s[\d.]+\s% would become ±\s[\d.]+\s%\./u);
    await offer.waitFor({ timeout: 30_000 });
    const [now, then] = [.../±\s([\d.]+)\s% would become ±\s([\d.]+)\s%/u.exec((await offer.textContent()) ?? '')!].slice(1).map(Number);
    expect(then).toBeLessThan(0.8 * now!);
  });

  it('go on from the reading, say what to do next, and take a second one by the keyboard alone', async () => {
    await listen.page.getByRole('link', { name: 'Pluck at two positions' }).focus();
    await listen.page.keyboard.press('Enter');
    await spoken().getByText('Move the carriage').waitFor();
    await listen.page.getByText(/Expected: ±\s[\d.]+\s% and ±\s[\d.]+\s% alone, ±\s[\d.]+\s% together\./u).waitFor();
    expect(await listen.textbox('First position').inputValue()).toBe('100');
    expect(await listen.textbox('Second position').inputValue()).toBe('300');
    expect(await seriousIn(listen)).toEqual([]);
    expect(await overhang(listen)).toBe(0);
    await listen.recording().focus();
    await listen.recording().setInputFiles(recordingAt(300, FORCE_N));
    await spoken()
      .getByText(/so it may be one\./u)
      .waitFor({ timeout: 30_000 });
    const text = (await spoken().textContent()) ?? '';
    const [force, doubt] = [/([\d.]+)\sN/u.exec(text)?.[1], /±\s([\d.]+)\sN/u.exec(text)?.[1]].map(Number);
    expect(Math.abs(force! - FORCE_N)).toBeLessThan(doubt!);
    expect(doubt!).toBeLessThan(0.06 * FORCE_N);
    expect(await spoken().getByText('trusted', { exact: true }).isVisible()).toBe(true);
    expect(await seriousIn(listen)).toEqual([]);
    expect(await overhang(listen)).toBe(0);
  });

  it('refuse to combine a force that was not the same, and say what to do', async () => {
    await listen.button('Start over').click();
    await listen.recording().setInputFiles(recordingAt(100, FORCE_N));
    await spoken().getByText('Move the carriage').waitFor({ timeout: 30_000 });
    await listen.recording().setInputFiles(recordingAt(300, 1.35 * FORCE_N));
    await spoken().getByText('Not one force').waitFor({ timeout: 30_000 });
    expect(await spoken().textContent()).toMatch(/Run the carriage end to end by hand/u);
    expect(await seriousIn(listen)).toEqual([]);
  });

  it('leave Listen as it was', async () => {
    await listen.page.getByRole('link', { name: 'Back to Listen' }).click();
    await expect.poll(() => listen.reading()).toMatch(/N/u);
    expect(listen.complaints).toEqual([]);
  });
});
