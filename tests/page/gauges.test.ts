/**
 * A gauge from an empty browser: six loads, three times put on anew, once up and down, typed in by the keyboard; the curve, the printed chart,
 * and a conversion beside a pluck that was recorded. All readings are invented; the recording is a fixture with its truth beside it.
 */

import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SpanwrightApp } from '../../src/ui/app.ts';
import { fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

/** Reading = 0.4 + 0.3 F, to the twentieth; a small up-and-down that repeats. */
const readingUnder = (massG: number, index: number, offset = 0): string =>
  (Math.round((0.4 + 0.3 * ((massG / 1000) * 9.80665) + (((index * 7) % 3) - 1) * 0.04 + offset) * 20) / 20).toFixed(2);

/** What the run asks for next; names the weight. */
const INSTRUCTION = /^(?:Hang weight\s\d|Gauge left on\.)/u;
const TRUTH = truthOf('plain-150mm');

async function typeRun(page: Page): Promise<number> {
  const field = page.getByRole('textbox', { name: 'Reading', exact: true });
  let count = 0;
  for (; ; count++) {
    const now = page.getByText(INSTRUCTION);
    if ((await now.count()) === 0) return count;
    const grams = Number(/([\d,]+)\sg/u.exec((await now.textContent())!)![1]!.replace(',', ''));
    const before = await page.getByText(/^\d+ of \d+$/u).textContent();
    await field.fill(readingUnder(grams, count));
    await field.press('Enter');
    await expect.poll(() => page.getByText(/^\d+ of \d+$/u).textContent()).not.toBe(before);
  }
}

describe('a gauge', () => {
  let browser: Browser;
  let listen: ListenPage;
  let page: Page;

  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser);
    page = listen.page;
  });
  afterAll(() => browser.close());

  it('begins with what is wanted of it, and loads that span it', async () => {
    await page.getByRole('link', { name: 'Gauges' }).click();
    await page.getByRole('button', { name: 'Add a gauge' }).first().click();
    await page.getByRole('textbox', { name: 'Name of the gauge' }).fill('Wooden lever');
    await page.getByRole('textbox', { name: 'Name of the gauge' }).press('Enter');
    await page.getByRole('textbox', { name: 'Wanted from' }).fill('9');
    await page.getByRole('textbox', { name: 'Wanted to' }).fill('14');
    await page.getByRole('textbox', { name: 'Wanted to' }).press('Enter');
    await page.getByRole('button', { name: 'Propose six loads' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'On the scale' }).count()).toBe(6);
    expect(await page.getByText('Hang weights low').isVisible()).toBe(true);
  });

  it('takes thirty readings by the keyboard alone, over a reload, and says at once where one is odd', async () => {
    const field = page.getByRole('textbox', { name: 'Reading', exact: true });
    await field.fill('much');
    await field.press('Enter');
    await page.getByText('Type the reading as a number').waitFor();
    await field.fill('');
    const half = page.getByText('15 of 30');
    for (let count = 0; !(await half.isVisible()); count++) {
      const text = (await page.getByText(INSTRUCTION).textContent())!;
      const before = await page.getByText(/^\d+ of \d+$/u).textContent();
      await page.keyboard.type(readingUnder(Number(/([\d,]+)\sg/u.exec(text)![1]!.replace(',', '')), count));
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByText(/^\d+ of \d+$/u).textContent()).not.toBe(before);
    }
    await page.reload();
    await half.waitFor();
    const grams = Number(/([\d,]+)\sg/u.exec((await page.getByText(INSTRUCTION).textContent())!)![1]!.replace(',', ''));
    await field.fill(readingUnder(grams, 0, 1));
    await field.press('Enter');
    await page.getByText('It was kept. Look once more').waitFor();
    await page.getByRole('button', { name: 'Leave it out' }).first().click();
    await half.waitFor(); // it is read again
    expect(await typeRun(page)).toBe(15);
    await page.getByText('All loads are read.').waitFor();
  });

  it('has a verified range, a curve and figures, and no doubt about its rig', async () => {
    const head = (await page.locator('answer-line').textContent())!;
    const [low, high] = /Verified from ([\d.]+) to ([\d.]+)\sN/u.exec(head.replaceAll(/\s+/gu, ' '))!.slice(1).map(Number);
    expect(low).toBeLessThan(9);
    expect(high).toBeGreaterThan(14);
    expect(await page.getByText('straight line').first().isVisible()).toBe(true);
    expect(await page.getByRole('img', { name: /readings against the force that hung/u }).isVisible()).toBe(true);
    expect(await page.getByText('To look at').isVisible()).toBe(false);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
  });

  it('prints its chart on one page of A5, in newtons and a second unit, with what is not verified', async () => {
    await page.getByRole('link', { name: 'Chart', exact: true }).click();
    await page.getByRole('heading', { name: 'Wooden lever' }).waitFor();
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/gu)].map(([, width, height]) => [
      Number(width),
      Number(height),
    ]);
    expect(boxes).toHaveLength(1);
    // ISO 216: A5 is 148 mm by 210 mm, 419.5 by 595.3 points.
    expect(Math.abs(boxes[0]![0]! - 419.5)).toBeLessThan(1);
    expect(Math.abs(boxes[0]![1]! - 595.3)).toBeLessThan(1);
    await page.emulateMedia({ media: 'print' });
    const rows = page.getByRole('table').first().getByRole('row');
    const first = (await rows.nth(1).textContent())!.replaceAll(/\s+/gu, ' ');
    const [reading, forceN, u95N, other] = /([\d.]+) ([\d.]+) N± ([\d.]+) N ([\d.]+) lbf/u.exec(first)!.slice(1).map(Number) as [
      number,
      number,
      number,
      number,
    ];
    expect(Math.abs(0.4 + 0.3 * forceN - reading)).toBeLessThan(0.3 * u95N);
    expect(other).toBeCloseTo(forceN / 4.4482216152605, 1); // NIST SP 811: 1 lbf = 4.448222 N
    expect(await page.getByText('No force: not verified.').isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: 'Print the chart' }).isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as CSV' }).click()]);
    expect(readFileSync(await download.path(), 'utf8')).toMatch(/^reading,force_n,u95_n,low_n,high_n\r\n[\d.]+,/u);
  });

  it('agrees with a pluck that was recorded on the same belt, and names what could part them', async () => {
    await page.getByRole('link', { name: 'Listen' }).click();
    await listen.describe(TRUTH);
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(() => listen.reading(), { timeout: 30_000 }).toMatch(/newtons/u);
    await page.getByRole('button', { name: 'Keep in logbook' }).first().click();
    await page.getByRole('textbox', { name: 'What was plucked' }).fill('bench belt');
    await page.getByRole('button', { name: 'Keep it' }).click();

    await page.getByRole('link', { name: 'Gauges' }).click();
    await page.getByRole('link', { name: /Wooden lever/u }).click();
    await page.getByRole('link', { name: 'Cross-check' }).click();
    await page.getByRole('textbox', { name: 'Gauge reading' }).fill((0.4 + 0.3 * TRUTH.forceN).toFixed(2));
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByText('Gauge and sound agree').waitFor();
    const row = (await page.getByRole('row', { name: /bench belt/u }).textContent())!;
    const [gaugeN, , soundN] = [...row.matchAll(/([\d.]+)\sN/gu)].map(([, value]) => Number(value)) as [number, number, number];
    expect(gaugeN).toBeCloseTo(TRUTH.forceN, 0);
    expect(soundN).toBeCloseTo(TRUTH.forceN, 0);
    expect(await page.getByRole('rowheader', { name: 'linear density' }).isVisible()).toBe(true);
    await page.getByRole('textbox', { name: 'Gauge reading' }).fill('5.6');
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByText('Gauge and sound differ').waitFor();
    expect(listen.complaints).toEqual([]);
  });

  it('keeps a check piece that says when to hang weights again', async () => {
    await page.getByRole('link', { name: 'Check piece' }).click();
    for (const reading of ['3.05', '3.10', '3.05', '3.10', '4.40']) {
      const field = page.getByRole('textbox', { name: /^Read/u });
      await field.fill(reading);
      await field.press('Enter');
      await expect.poll(() => field.inputValue()).toBe('');
    }
    await page.getByText('Beyond the outer limits: hang weights again.').waitFor();
    expect(await page.getByText('It stands for').count()).toBe(0); // a wire needs the contacts
  });

  it('stands beside others in one plot', async () => {
    await page.evaluate(() => {
      location.hash = '#/gauges';
    });
    await page.getByRole('button', { name: 'Bring in the demo gauges' }).click();
    await page.getByRole('link', { name: /Compare all 4/u }).click();
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect((await page.locator('answer-line').textContent())!.replaceAll(/\s+/gu, ' ')).toContain('For 9 to 14 N, take the Wooden lever');
    expect(await page.getByRole('img', { name: /^Yellow clip: unusable, at its stop inside the target/u }).isVisible()).toBe(true);
  });

  it('passes the checks for everyone on each page, and scrolls nowhere sideways at 320 px', async () => {
    const id = await page.evaluate(() => document.querySelector<SpanwrightApp>('spanwright-app')!.workbench.kept.document.gauges[0]!.id);
    for (const width of [1280, 320]) {
      await page.setViewportSize({ width, height: 800 });
      for (const place of [id, `${id}/chart`, `${id}/cross`, `${id}/check`, 'compare']) {
        await page.evaluate((hash) => {
          location.hash = `#/gauges/${hash}`;
        }, place);
        await page.getByRole('heading', { level: 1 }).waitFor();
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id: rule, nodes }) => `${place} ${rule}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
        expect(`${place} ${await page.evaluate(() => document.documentElement.scrollWidth)}`).toBe(`${place} ${width}`);
      }
    }
  });
});
