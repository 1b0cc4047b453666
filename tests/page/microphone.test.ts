/** A recording as the browser's microphone, through the built page: what the Reading says agrees with what was played. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figuresIn, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const FIXTURE = 'plain-150mm';

describe('listening to a microphone', () => {
  const truth = truthOf(FIXTURE);
  let browser: Browser;
  let listen: ListenPage;

  beforeAll(async () => {
    browser = await openBrowser({ microphone: `${FIXTURE}.wav` });
    listen = await ListenPage.open(browser);
    await listen.describe(truth);
    await listen.button('Listen').click();
    await listen.page.getByText('3 plucks', { exact: true }).waitFor();
  });
  afterAll(() => browser.close());

  it('finds the force that was played, within its own interval', async () => {
    const found = figuresIn(await listen.reading())!;
    expect(Math.abs(found.forceN - truth.forceN)).toBeLessThanOrEqual(found.forceU95N);
    expect(found.forceU95N / found.forceN).toBeLessThan(0.3);
  });

  it('finds the frequency that was played within 0.3 %', async () => {
    const found = figuresIn(await listen.reading())!;
    expect(Math.abs(found.frequencyHz / truth.frequencyHz - 1)).toBeLessThan(0.003);
  });

  it('says what the browser granted', async () => {
    expect(await listen.page.getByText('sound unprocessed').isVisible()).toBe(true);
  });

  it('recomputes the force when the setup changes, from the same plucks', async () => {
    const before = figuresIn(await listen.reading())!;
    await listen.textbox('Span length').fill('300');
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 10_000 }).toBeGreaterThan(3.5 * before.forceN);
    expect(figuresIn(await listen.reading())!.frequencyHz).toBe(before.frequencyHz);
    await listen.textbox('Span length').fill('5.9055 in');
    await expect.poll(async () => figuresIn(await listen.reading())?.forceN, { timeout: 10_000 }).toBe(before.forceN);
  });

  it('takes the last pluck back, stops, and starts over', async () => {
    await listen.button('Stop').click();
    await listen.button('Listen').waitFor();
    await listen.button('Undo last pluck').click();
    await expect.poll(() => listen.page.getByText('Reading, two plucks').isVisible()).toBe(true);
    await listen.button('Start over').click();
    await expect.poll(() => listen.reading()).toContain('No reading yet');
  });

  it('kept to its policy and its origin all the while', () => {
    expect(listen.complaints).toEqual([]);
  });
});

describe('listening without a span length', () => {
  it('gives the frequency, asks for the length, and fills in the force when it comes', async () => {
    const truth = truthOf(FIXTURE);
    const browser = await openBrowser({ microphone: `${FIXTURE}.wav` });
    const listen = await ListenPage.open(browser);
    await listen.button('Listen').click();
    await expect.poll(() => listen.reading(), { timeout: 30_000 }).toContain('Type the span length');
    expect(await listen.reading()).toMatch(/13\d(?:\.\d+)?\s*Hz/u);
    await listen.describe(truth);
    await expect.poll(async () => figuresIn(await listen.reading())?.grade, { timeout: 10_000 }).toMatch(/trusted|doubtful/u);
    await browser.close();
  });
});
