/** Adjusting a pair with a recording as the microphone: three plucks of each belt, the match, the next turn; kept over a reload, by keyboard, for everyone. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoMachines } from '../../src/ui/state/machine-new.ts';
import { machinesEn } from '../../src/words/machines-en.ts';
import { ListenPage, openBrowser } from '../support/listen-page.ts';
import { pairRecording } from '../support/pair-recording.ts';

const [plotter] = demoMachines({ ...machinesEn.demo, spanNames: machinesEn.spanNames });
const spanLengthM = plotter!.belts[0]!.spans.find(({ lengthM }) => lengthM)!.lengthM!.value;
const [A, B] = [5.4, 6.9];

const seriousIn = async (listen: ListenPage): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
};

describe('adjusting a pair', () => {
  let browser: Browser;
  let listen: ListenPage;
  const said = async (): Promise<string> =>
    ((await listen.page.getByRole('status', { name: 'Reading' }).textContent()) ?? '').replace(/\s+/gu, ' ').trim();

  beforeAll(async () => {
    const { path } = pairRecording([A, B].map((forceN) => ({ forceN, spanLengthM, times: 3 })));
    browser = await openBrowser({ microphoneFile: path });
    listen = await ListenPage.open(browser);
    await listen.page.goto(`${listen.page.url()}#/machines`);
    await listen.button(machinesEn.addDemo).click();
    await listen.page.getByRole('link', { name: 'Adjust A, B' }).click();
    await listen.page.getByRole('heading', { name: 'Adjust Dovetable' }).waitFor();
  });
  afterAll(() => browser.close());

  it('asks for one press, then for the first belt by name', async () => {
    expect(await said()).toContain('Press Listen once');
    expect(await seriousIn(listen)).toEqual([]);
    await listen.button('Listen').click();
    await expect.poll(said, { timeout: 20_000 }).toMatch(/Pluck A/u);
  });

  it('hears three plucks of each belt and says what to turn', async () => {
    await expect.poll(said, { timeout: 60_000 }).toMatch(/(?:Tighten|Loosen) [AB] .*(?:turn|turns)/u);
    // The slacker belt is named, tightened, by no more than a few turns.
    expect(await said()).toMatch(/Tighten A/u);
    expect(await said()).toContain('Run the carriage end to end twice by hand.');
    const belts = await listen.page.locator('.belt').allTextContents();
    for (const [index, truth] of [A, B].entries()) {
      const [, value, doubt] = /([\d.]+)\s*N\s*±\s*([\d.]+)/u.exec(belts[index]!)!;
      expect(Math.abs(Number(value) - truth)).toBeLessThanOrEqual(Number(doubt));
    }
  });

  it('knows the ratio better than either force', async () => {
    const match = (await listen.page.getByRole('region', { name: 'The match' }).textContent())!.replace(/\s+/gu, ' ');
    const [, percent, doubt] = /A is ([\d.]+) % ± ([\d.]+) % below B/u.exec(match)!;
    expect(Math.abs(Number(percent) - 100 * (1 - A / B))).toBeLessThanOrEqual(Number(doubt));
    expect(match).toContain('They do not match.');
  });

  it('serves everyone, light and dark, wide and narrow', async () => {
    for (const [colorScheme, width] of [
      ['light', 1280],
      ['dark', 320],
    ] as const) {
      await listen.page.emulateMedia({ colorScheme });
      await listen.page.setViewportSize({ width, height: 800 });
      expect(await seriousIn(listen)).toEqual([]);
      expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
    }
    await listen.page.setViewportSize({ width: 1280, height: 800 });
    await listen.page.emulateMedia({ colorScheme: 'light' });
  });

  it('still stands there after a reload, plucks and advice', async () => {
    const before = await said();
    const belts = await listen.page.locator('.belt').allTextContents();
    await listen.page.reload();
    await expect.poll(said, { timeout: 20_000 }).toBe(before);
    expect(await listen.page.locator('.belt').allTextContents()).toEqual(belts);
  });

  it('is led by keys: a step back, large figures, and out', async () => {
    await listen.page.keyboard.press('u');
    await expect.poll(said).toMatch(/Pluck B/u);
    await listen.page.keyboard.press('f');
    await expect.poll(() => listen.page.getByRole('heading', { name: 'The match' }).count()).toBe(0);
    await listen.page.keyboard.press('Escape');
    await listen.page.getByRole('heading', { name: 'The match' }).waitFor();
    await listen.page.keyboard.press('Escape');
    await listen.page.getByRole('heading', { name: 'Dovetable' }).waitFor();
  });

  it('kept to its policy and its origin all the while', () => {
    expect(listen.complaints).toEqual([]);
  });
});

describe('speaking aloud', () => {
  it('says the same sentence, and does not listen meanwhile', async () => {
    const browser = await openBrowser();
    // A voice that takes its time: the browser of the tests has none.
    const listen = await ListenPage.open(browser, {
      before: () => {
        const said: string[] = [];
        const voice = {
          cancel: () => {},
          speak: (utterance: SpeechSynthesisUtterance) => {
            said.push(utterance.text);
            setTimeout(() => utterance.dispatchEvent(new Event('end')), 1500);
          },
        };
        Object.defineProperty(window, 'speechSynthesis', { value: voice });
        Object.assign(window, { said });
      },
    });
    const { page } = listen;
    await page.goto(`${page.url()}#/machines`);
    await listen.button(machinesEn.addDemo).click();
    await page.getByRole('link', { name: 'Adjust A, B' }).click();
    await listen.button('Speak aloud: off').click();
    await listen.button('Listen').click();
    await page.getByText('Speaking, not listening').waitFor();
    await page.getByText('Listening to A').waitFor();
    expect(await page.evaluate(() => (window as unknown as { said: string[] }).said)).toEqual([
      expect.stringContaining('Pluck A three times.'),
    ]);
    await listen.button('Speak aloud: on').click();
    expect(await listen.button('Speak aloud: off').getAttribute('aria-pressed')).toBe('false');
    await browser.close();
  });
});

describe('what is missing', () => {
  it('says what a belt lacks before it can be adjusted', async () => {
    const browser = await openBrowser();
    const listen = await ListenPage.open(browser);
    await listen.page.goto(`${listen.page.url()}#/machines/nowhere/adjust/none`);
    await listen.page.getByRole('heading', { name: 'Something is still missing' }).waitFor();
    expect(await listen.page.getByText('These belts are not here any more.').isVisible()).toBe(true);
    expect(await seriousIn(listen)).toEqual([]);
    await browser.close();
  });
});
