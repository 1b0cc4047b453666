/** For everyone: axe finds nothing serious in the states that are reached, names are unambiguous, narrow pages do not scroll sideways. */

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileText } from '../../shared/document/file.ts';
import { exampleDocument } from '../support/kept-example.ts';
import { fixturePath, ListenPage, openBrowser, truthOf } from '../support/listen-page.ts';

const seriousIn = async (listen: ListenPage): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page: listen.page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
};

const read = async (listen: ListenPage, name: string): Promise<void> => {
  await listen.recording().setInputFiles(fixturePath(`${name}.wav`));
  await expect.poll(() => listen.reading(), { timeout: 20_000 }).toMatch(/Hz|nothing heard|could not be read/u);
};

/** The ways into each state of the screen. */
const STATES: Readonly<Record<string, (listen: ListenPage) => Promise<unknown>>> = {
  empty: async () => {},
  'fields that cannot be read': async (listen) => {
    await listen.textbox('Span length').fill('long');
    await listen.textbox('Target from').fill('3 parrots');
    await listen.textbox('Target from').press('Enter');
    await listen.page.getByText('Ends, stiffness, tolerance').click();
  },
  listening: async (listen) => {
    await listen.button('Listen').click();
    await listen.button('Stop').waitFor();
  },
  'a reading of its own belt': async (listen) => {
    await listen.describe(truthOf('plain-150mm'));
    await read(listen, 'plain-150mm');
  },
  'a reading of a belt that nobody weighed': async (listen) => {
    await listen.textbox('Span length').fill('150');
    await read(listen, 'plain-150mm');
    await listen.page.getByText('Each pluck with its partials').click();
  },
  'a refusal': async (listen) => {
    await listen.describe(truthOf('short-stiff-60mm'));
    await read(listen, 'short-stiff-60mm');
  },
  'frequency alone': (listen) => read(listen, 'plain-150mm'),
  'nothing heard': (listen) => read(listen, 'silence'),
  'a file that cannot be read': (listen) => read(listen, 'broken-header'),
  cautions: async (listen) => {
    const menu = listen.button('Menu');
    if (await menu.isVisible()) await menu.click();
    await listen.page.getByRole('button', { name: 'Cautions', exact: true }).click();
  },
  menu: async (listen) => {
    const menu = listen.button('Menu');
    if (await menu.isVisible()) await menu.click();
  },
  'large figures before a pluck': (listen) => listen.page.goto(`${listen.page.url()}#/listen/far`),
  'large figures': async (listen) => {
    await listen.describe(truthOf('plain-150mm'));
    await read(listen, 'plain-150mm');
    await listen.page.goto(`${listen.page.url()}#/listen/far`);
    await listen.page.getByRole('heading', { name: 'Large figures' }).waitFor();
  },
};

/** The places besides Listen, by address or as they come about. */
const PLACES: Readonly<Record<string, (listen: ListenPage) => Promise<unknown>>> = {
  'no machine yet': async (listen) => {
    await goTo(listen, '#/machines');
    await listen.button('Crossed gantry').waitFor();
  },
  'a machine with everything open': async (listen) => {
    await goTo(listen, '#/machines');
    await listen.button('Crossed gantry').click();
    await listen.page.getByRole('heading', { name: 'My gantry' }).waitFor();
    for (const summary of await listen.page.locator('machine-sheet summary').all()) await summary.click();
    await listen.page.getByRole('combobox', { name: 'How it is tightened' }).first().selectOption('by a screw');
    await listen.textbox('Target from').first().fill('parrots');
    await listen.textbox('Target from').first().press('Enter');
  },
  'a machine that is gone': async (listen) => {
    await goTo(listen, '#/machines/nowhere');
    await listen.page.getByText('This machine is not here').waitFor();
  },
  'settings with a file that is not taken': async (listen) => {
    await goTo(listen, '#/settings');
    await listen.page.getByLabel('Open a file').setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{') });
    await listen.page.getByText('Nothing has changed').waitFor();
  },
  'settings with a preview': async (listen) => {
    await goTo(listen, '#/settings');
    const file = fileText(exampleDocument, '2026-03-02T08:15:00.000Z');
    await listen.page.getByLabel('Open a file').setInputFiles({ name: 'b.json', mimeType: 'application/json', buffer: Buffer.from(file) });
    await listen.page.getByRole('table').waitFor();
  },
  'the question before everything goes': async (listen) => {
    await goTo(listen, '#/settings');
    await listen.button('Remove everything').click();
  },
  'a take on its way into the logbook': async (listen) => {
    await read(listen, 'plain-150mm');
    await listen.page.keyboard.press('k');
    await listen.page.getByRole('dialog', { name: 'Keep in logbook' }).waitFor();
  },
};

const goTo = (listen: ListenPage, hash: string) => listen.page.goto(`${listen.page.url().replace(/#.*/u, '')}${hash}`);

const ALL = { ...STATES, ...PLACES };

describe('for everyone', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  describe.each(Object.keys(ALL))('%s', (state) => {
    it.each([
      { colorScheme: 'light', width: 1280 },
      { colorScheme: 'dark', width: 320 }, // as at 400 % zoom
    ] as const)('axe finds nothing serious and nothing scrolls sideways: $colorScheme, $width px', async ({ colorScheme, width }) => {
      const listen = await ListenPage.open(browser, { colorScheme, viewport: { width, height: 800 } });
      await ALL[state]!(listen);
      expect(await seriousIn(listen)).toEqual([]);
      const overhang = await listen.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(overhang).toBe(0);
      expect(listen.complaints).toEqual([]);
      await listen.close();
    });
  });

  it('has one control of each fixed name', async () => {
    const listen = await ListenPage.open(browser);
    await listen.belt().selectOption({ label: 'My own belt' });
    expect(await listen.belt().locator('option').last().textContent()).toBe('My own belt');
    for (const name of ['Linear density', 'Span length', 'Target from', 'Target to']) {
      expect(await listen.page.getByLabel(name).count(), name).toBe(1);
      expect(await listen.textbox(name).count(), name).toBe(1);
    }
    for (const name of ['Listen', 'Play the demo take', 'Open a recording']) expect(await listen.button(name).count(), name).toBe(1);
    expect(await listen.page.getByLabel('Belt').count()).toBe(1);
    expect(await listen.recording().count()).toBe(1);
    expect(await listen.page.getByRole('status').count()).toBe(1);
  });

  it('tells a pluck to the ear once, as one sentence', async () => {
    const listen = await ListenPage.open(browser);
    await listen.describe(truthOf('plain-150mm'));
    await read(listen, 'plain-150mm');
    const heard = await listen.page.getByRole('status', { name: 'Reading' }).ariaSnapshot();
    expect(heard).toMatch(/Reading: [\d.]+ newtons, plus or minus [\d.]+\. (?:Trusted|Doubtful)\. [\d.]+ hertz/u);
  });
});
