/** Belts through the page: weighed in pieces, told, clipped, stretched, heard on the bench; values are added and taken back, and nothing is lost. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { partialHz } from '../../src/core/vibration/beam.ts';
import { elementFirstHz } from '../support/element-beam.ts';
import { ListenPage, openBrowser } from '../support/listen-page.ts';
import { writtenPluck } from '../support/written-pluck.ts';

const BELT = { linearDensityKgPerM: 0.0081, bendingStiffnessNm2: 1.3e-4, fixity: 0.4 } as const;
const PAGES = ['Weigh', 'Pluck under weights', 'Two positions', 'Clip', 'Stretch', 'Values'];

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 }, colorScheme: 'dark' },
  { name: 'small phone', viewport: { width: 320, height: 700 }, colorScheme: 'light' },
] as const)('belts, $name', ({ viewport, colorScheme }) => {
  let browser: Browser;
  let listen: ListenPage;
  const fill = (name: string, text: string) => listen.page.getByRole('textbox', { name, exact: true }).fill(text);
  const open = (name: string) => listen.page.getByRole('link', { name, exact: true }).click();
  const heading = (text: RegExp) => listen.page.getByRole('heading', { level: 1, name: text });
  const values = async (): Promise<string> => (await listen.page.locator('.values').first().textContent()) ?? '';

  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser, { viewport, colorScheme });
    listen.page.setDefaultTimeout(15_000);
    await listen.page.goto(`${listen.page.url()}#/belts/new`);
    await fill('Name', 'Offcut');
    await listen.button('Keep it').click();
    await heading(/from tables/u).waitFor();
  });
  afterAll(() => browser.close());

  it('has no serious axe finding and no sideways scroll on any page of a belt', async () => {
    for (const name of PAGES) {
      await open(name);
      await listen.page
        .getByRole('link', { name, exact: true, includeHidden: false })
        .and(listen.page.locator('[aria-current=page]'))
        .waitFor();
      const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(serious.map(({ id, nodes }) => `${name} ${id}: ${nodes[0]?.html}`)).toEqual([]);
      expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), name).toBe(0);
    }
  });

  it('weighs two pieces as one density, and asks where they do not agree', async () => {
    await open('Weigh');
    await fill('Length of the piece', '500');
    await fill('Mass shown', '4.05');
    await fill('Step of the scale', '0.01');
    await heading(/It weighs 8\.1\d*\sg\/m/u).waitFor();
    await listen.button('Another piece').click();
    const second = (name: string) => listen.page.getByRole('textbox', { name, exact: true }).nth(1);
    await second('Length of the piece').fill('300');
    await second('Mass shown').fill('2.9');
    await listen.page.getByText('The weighings lie farther apart').waitFor();
    await second('Mass shown').fill('2.43');
    await heading(/It weighs 8\.1\d*\sg\/m\s±\s0\.0\d+\sg\/m/u).waitFor();
    await listen.button('Use as this belt’s density').click();
    await listen.page.getByText('These are this belt’s values now.').waitFor();
    await open('Values');
    await expect.poll(values).toContain('2 weighings');
  });

  it('asks about a density that is another belt’s', async () => {
    await open('Weigh');
    await listen.page.getByRole('textbox', { name: 'Mass shown', exact: true }).first().fill('5.85');
    await listen.page.getByRole('textbox', { name: 'Mass shown', exact: true }).nth(1).fill('3.51');
    await listen.page.getByText('It weighs as much as: 2 mm pitch, 9 mm wide.').waitFor();
  });

  it('keeps a told value behind the measured ones, and takes it back', async () => {
    await open('Values');
    await listen.page.getByText('Tell a value').click();
    await fill('Value', 'heavy');
    await listen.button('Keep the value').click();
    await listen.page.getByText('Write a number above 0 with its unit').waitFor();
    await fill('Value', '7.9 g/m ± 0.4 g/m');
    await fill('Where it comes from', 'the bag');
    await listen.button('Keep the value').click();
    await heading(/7\.9\sg\/m\s±\s0\.4\sg\/m, told/u).waitFor();
    expect(await values()).toMatch(/the bag/u);
    await listen.page.getByText('1 earlier').click();
    expect(await values()).toMatch(/8\.1\d*\sg\/m\s±\s0\.0\d+\sg\/m, weighed/u);
    await listen.button('Take back the last linear density').click();
    await heading(/8\.1\d*\sg\/m\s±\s0\.0\d+\sg\/m, measured/u).waitFor();
  });

  it('gets the density from a clip at mid-span, with what the doubt is made of', async () => {
    const span = { ...BELT, spanLengthM: 0.18, forceN: 7, fixity: [BELT.fixity, BELT.fixity] as const };
    await open('Clip');
    await fill('Span length', '180');
    await listen.page.getByText(/a clip of 0\.29 to 0\.58\sg/u).waitFor();
    await fill('Mass of the clip', '0.42');
    await fill('Width of the clip', '0');
    await listen.button('Listen: First partial without it').click();
    const dialog = listen.page.getByRole('dialog', { name: 'First partial without it' });
    await dialog.getByLabel('Open a recording of it').setInputFiles(writtenPluck({ ...BELT, spanLengthM: 0.18, forceN: 7 }));
    await dialog.getByText('3 plucks heard').waitFor({ timeout: 30_000 });
    await dialog.getByRole('button', { name: 'Take these plucks' }).click();
    const bare = listen.page.getByRole('textbox', { name: 'First partial without it', exact: true });
    await expect.poll(async () => Math.abs(Number(await bare.inputValue()) / elementFirstHz(span) - 1)).toBeLessThan(0.002);
    await bare.fill(elementFirstHz(span).toFixed(3));
    await fill('First partial with it', elementFirstHz({ ...span, pointMass: { kg: 0.00042, placeShare: 0.5 } }).toFixed(3));
    await listen.page.getByRole('combobox', { name: 'Both ends of the span' }).selectOption('runs round a toothed pulley');
    await heading(/It weighs 8\.[01]\d?\sg\/m\s±\s0\.\d+\sg\/m/u).waitFor();
    await listen.page.getByRole('heading', { name: 'What the doubt is made of' }).waitFor();
  });

  it('takes nothing back of what is typed while it is being kept', async () => {
    await open('Stretch');
    const field = listen.page.getByRole('textbox', { name: 'Reading 1', exact: true });
    await field.pressSequentially('41.6397', { delay: 310 }); // each key just after the pause of the one before
    await field.press('Tab');
    expect(await field.inputValue()).toBe('41.6397');
    await listen.page.reload();
    await expect.poll(() => field.inputValue()).toBe('41.6397');
  });

  it('gets the stretch stiffness from weights', async () => {
    await open('Stretch');
    for (const [index, grams] of [200, 900, 1600, 2300].entries()) {
      await fill(`Weight ${index + 1}`, String(grams));
      await fill(`Reading ${index + 1}`, (40 + grams * 9.80665e-3 * (1000 / 12_000)).toFixed(3)); // 12 kN on a metre
    }
    await heading(/It takes 12\.\d\skN/u).waitFor();
    await listen.button('Use as this belt’s stretch stiffness').click();
    await open('Values');
    await expect.poll(values).toContain('stretched under weights');
  });

  it('hears a span of the bench with the real chain, and leaves Listen as it was', async () => {
    await open('Pluck under weights');
    await fill('Length of span 1', '180');
    await fill('Weight 1', '8 N');
    await listen.button('Listen: 180 mm under 8 N').click();
    const dialog = listen.page.getByRole('dialog', { name: '180 mm under 8 N' });
    await dialog.getByLabel('Open a recording of it').setInputFiles(writtenPluck({ ...BELT, spanLengthM: 0.18, forceN: 8 }));
    await dialog.getByText('3 plucks heard').waitFor({ timeout: 30_000 });
    const partials = /Partials: ([\d.]+)\sHz, ([\d.]+)\sHz, ([\d.]+)\sHz/u.exec((await dialog.textContent()) ?? '')!;
    for (const number of [1, 2, 3]) {
      const truth = partialHz({ ...BELT, spanLengthM: 0.18, forceN: 8, fixity: [BELT.fixity, BELT.fixity], number });
      expect(Math.abs(Number(partials[number]) / truth - 1)).toBeLessThan(0.005);
    }
    const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
    expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')).toEqual([]);
    await dialog.getByRole('button', { name: 'Take these plucks' }).click();
    // One span under one force tells the ends of a belt that was weighed.
    await heading(/It weighs 8\.\d+\sg\/m/u).waitFor();
    await listen.page.reload();
    await listen.page.getByText('3 plucks heard').waitFor();
    await listen.page.goto(`${listen.page.url().replace(/#.*/u, '')}#/listen`);
    expect(await listen.reading()).toContain('No reading yet');
    expect(await listen.textbox('Span length').inputValue()).toBe('');
  });

  it('carries kept readings along when a value changes, and shows what they said before', async () => {
    await listen.page.goBack();
    await open('Values');
    await listen.button('Listen with this belt').click();
    await listen.textbox('Span length').fill('180');
    await listen.textbox('Span length').press('Enter');
    await listen.recording().setInputFiles(writtenPluck({ ...BELT, spanLengthM: 0.18, forceN: 8 }));
    await listen.page.getByRole('button', { name: /^Keep( in logbook)?$/u }).click({ timeout: 30_000 });
    await fill('What was plucked', 'bench span');
    await listen.page.keyboard.press('Enter');
    await listen.page.goto(`${listen.page.url().replace(/#.*/u, '')}#/belts`);
    await listen.page.getByRole('link', { name: /^Offcut/u }).click();
    await listen.page.getByText('The kept reading of this belt').waitFor();
    await open('Stretch');
    await open('Weigh');
    await listen.page.getByRole('textbox', { name: 'Mass shown', exact: true }).first().fill('4.20');
    await listen.page.getByRole('textbox', { name: 'Mass shown', exact: true }).nth(1).fill('2.52');
    await heading(/It weighs 8\.4\d*\sg\/m/u).waitFor();
    await listen.button('Use as this belt’s density').click();
    await listen.page.getByText('1 kept reading of it went along').waitFor();
    await open('Values');
    const readings = listen.page.getByRole('listitem').filter({ hasText: 'bench span' });
    const text = (await readings.textContent()) ?? '';
    const [now, before] = [...text.matchAll(/([\d.]+)\sN\s±/gu)].map((match) => Number(match[1]));
    // The force goes with the density: 8.4 instead of 8.1 g/m
    expect(now! / before!).toBeGreaterThan(1.02);
    expect(now! / before!).toBeLessThan(1.06);
  });

  it('is renamed, taken away and brought back with all that was measured', async () => {
    await listen.button('Rename').click();
    await fill('Name of the belt', 'Offcut of the plotter');
    await listen.page.keyboard.press('Enter');
    await heading(/8\.4/u).waitFor();
    await listen.button('Take this belt away').click();
    await listen.page.getByText('Offcut of the plotter was taken away.').waitFor();
    await listen.button('Bring it back').click();
    await heading(/8\.4/u).waitFor();
    expect(await values()).toContain('stretched under weights');
    expect(listen.complaints).toEqual([]);
  });
});
