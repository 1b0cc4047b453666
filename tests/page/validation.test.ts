/** The validation kit on the built page: takes under weights, an agreement report that names what is off, and a folder that says the same elsewhere. */

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { belts } from '../../shared/belts.ts';
import { agreementCommand } from '../../src/cli/agreement-command.ts';
import { measure } from '../../src/core/measure.ts';
import { readWav } from '../../src/core/samples/wav.ts';
import { sessionTakes } from '../support/known-force-session.ts';
import { ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';
import { unzipped } from '../support/unzip.ts';

const open = (browser: Browser, options = {}) =>
  ListenPage.open(browser, { address: `${inject('pageAddress')}#/logbook/validation`, ...options });

const serious = async (page: Page) => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
};

describe('a session with a density told 10 % too high', () => {
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[];
  let folder: string;
  beforeAll(async () => {
    browser = await openBrowser();
    ({ page, complaints } = await open(browser));
    page.setDefaultTimeout(20_000);
    folder = mkdtempSync(join(tmpdir(), 'takes-'));
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('asks for what is missing, then takes recordings one after the other', async () => {
    await page.getByRole('button', { name: 'Listen to this take' }).click();
    await page.getByText('Fill in density, span and weight first.').waitFor();
    await page.getByRole('textbox', { name: 'Linear density' }).fill('8.591 g/m ± 0.08 g/m');
    await page.getByRole('textbox', { name: 'Known to ±' }).fill('0.6');
    for (const [index, { wav, truth }] of sessionTakes({ spansM: [0.26, 0.13], forcesN: [4, 9, 20], toldDensity: 1.1 }).entries()) {
      await page.getByRole('textbox', { name: 'Span length' }).fill(`${truth.spanLengthM * 1000}`);
      await page.getByRole('textbox', { name: 'What hangs' }).fill(`${truth.forceN} N`);
      await page.getByRole('textbox', { name: 'What hangs' }).press('Enter');
      await page.getByLabel('Or open a recording').setInputFiles({ name: 'pluck.wav', mimeType: 'audio/wav', buffer: Buffer.from(wav) });
      await page.getByRole('rowheader', { name: `take-0${index + 1}`, exact: true }).waitFor();
    }
    await page.getByText('This is enough for an answer.').waitFor();
  });

  it('names the density as the likely cause', async () => {
    await page.getByText(/Likely cause: the linear density\. 8\.59\sg\/m was told, \+\d+(?:\.\d)?\s% off/u).waitFor();
    expect(await serious(page)).toEqual([]);
  });

  it('lets a take be dropped and brought back', async () => {
    await page.getByRole('button', { name: 'Drop take-02' }).click();
    await page.getByText('take-02 was dropped.').waitFor();
    expect(await page.getByRole('rowheader').count()).toBe(5);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByRole('rowheader').count()).toBe(6);
  });

  it('finds the session again after a reload, and lets it be begun anew and brought back', async () => {
    const sentence = await page.getByText(/Likely cause: the linear density/u).textContent();
    await page.getByText('the takes stay in this browser too').waitFor();
    await page.reload();
    await page.getByRole('rowheader', { name: 'take-06', exact: true }).waitFor();
    expect(await page.getByText(/Likely cause: the linear density/u).textContent()).toBe(sentence);
    expect(await page.getByRole('textbox', { name: 'Linear density' }).inputValue()).toBe('8.591 g/m ± 0.08 g/m');
    await page.getByRole('button', { name: 'Begin anew' }).click();
    await page.getByText('All takes were dropped.').waitFor();
    expect(await page.getByRole('rowheader').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByRole('rowheader').count()).toBe(6);
  });

  it('leaves a folder of which the command line says the same', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the folder' }).click()]);
    for (const [name, bytes] of unzipped(readFileSync(await download.path()))) writeFileSync(join(folder, name), bytes);
    let answer = '';
    const terminal = {
      answer: (text: string) => {
        answer += text;
      },
      complain: (text: string) => {
        throw new Error(text);
      },
      folder,
    };
    expect(await agreementCommand(['.'], { terminal, measure, catalogue: belts })).toBe(0);
    const sentences = answer.trim().split('\n\n').at(-1)!.split('\n');
    expect(sentences.at(-1)).toContain('Likely cause: the linear density.');
    for (const sentence of sentences) await page.getByText(sentence.replaceAll('\u00a0', ' ')).waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('a take through the microphone', () => {
  it('brings its recording along', async () => {
    const browser = await openBrowser({ microphone: 'plain-150mm.wav' });
    const { page } = await open(browser, { viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
    page.setDefaultTimeout(20_000);
    const truth = truthOf('plain-150mm');
    await page.getByRole('textbox', { name: 'Linear density' }).fill(`${truth.linearDensityKgPerM * 1000}`);
    await page.getByRole('textbox', { name: 'Span length' }).fill('150');
    await page.getByRole('textbox', { name: 'What hangs' }).fill(`${truth.forceN} N`);
    await page.getByRole('textbox', { name: 'What hangs' }).press('Enter');
    await page.getByRole('button', { name: 'Listen to this take' }).click();
    await page.getByText('3 plucks.').waitFor();
    await page.getByRole('button', { name: 'Stop and take it' }).click();
    await page.getByRole('rowheader', { name: 'take-01', exact: true }).waitFor();
    await page.getByText(/holds the weight in 1 of 1/u).waitFor();
    expect(await serious(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the folder' }).click()]);
    const wav = readWav(unzipped(readFileSync(await download.path())).get('take-01.wav')!);
    if (wav.kind !== 'wav') throw new Error(wav.why);
    expect(wav.recording.samples.length / wav.recording.sampleRateHz).toBeGreaterThan(2.5);
    const { plucks } = measure(wav.recording, { ends: [{ kind: 'unknown' }, { kind: 'unknown' }] });
    // A busy machine drops blocks of the microphone, and told nothing of the span a gap can be taken for one more.
    expect(plucks.length).toBeGreaterThanOrEqual(3);
    for (const { frequencyHz } of plucks.slice(0, 3)) expect(Math.abs(frequencyHz.value / truth.frequencyHz - 1)).toBeLessThan(0.01);
    await browser.close();
  });
});
