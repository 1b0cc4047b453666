/** From the budget to the check by random draws, and a frequency that was read elsewhere: both as a person meets them, wide and on a phone. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const seriousIn = async ({ page }: ListenPage): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
};
const overhang = ({ page }: ListenPage) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each([
  { name: 'wide', viewport: { width: 1280, height: 800 }, colorScheme: 'light' },
  { name: 'phone', viewport: { width: 320, height: 700 }, colorScheme: 'dark' },
] as const)('doubt that is checked, $name', ({ name, viewport, colorScheme }) => {
  const truth = truthOf('plain-150mm');
  let browser: Browser;
  let listen: ListenPage;
  beforeAll(async () => {
    browser = await openBrowser();
    listen = await ListenPage.open(browser, { viewport, colorScheme });
    listen.page.setDefaultTimeout(10_000);
  });
  afterAll(() => browser.close());

  it('takes a frequency that was read elsewhere, says what it needs, and gives force, grade and reasons', async () => {
    await listen.page.getByText('Heard elsewhere? Type the frequency').click();
    const told = listen.page.locator('told-frequency');
    await listen.textbox('Frequency').fill('parrots');
    await told.getByText('Write a number, such as 112 or 112 Hz.').waitFor();
    await listen.textbox('Frequency').fill(`${truth.frequencyHz} ± 0.5`);
    await told.getByText('The length of the span is needed too.').waitFor();
    await listen.describe(truth);
    const answer = told.locator('p.answer');
    await answer.getByText(/N\s±\s[\d.]+\sN/u).waitFor();
    const [, forceN, u95N] = /([\d.]+)\sN\s±\s([\d.]+)\sN/u.exec((await answer.textContent()) ?? '')!.map(Number);
    expect(Math.abs(forceN! - truth.forceN)).toBeLessThanOrEqual(u95N!);
    expect(await told.locator('li').allTextContents()).toContainEqual(
      expect.stringContaining('what rang, and how clearly, is not known here.'),
    );
    expect(await told.getByText(/^(?:trusted|doubtful|unusable)$/u).isVisible()).toBe(true);
    expect(await seriousIn(listen)).toEqual([]);
    expect(await overhang(listen)).toBe(0);
    expect(await listen.page.getByRole('status').count()).toBe(1);
  });

  it('checks a reading by draws, and keeps what was typed elsewhere', async () => {
    await listen.recording().focus();
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await expect.poll(async () => figuresIn(await listen.reading()), { timeout: 20_000 }).toBeDefined();
    expect(await listen.textbox('Frequency').inputValue()).toBe(`${truth.frequencyHz} ± 0.5`);
    await listen.button('Check by random draws').click();
    await listen.page.getByRole('heading', { name: '100,000 random draws' }).waitFor({ timeout: 60_000 });
    const check = listen.page.locator('draws-check');
    expect(await check.locator('p.sentence').textContent()).toMatch(
      /Draws: [\d.]+ to [\d.]+\sN\. Reading: [\d.]+ to [\d.]+\sN\. They agree/u,
    );
    expect(await check.getByRole('img', { name: /Histogram of the force by random draws\. 95 % of the draws lie at/u }).count()).toBe(1);
    expect(await check.getByRole('table', { name: 'Share of the draws by force' }).getByRole('row').count()).toBe(9);
    expect(await seriousIn(listen)).toEqual([]);
    expect(await overhang(listen)).toBe(0);
  });

  it('draws bars, axis and bounds in the colours that a person forces', async () => {
    await listen.page.emulateMedia({ forcedColors: 'active' });
    const colours = await listen.page.locator('draw-histogram').evaluate((part) => {
      const probe = document.createElement('span');
      probe.style.color = 'CanvasText';
      document.body.append(probe);
      const text = getComputedStyle(probe).color;
      probe.remove();
      const painted = (selector: string, property: 'fill' | 'stroke') =>
        getComputedStyle(part.shadowRoot!.querySelector(selector)!)[property];
      return {
        text,
        found: [painted('rect', 'fill'), painted('.axis', 'stroke'), painted('.interval', 'stroke'), painted('text', 'fill')],
      };
    });
    expect(new Set(colours.found)).toEqual(new Set([colours.text]));
    await listen.page.emulateMedia({ forcedColors: 'none' });
  });

  it('lets go of a check when the reading changes, and of draws that are cancelled', async () => {
    if (name === 'phone') await listen.button('Change').click();
    await listen.textbox('Span length').fill('151');
    await listen.textbox('Span length').press('Enter');
    await listen.page.route(/draws\.worker/u, () => {}); // never comes, so that there is time to cancel
    await listen.button('Check by random draws').click();
    await listen.page.getByRole('progressbar', { name: 'Share of the draws done' }).waitFor();
    await listen.button('Cancel').click();
    await listen.button('Check by random draws').waitFor();
    expect(await listen.page.getByRole('progressbar').count()).toBe(0);
    expect(listen.complaints).toEqual([]);
  });
});

/** What a worker answers that finds something else than the reading; which takes do is a matter of the core. */
describe.each([
  ['differ', /They differ\. Believe the draws/u],
  ['too-few', /Too few draws fit the partials to be a check\. Believe the reading\./u],
])('draws that are no check: %s', (agreement, sentence) => {
  it('are said to be, beside both intervals', async () => {
    const browser = await openBrowser();
    // What answers from the browser's own store could not be put in the worker's place.
    const listen = await ListenPage.open(browser, { serviceWorkers: 'block' });
    const answer = {
      forceN: { value: 9.1, low: 8, high: 10.4, u95: 1.3 },
      draws: 100_000,
      effectiveDraws: 300,
      shareWithoutForce: 0.04,
      histogram: { fromN: 7, binWidthN: 0.1, shares: Array.from({ length: 40 }, () => 1 / 40) },
      agreement,
    };
    const script = `onmessage = () => postMessage(${JSON.stringify({ kind: 'drawn', answer })});`;
    await listen.page.route(/draws\.worker/u, (route) => route.fulfill({ contentType: 'text/javascript', body: script }));
    await listen.describe(truthOf('plain-150mm'));
    await listen.recording().focus();
    await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    await listen.button('Check by random draws').click({ timeout: 20_000 });
    const check = listen.page.locator('draws-check');
    await check.getByText(sentence).waitFor({ timeout: 10_000 });
    expect(await check.locator('p.sentence').textContent()).toMatch(/^Draws: 8\.0 to 10\.4\sN\. Reading: [\d.]+ to [\d.]+\sN\. /u);
    expect(await check.getByText(/^4\s% of the draws leave no room for any force\.$/u).isVisible()).toBe(true);
    await browser.close();
  });
});
