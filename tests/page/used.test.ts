/** 'What was used': a pluck laid open, heard again and taken along; a sound that was left aside, laid open too. */

import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Download } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readWav } from '../../src/core/samples/wav.ts';
import { fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const bytesOf = async (download: Download): Promise<Buffer> => readFileSync(await download.path());

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 }, colorScheme: 'light' },
  { name: 'phone', viewport: { width: 320, height: 700 }, colorScheme: 'dark' },
] as const)('what was used, $name', ({ viewport, colorScheme }) => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser({ more: ['--autoplay-policy=no-user-gesture-required'] });
    listen = await ListenPage.open(browser, { viewport, colorScheme });
    listen.page.setDefaultTimeout(15_000);
    await listen.describe(truth);
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await listen.page.getByText('What was used').click();
  });
  afterAll(() => browser.close());

  const panel = () => listen.page.locator('used-panel');

  it('shows the last pluck: what its partials make of it, over time and frequency, and how each died', async () => {
    await expect
      .poll(() => panel().locator('p.sentence').textContent())
      .toMatch(/\w+ partials make 99\.\d\s% of what rang from 12\sms to 6\d\d\sms/u);
    expect(await panel().locator('p.sentence').textContent()).toMatch(/What they leave lies \d\d\sdB below\./u);
    const picture = panel().getByRole('img', { name: /^Sound over time and frequency\. Partials followed: 1: 130\.3\sHz/u });
    expect(await picture.isVisible()).toBe(true);
    expect(
      await panel()
        .getByRole('img', { name: /^Level of each partial over time/u })
        .isVisible(),
    ).toBe(true);
    const inked = await panel()
      .locator('canvas')
      .evaluate((canvas: HTMLCanvasElement) => {
        const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
        return data.filter((value, i) => i % 4 === 3 && value > 128).length;
      });
    expect(inked).toBeGreaterThan(50);
    expect((await new AxeBuilder({ page: listen.page }).analyze()).violations.filter(({ impact }) => impact === 'serious')).toEqual([]);
    expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });

  it('can be heard again, and stopped', async () => {
    await listen.button('Hear it').click();
    await panel().getByRole('button', { name: 'Stop' }).click();
    await listen.button('Hear it').waitFor();
  });

  it('gives the pluck as a sound with its figures', async () => {
    await panel().getByRole('radio', { name: 'Pluck 2' }).check();
    const [sound] = await Promise.all([listen.page.waitForEvent('download'), listen.button('Save the sound').click()]);
    const [figures] = await Promise.all([listen.page.waitForEvent('download'), listen.button('Save its figures').click()]);
    expect([sound.suggestedFilename(), figures.suggestedFilename()]).toEqual(['spanwright-pluck-2.wav', 'spanwright-pluck-2.json']);
    const wav = readWav(await bytesOf(sound));
    if (wav.kind !== 'wav') throw new Error(wav.why);
    const told = JSON.parse((await bytesOf(figures)).toString('utf8')) as Record<string, number> & { partials: unknown[] };
    expect(told.file).toBe('spanwright-pluck-2.wav');
    expect(told.sampleRateHz).toBe(wav.recording.sampleRateHz);
    expect(Math.abs(told.frequencyHz! - truth.frequencyHz)).toBeLessThanOrEqual(told.frequencyU95Hz!);
    expect(told.forceLowN!).toBeLessThan(truth.forceN);
    expect(told.forceHighN!).toBeGreaterThan(truth.forceN);
    expect(told.partials.length).toBeGreaterThan(2);
    // The sound is the take's own: it swells where the figures say that the span was let go.
    const { samples, sampleRateHz } = wav.recording;
    const power = (fromS: number, toS: number) =>
      samples
        .subarray(Math.round((told.startS! + fromS) * sampleRateHz), Math.round((told.startS! + toS) * sampleRateHz))
        .reduce((sum, x) => sum + x * x, 0);
    expect(power(0, 0.03)).toBeGreaterThan(20 * power(-0.04, -0.01));
  });

  it('opens a sound that was left aside as well', async () => {
    await listen.recording().first().setInputFiles(fixturePath('taps.wav'));
    await listen.page.getByText('no ringing span').first().waitFor();
    await listen.page.getByText('What was used').click();
    await panel()
      .getByRole('radio', { name: /^Left aside, at/u })
      .first()
      .waitFor();
    await expect.poll(() => panel().locator('p.sentence').textContent(), { timeout: 10_000 }).toContain('no span rang');
    expect(await panel().getByRole('img', { name: 'Sound over time and frequency.' }).isVisible()).toBe(true);
    expect(
      await panel()
        .getByRole('img', { name: /^Level of each partial/u })
        .count(),
    ).toBe(0);
    expect(listen.complaints).toEqual([]);
  });
});
