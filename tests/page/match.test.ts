/** Two belts plucked in turn through the microphone: the check stops by itself as soon as it is certain that they do not match. */

import { AxeBuilder } from '@axe-core/playwright';
import { expect, it } from 'vitest';
import { demoMachines } from '../../src/ui/state/machine-new.ts';
import { machinesEn } from '../../src/words/machines-en.ts';
import { ListenPage, openBrowser } from '../support/listen-page.ts';
import { pairRecording } from '../support/pair-recording.ts';

it('asks for A and B in turn, and says which to move once it is certain', async () => {
  const [plotter] = demoMachines({ ...machinesEn.demo, spanNames: machinesEn.spanNames });
  const spanLengthM = plotter!.belts[0]!.spans.find(({ lengthM }) => lengthM)!.lengthM!.value;
  const [A, B] = [5.2, 7.4];
  const { path } = pairRecording([A, B, A, B].map((forceN) => ({ forceN, spanLengthM, times: 1 })));
  const browser = await openBrowser({ microphoneFile: path });
  const listen = await ListenPage.open(browser);
  const said = async (): Promise<string> =>
    (await listen.page.getByRole('status', { name: 'Reading' }).textContent())!.replace(/\s+/gu, ' ').trim();
  await listen.page.goto(`${listen.page.url()}#/machines`);
  await listen.button(machinesEn.addDemo).click();
  await listen.page.getByRole('link', { name: 'Check the match, A, B' }).click();
  await listen.page.getByRole('heading', { name: 'Match, Dovetable' }).waitFor();
  await listen.button('Listen').click();
  await expect.poll(said, { timeout: 20_000 }).toMatch(/Pluck A/u);
  await expect.poll(said, { timeout: 20_000 }).toMatch(/Pluck B/u);
  await expect.poll(said, { timeout: 40_000 }).toContain('A and B do not match.');
  expect(await said()).toContain('Move A');
  // Certain before all four plucks were needed, or with them; the true ratio lies inside the interval that is told.
  const ratio = (await listen.page.getByRole('region', { name: 'The ratio' }).textContent())!;
  const [, low, high] = /between (\d\.\d+) and (\d\.\d+)/u.exec(ratio)!;
  expect(A / B).toBeGreaterThan(Number(low));
  expect(A / B).toBeLessThan(Number(high));
  for (const width of [1280, 320]) {
    await listen.page.setViewportSize({ width, height: 800 });
    const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
    expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id)).toEqual([]);
    expect(await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  }
  await listen.page.keyboard.press('u');
  await expect.poll(said).toMatch(/Pluck [AB]/u);
  expect(listen.complaints).toEqual([]);
  await browser.close();
});
