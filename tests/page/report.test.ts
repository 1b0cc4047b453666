/** The report: what it holds, its files, and its pages on A4 and on Letter. */

import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readTable } from '../../src/core/table.ts';
import { openBrowser } from '../support/listen-page.ts';
import { openLogbook } from '../support/logbook-page.ts';

/** Page sizes in points (ISO 216 A4, ANSI Letter), as the file's own page boxes say. */
const boxesOf = (pdf: Buffer): readonly (readonly [number, number])[] =>
  [...pdf.toString('latin1').matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/gu)].map(([, width, height]) => [
    Number(width),
    Number(height),
  ]);

describe('report', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    ({ page } = await openLogbook(browser));
    await page.getByRole('link', { name: 'Print a report' }).click();
    await page.getByRole('heading', { name: 'Report on Dovetable' }).waitFor();
  });
  afterAll(() => browser.close());

  const saved = async (button: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
    return readFileSync(await download.path(), 'utf8');
  };

  it('holds the state, the match, the doubt, events, readings, cautions and the program', async () => {
    for (const name of [
      'How it stands',
      'B against A',
      'What the doubt of the last readings is made of',
      'What happened',
      'Readings',
      'Cautions',
    ]) {
      await page.getByRole('heading', { name, exact: true }).waitFor();
    }
    await page.getByText(/^B stands −\d\.\d\s% ± \d\.\d\s% from A; wanted: within 5\.0\s%\.$/u).waitFor();
    await page.getByRole('rowheader', { name: 'span length' }).waitFor();
    await page.locator('report-screen').getByText('Power off and unplugged before a hand comes near the belts.').waitFor();
    await page.getByText(/with Spanwright \d+\.\d+\.\d+\.$/u).waitFor();
    expect(
      await page
        .getByRole('row')
        .filter({ hasText: /\d+\.\d\sHz/u })
        .count(),
    ).toBe(20);
  });

  it('gives its readings as a table and all of it as JSON', async () => {
    const table = readTable(await saved('Readings as a table'));
    if (table.kind !== 'table') throw new Error(table.why);
    expect(table.rows.length).toBe(22);
    const { format, readings, belts } = JSON.parse(await saved('All of it as JSON'));
    expect(format).toBe('spanwright report');
    expect(readings.length).toBe(20);
    expect(belts.map(({ name }: { name: string }) => name)).toEqual(['A', 'B']);
  });

  it.each([
    { format: 'A4', size: [595, 842] },
    { format: 'Letter', size: [612, 792] },
  ] as const)('prints on $format: its size, and nothing beyond the paper’s edge', async ({ format, size: [width, height] }) => {
    const pdf = await page.pdf({ format });
    const boxes = boxesOf(pdf);
    expect(boxes.length).toBeGreaterThanOrEqual(2);
    expect(boxes.length).toBeLessThanOrEqual(4);
    for (const [w, h] of boxes) {
      expect(Math.abs(w - width)).toBeLessThan(1.5);
      expect(Math.abs(h - height)).toBeLessThan(1.5);
    }
    const marginPx = 14 * (96 / 25.4);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.floor(width * (96 / 72) - 2 * marginPx), height: 1000 });
    await page.waitForFunction(() => document.querySelector('spanwright-app') !== null);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
    expect(await page.getByRole('button', { name: 'Print it' }).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 1280, height: 800 });
  });
});
