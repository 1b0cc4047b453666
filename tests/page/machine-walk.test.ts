/** The working day from an empty browser: a machine with two belts, its target, plucks on both, everything there after a reload and after a file out and in. */

import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const truth = truthOf('plain-150mm');

/** Parts of a screen are in shadow roots of their own: named by their heading. */
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
    browser = await openBrowser({ microphone: 'plain-150mm.wav' });
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
        .fill(`${truth.spanLengthM * 1000} ± 1`);
      await part.getByRole('textbox', { name: 'Length', exact: true }).first().press('Enter');
    }
    await page.getByText('A, B: 8.896 to 13.34 N. A, B must match within 5 %.').waitFor();

    for (const name of ['A', 'B']) {
      await listen.button(`Listen on ${name}, along the side`).click();
      await page.getByRole('heading', { name: `Window plotter, belt ${name}` }).waitFor();
      expect(await listen.textbox('Span length').inputValue()).toBe('150');
      expect(await listen.reading()).toContain('No reading yet'); // the plucks of the other belt do not count here
      await listen.button('Listen').click();
      await page.getByText('3 plucks', { exact: true }).waitFor({ timeout: 30_000 });
      await listen.button('Stop').click();
      await expect.poll(async () => figuresIn(await listen.reading())?.frequencyHz).toBeCloseTo(truth.frequencyHz, 0);
      await page.keyboard.press('k');
      await listen.button('Kept').waitFor();
      await goTo(listen, 'Machines');
      await page.getByRole('link', { name: 'Window plotter' }).click();
    }

    await page.reload();
    await page.getByRole('heading', { name: 'Window plotter' }).waitFor();
    await page.getByText('A, B: 8.896 to 13.34 N. A, B must match within 5 %.').waitFor();
    const before = await saved(listen);
    await page.getByText('It holds 1 machine, 2 takes.').waitFor();
    expect((before.content.takes as { on: unknown }[]).map(({ on }) => on)).toHaveLength(2);

    await listen.button('Remove everything').click();
    await listen.button('Remove it all').click();
    await page.getByText('Nothing is kept yet.').waitFor();
    expect((await saved(listen)).content).toMatchObject({ machines: [], takes: [] });

    await page.getByLabel('Open a file').setInputFiles(before.path);
    await page.getByRole('row', { name: 'takes 2 0 0 0' }).waitFor();
    await listen.button('Merge it').click();
    await page.getByText('It holds 1 machine, 2 takes.').waitFor();
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
    await listen.page.getByText('It holds 1 machine, 2 takes.').waitFor();
  });
});
