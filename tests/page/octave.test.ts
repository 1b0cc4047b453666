/** From a sound that two numberings fit to a decided reading: both forces with their probabilities, one pluck with a finger on the middle, and the way back. */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, ListenPage, openBrowser } from '../support/listen-page.ts';
import { octaveTake, octaveTruth } from '../support/octave-take.ts';

const folder = mkdtempSync(join(tmpdir(), 'spanwright-'));
const fileOf = (name: string, startsS: readonly number[]): string => {
  const path = join(folder, name);
  writeFileSync(path, octaveTake(startsS));
  return path;
};
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Both forces with their probabilities, as the table says them. */
async function choices({ page }: ListenPage) {
  const rows = await page.getByRole('table', { name: 'Both readings with their probabilities' }).getByRole('row').allTextContents();
  return rows.slice(1).map((row) => {
    const [, forceN, u95N] = /([\d.]+)\sN\s±\s([\d.]+)\sN/u.exec(row)!.map(Number);
    return { forceN: forceN!, u95N: u95N!, percent: Number(/(\d+)\s%/u.exec(row)![1]) };
  });
}
const holds = ({ forceN, u95N }: { forceN: number; u95N: number }): boolean => Math.abs(forceN - octaveTruth.forceN) <= u95N;

async function isDecided(listen: ListenPage): Promise<void> {
  await expect
    .poll(async () => (await listen.reading()).includes('Numbered by the pluck with a finger on the middle.'), { timeout: 25_000 })
    .toBe(true);
  const reading = figuresIn(await listen.reading())!;
  expect(holds({ forceN: reading.forceN, u95N: reading.forceU95N })).toBe(true);
  expect(Math.abs(reading.frequencyHz / octaveTruth.frequencyHz - 1)).toBeLessThan(0.03);
  expect(await listen.page.getByText('Two numberings fit').count()).toBe(0);
  expect(await listen.page.getByText('octave not certain').count()).toBe(0);
}

describe('through the microphone', () => {
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser({ microphoneFile: fileOf('spoken-twice.wav', [1.6, 11]) });
    listen = await ListenPage.open(browser);
    listen.page.setDefaultTimeout(20_000);
    await listen.describe(octaveTruth);
    await listen.button('Listen').click();
    await listen.button('Settle it with one pluck').waitFor();
  });
  afterAll(() => browser.close());

  it('tells both forces with their probabilities, one of them the true one, and trusts neither', async () => {
    const [own, rival] = await choices(listen);
    expect(own!.percent + rival!.percent).toBe(100);
    expect(own!.percent).toBeGreaterThan(rival!.percent);
    expect([own!, rival!].map(holds)).toEqual([false, true]);
    expect(await listen.reading()).not.toContain('trusted');
    expect((await new AxeBuilder({ page: listen.page }).analyze()).violations.filter(({ impact }) => impact === 'serious')).toEqual([]);
  });

  it('asks for the one pluck that decides, reads it in that light, and holds the true force', async () => {
    await listen.button('Settle it with one pluck').click();
    await expect.poll(() => listen.reading(), { timeout: 5_000 }).toContain('Touch the middle, pluck at a quarter');
    await isDecided(listen);
    expect(await listen.page.getByText('Reading, one pluck', { exact: true }).isVisible()).toBe(true); // the deciding one is none of it
  });

  it('takes the deciding pluck back first', async () => {
    await listen.button('Stop').click();
    await listen.button('Undo last pluck').click();
    await listen.page.getByText('Two numberings fit').waitFor();
    await listen.button('Undo last pluck').click();
    await expect.poll(() => listen.reading(), { timeout: 5_000 }).toContain('No reading yet');
    expect(listen.complaints).toEqual([]);
  });
});

describe('by recordings, on a narrow page', () => {
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser({ device: false });
    listen = await ListenPage.open(browser, { viewport: { width: 320, height: 700 }, colorScheme: 'dark' });
    listen.page.setDefaultTimeout(20_000);
    await listen.describe(octaveTruth);
    await listen.recording().setInputFiles(fileOf('plain.wav', [0.7]));
    await listen.button('Settle it with one pluck').waitFor();
  });
  afterAll(() => browser.close());

  it('nothing scrolls sideways', async () => {
    expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });

  it('a recording of the deciding pluck serves as well, also where there is no microphone', async () => {
    await listen.button('Settle it with one pluck').click();
    await expect.poll(() => listen.reading(), { timeout: 5_000 }).toContain('No microphone found');
    await listen
      .recording()
      .first()
      .setInputFiles(fileOf('touched.wav', [0.6]));
    await isDecided(listen);
  });
});
