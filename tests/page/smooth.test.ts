/** The page goes on drawing while plucks are analysed, because none of that work is its own: shown by what its thread calls, not by a clock. */

import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sourcesCalled } from '../support/called-sources.ts';
import { fixturePath, ListenPage, openBrowser } from '../support/listen-page.ts';

/** The chain from samples to frequency, and whatever only the worker does. */
const IS_ANALYSIS =
  /^core\/(?:spectrum|pluck|partials|frequency\/(?!combine)|listening|measure|math\/fft)|^analysis\/(?:take|moment-meter|room-level)/u;

describe.each([
  [
    'the demo is played',
    async (listen: ListenPage) => {
      await listen.button('Play the demo take').click();
      await listen.button('Listen').waitFor({ timeout: 30_000 });
    },
  ],
  [
    'a recording is opened',
    async (listen: ListenPage) => {
      await listen.recording().setInputFiles(fixturePath('plain-150mm.wav'));
    },
  ],
])('while %s', (_, act) => {
  let browser: Browser;
  let called: ReadonlySet<string>;

  beforeAll(async () => {
    browser = await openBrowser();
    const listen = await ListenPage.open(browser);
    called = await sourcesCalled(listen.page, async () => {
      await act(listen);
      await listen.page
        .getByText(/three plucks/u)
        .first()
        .waitFor({ timeout: 30_000 });
    });
  });
  afterAll(() => browser.close());

  it('the page’s thread analyses no sound', () => {
    expect([...called].filter((path) => IS_ANALYSIS.test(path))).toEqual([]);
  });

  it('and does draw, ask the worker, and judge the plucks that it is told of', () => {
    for (const path of ['analysis/analyst.ts', 'core/answer.ts', 'core/frequency/combine.ts', 'ui/state/state.ts']) {
      expect([...called]).toContain(path);
    }
  });
});
