/** The working day from an empty browser: a machine with two belts, its target, plucks on both, match and advice, everything there after a reload and after a file out and in. */

import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';
import { pairRecording } from '../support/pair-recording.ts';

const SPAN_M = 0.15;
/** A below 2 to 3 lbf, B inside. */
const [A_N, B_N] = [8.2, 11.2];

const belt = (listen: ListenPage, name: string) => listen.page.getByRole('region', { name: `Belt ${name}` });

const goTo = (listen: ListenPage, place: string) =>
  listen.page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place }).click();

/** Sends everything to a file, as a person would, and gives its text without the time of saving. */
async function saved(listen: ListenPage): Promise<{ readonly path: string; readonly content: Record<string, unknown> }> {
  await listen.page.getByRole('link', { name: 'Settings' }).click();
  const [download] = await Promise.all([listen.page.waitForEvent('download'), listen.button('Save a file').first().click()]);
  const path = await download.path();
  const { savedAt: _, ...content } = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
  return { path, content };
}

describe('a machine from nothing', () => {
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    const { path } = pairRecording([A_N, B_N].map((forceN) => ({ forceN, spanLengthM: SPAN_M, times: 3 })));
    browser = await openBrowser({ microphoneFile: path });
    listen = await ListenPage.open(browser);
  });
  afterAll(() => browser.close());

  it('is described, targeted, plucked, matched, kept, reloaded, exported, removed and brought back', async () => {
    const { page } = listen;
    await goTo(listen, 'Machines');
    await listen.button('Crossed gantry').click();
    await listen.textbox('Name of the machine').fill('Window plotter');
    await listen.textbox('Name of the machine').press('Enter');
    await page.getByRole('heading', { name: 'Window plotter' }).waitFor();

    for (const name of ['A', 'B']) {
      const part = belt(listen, name);
      await part.getByRole('textbox', { name: 'Target from' }).fill('2');
      await part.getByRole('textbox', { name: 'Target to' }).fill('3');
      await part.getByRole('combobox', { name: 'Unit of the target' }).selectOption('lbf');
      // 2 and 3 lbf in newtons: NIST SP 811, appendix B.8, 1 lbf = 4.448222 N.
      await part.getByText('Read as 8.896 to 13.34 N').waitFor();
      await part
        .getByRole('textbox', { name: 'Length', exact: true })
        .first()
        .fill(`${SPAN_M * 1000} ± 1`);
      await part.getByRole('textbox', { name: 'Length', exact: true }).first().press('Enter');
    }
    await page.getByText('A, B: 8.896 to 13.34 N. A, B must match within 5 %.').waitFor();

    await page.getByRole('checkbox', { name: 'All from one roll' }).check();
    await page.getByRole('link', { name: 'Adjust A, B' }).click();
    await listen.button('Listen').click();
    const said = async () => (await listen.reading()).replace(/\s+/gu, ' ');
    await expect.poll(said, { timeout: 60_000 }).toMatch(/(?:Tighten|Loosen) [AB] /u);
    const match = async () => (await page.getByRole('region', { name: 'The match' }).textContent())!.replace(/\s+/gu, ' ');
    const [, percent, doubt] = /A is ([\d.]+) % ± ([\d.]+) % below B/u.exec(await match())!;
    expect(Math.abs(Number(percent) - 100 * (1 - A_N / B_N))).toBeLessThanOrEqual(Number(doubt));
    expect(await match()).toContain('They do not match.');
    const advice = await said();

    await page.reload();
    await expect.poll(said, { timeout: 20_000 }).toBe(advice);
    expect(await match()).toContain(`A is ${percent} % ± ${doubt} % below B`);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Window plotter' }).waitFor();
    await page.getByText('A, B: 8.896 to 13.34 N. A, B must match within 5 %.').waitFor();

    const before = await saved(listen);
    const takes = before.content.takes as { sounds: unknown[] }[];
    expect(takes.flatMap(({ sounds }) => sounds).length).toBeGreaterThanOrEqual(6);

    await listen.button('Remove everything').click();
    await listen.button('Remove it all').click();
    await page.getByText('Nothing is kept yet.').waitFor();
    expect((await saved(listen)).content).toMatchObject({ machines: [], takes: [] });

    await page.getByLabel('Open a file').setInputFiles(before.path);
    await page.getByRole('row', { name: `takes ${takes.length} 0 0 0` }).waitFor();
    await listen.button('Merge it').click();
    await page.getByText('Merged.').waitFor();
    expect((await saved(listen)).content).toEqual(before.content);
    await page.reload();
    expect((await saved(listen)).content).toEqual(before.content);
    expect(listen.complaints).toEqual([]);
  });

  it('takes nothing of a file that has a fault, and names its place', async () => {
    const { path } = await saved(listen);
    const file = JSON.parse(readFileSync(path, 'utf8')) as { machines: { belts: { spans: { lengthM: unknown }[] }[] }[] };
    file.machines[0]!.belts[1]!.spans[0]!.lengthM = 'long';
    const damaged = { name: 'damaged.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(file)) };
    await listen.page.getByLabel('Open a file').setInputFiles(damaged);
    await listen.page.getByText('Nothing has changed. At machines.0.belts.1.spans.0.lengthM:').waitFor();
    const foreign = { name: 'foreign.json', mimeType: 'application/json', buffer: Buffer.from('{"title":"a list"}') };
    await listen.page.getByLabel('Open a file').setInputFiles(foreign);
    await listen.page.getByText('not a file of this program').waitFor();
    await listen.page.getByText(/^It holds 1 machine, /u).waitFor();
  });
});

describe('a span of a machine in Listen', () => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser({ microphone: 'plain-150mm.wav' });
    listen = await ListenPage.open(browser);
  });
  afterAll(() => browser.close());

  it('fills the setup, is kept with one key, and never counts for another span', async () => {
    const { page } = listen;
    await goTo(listen, 'Machines');
    await listen.button('Bring in the demo machines').click();
    await page.getByRole('button', { name: 'Listen on A, along the side' }).click();
    await page.getByRole('heading', { name: 'Dovetable, belt A' }).waitFor();
    expect(await listen.textbox('Span length').inputValue()).toBe('180');
    expect(await listen.textbox('Target to').inputValue()).toBe('9');
    await listen.button('Listen').click();
    await page.getByText('3 plucks', { exact: true }).waitFor({ timeout: 30_000 });
    await listen.button('Stop').click();
    await expect.poll(async () => figuresIn(await listen.reading())?.frequencyHz).toBeCloseTo(truth.frequencyHz, 0);
    await page.keyboard.press('k');
    await listen.button('Kept').waitFor();
    await listen.textbox('How warm was it?').fill('warm');
    await page.getByText('Write a temperature in degrees').waitFor();
    await listen.textbox('How warm was it?').fill('21,5');
    await page.getByText('warmth can then be told from wear').waitFor();

    await page.getByRole('combobox', { name: 'Machine and span' }).selectOption('Dovetable, B, along the side');
    expect(await listen.reading()).toContain('No reading yet');
    await page.reload();
    await page.getByRole('heading', { name: 'Dovetable, belt B' }).waitFor();
    const { content } = await saved(listen);
    expect(content.takes).toMatchObject([
      {
        source: 'microphone',
        entered: { spanLength: '180' },
        on: { machineId: expect.any(String) },
        temperatureK: expect.closeTo(294.65, 9),
      },
    ]);
    expect((content.takes as { sounds: unknown[] }[])[0]!.sounds).toHaveLength(3);
    expect(listen.complaints).toEqual([]);
  });

  it('keeps the sound too where that is wanted, and looks at it again', async () => {
    const { page } = listen;
    await page.getByText('No sounds are kept.').waitFor();
    await page.getByRole('checkbox', { name: /^Keep the sound of each pluck/u }).check();
    await goTo(listen, 'Listen');
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await listen.button('Keep in logbook').waitFor({ timeout: 20_000 });
    const before = figuresIn(await listen.reading());
    await page.keyboard.press('k');
    await listen.button('Kept').waitFor();
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByText(/^Sounds of 1 take are kept, [\d.]+\skB in all\.$/u).waitFor();
    await page.getByText('Show each').click();
    await listen.button('Look again at Dovetable, belt B').click();
    await page.getByText(/^Reading, three plucks in Dovetable, belt B/u).waitFor({ timeout: 20_000 });
    const again = figuresIn(await listen.reading());
    expect(again?.frequencyHz).toBeCloseTo(before!.frequencyHz, 1);
    expect(again?.forceN).toBe(before?.forceN);
    await page.getByRole('link', { name: 'Settings' }).click();
    await listen.button('Drop all sounds').click();
    await page.getByText('No sounds are kept.').waitFor();
    expect(listen.complaints).toEqual([]);
  });
});
