/** A setup made on one profile, opened through its link on another: the same file gives the same force to the last digit. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { chromiumArguments, findChromium } from '../../src/setup/chromium.mjs';
import type {} from '../../src/ui/app.ts';
import { fixturePath, ListenPage, openBrowser } from '../support/listen-page.ts';

const profile = (folder: string, viewport: { width: number; height: number }): Promise<BrowserContext> =>
  chromium.launchPersistentContext(folder, {
    executablePath: findChromium() ?? '',
    chromiumSandbox: false,
    args: chromiumArguments(),
    viewport,
    locale: 'en-GB',
  });

/** What is told of a recording, and the force behind it in all the digits that the page reckons with. */
async function toldOf(page: Page): Promise<{ readonly reading: string; readonly forceN: unknown }> {
  await page.getByLabel('Open a recording').setInputFiles(fixturePath('plain-150mm.wav'));
  await page.getByRole('status', { name: 'Reading' }).getByText('trusted').first().waitFor();
  return {
    reading: (await page.getByRole('status', { name: 'Reading' }).textContent()) ?? '',
    forceN: await page.evaluate(() => document.querySelector('spanwright-app')!.workbench.store.state.answer.reading?.forceN),
  };
}

describe('a link between two profiles', () => {
  let folders: string[];
  let laptop: BrowserContext;
  let phone: BrowserContext;
  beforeAll(async () => {
    folders = ['laptop-', 'phone-'].map((name) => mkdtempSync(join(tmpdir(), name)));
    laptop = await profile(folders[0]!, { width: 1280, height: 800 });
    phone = await profile(folders[1]!, { width: 1280, height: 900 });
  });
  afterAll(async () => {
    await laptop.close();
    await phone.close();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  it('gives the same force to the last digit for the same file', async () => {
    const there = await laptop.newPage();
    await there.goto(inject('pageAddress'));
    await there.getByRole('combobox', { name: 'Belt' }).selectOption({ label: 'My own belt' });
    await there.getByRole('textbox', { name: 'Linear density' }).fill('7,82 g/m ± 0,07 g/m');
    await there.getByRole('textbox', { name: 'Span length' }).fill('5.906 in');
    await there.getByRole('textbox', { name: 'Known to' }).fill('0.7');
    await there.getByRole('textbox', { name: 'Target from' }).fill('6');
    await there.getByRole('textbox', { name: 'Target to' }).fill('13');
    await there.getByText('Ends, stiffness, tolerance').click();
    await there.getByRole('combobox', { name: 'Second end' }).selectOption('held in a clip or clamp');
    await there.getByRole('button', { name: 'To a phone' }).click();
    const link = await there.getByRole('textbox', { name: 'Link' }).inputValue();
    await there.getByRole('button', { name: 'Close' }).click();
    const toldThere = await toldOf(there);

    const here = await phone.newPage();
    await here.goto(link);
    await here.getByRole('heading', { name: 'A setup from a link' }).waitFor();
    await here.getByRole('button', { name: 'Use it' }).click();
    const toldHere = await toldOf(here);
    expect(toldHere).toEqual(toldThere);
    expect(toldHere.reading).toMatch(/\d+\.\d\sN/u);
    expect(toldHere.forceN).toMatchObject({ value: expect.any(Number), low: expect.any(Number), high: expect.any(Number) });
    await here.reload();
    expect(await here.getByRole('textbox', { name: 'Linear density' }).inputValue()).toBe('7,82 g/m ± 0,07 g/m');
  });
});

describe('a belt by itself', () => {
  it('is kept on the other profile under its name, with its values', async () => {
    const browser = await openBrowser();
    const there = await ListenPage.open(browser);
    await there.page.evaluate(async () => {
      const made = { at: '2027-03-01T08:00:00.000Z', zone: 'UTC' };
      const belt = {
        id: 'roll-7',
        made,
        changedAt: made.at,
        name: 'The roll in the drawer',
        catalogueId: 'curvilinear-2mm-6mm',
        linearDensityKgPerM: [{ value: 0.007812345678901234, standardUncertainty: 0.00003, from: 'weighed' as const, got: made }],
        bendingStiffnessNm2: [],
        axialStiffnessN: [],
        ratedForceN: [],
      };
      await document.querySelector('spanwright-app')!.workbench.kept.change((before) => ({ ...before, belts: [belt] }));
    });
    await there.page.goto(`${inject('pageAddress')}#/belts/roll-7`);
    await there.button('To a phone').click();
    await there.page.getByRole('dialog', { name: 'This belt on a phone' }).waitFor();
    const link = await there.page.getByRole('textbox', { name: 'Link' }).inputValue();
    const here = await ListenPage.open(browser, { address: link });
    await here.page.getByText('The roll in the drawer is kept among your belts.').waitFor();
    await here.button('Use it').click();
    await here.belt().waitFor();
    const density = await here.page.evaluate(
      () => document.querySelector('spanwright-app')!.workbench.kept.document.belts[0]?.linearDensityKgPerM[0]?.value,
    );
    expect(density).toBe(0.007812345678901234);
    expect(await here.belt().inputValue()).toBe('roll-7');
    expect([...there.complaints, ...here.complaints]).toEqual([]);
    await browser.close();
  });
});

describe('what a link brings', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  const opened = (hash: string, options = {}) => ListenPage.open(browser, { address: `${inject('pageAddress')}${hash}`, ...options });

  it('is shown first and changes nothing until it is used', async () => {
    const listen = await opened('#/listen');
    await listen.textbox('Span length').fill('123');
    await listen.textbox('Span length').press('Enter');
    await listen.page.goto(`${inject('pageAddress')}#/listen/from?v=1&span=180&from=6&to=9`);
    await listen.page.getByText('180 mm').first().waitFor();
    await listen.page.getByRole('link', { name: 'Leave it' }).click();
    expect(await listen.textbox('Span length').inputValue()).toBe('123');
    await listen.page.goBack();
    await listen.button('Use it').click();
    expect(await listen.textbox('Span length').inputValue()).toBe('180');
    expect(listen.complaints).toEqual([]);
  });

  it.each([
    ['v=1&span=three%20parrots', 'the span length is not a value that it can have'],
    ['v=1&belt=no-such-belt', 'the belt is not a value that it can have'],
    ['v=1&span=%3Cscript%3Ealert(1)%3C%2Fscript%3E', 'the span length is not a value that it can have'],
    ['v=1&span=%zz', 'the span length is garbled'],
    ['v=1&__proto__=x', '‘__proto__’, which no setup has'],
    ['v=9&span=180', 'another version of this program'],
    ['', 'There is nothing in it'],
  ])('is refused with the fault, and nothing changes: %s', async (query, said) => {
    const listen = await opened(`#/listen/from?${query}`);
    await listen.page.getByRole('alert').getByText(said).waitFor();
    expect(await listen.button('Use it').count()).toBe(0);
    await listen.page.getByRole('link', { name: 'Go to Listen' }).click();
    expect(await listen.textbox('Span length').inputValue()).toBe('');
    expect(listen.complaints).toEqual([]);
  });

  it('has no serious fault for axe, nor has the dialog that shares, on a phone in the dark', async () => {
    const listen = await opened('#/listen/from?v=1&span=180&from=6&to=9', { viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
    await listen.button('Use it').waitFor();
    const serious = async () => {
      const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
      return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
    };
    expect(await serious()).toEqual([]);
    await listen.button('Use it').click();
    await listen.button('To a phone').click();
    await listen.page.getByRole('dialog', { name: 'This setup on a phone' }).waitFor();
    expect(await serious()).toEqual([]);
    expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });
});
