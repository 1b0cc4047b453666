/** The Logbook on the built page: what is due, the time line, entries to find, add, take away and bring back, a reminder, ten thousand entries. */

import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { ListenPage, openBrowser } from '../support/listen-page.ts';
import { openLogbook } from '../support/logbook-page.ts';

const rowCount = async (page: Page): Promise<number> =>
  Number(await page.getByRole('table', { name: 'Entries' }).getAttribute('aria-rowcount')) - 1;

const serious = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
};

describe('the logbook', () => {
  let browser: Browser;
  let listen: ListenPage;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    listen = await openLogbook(browser);
    page = listen.page;
    page.setDefaultTimeout(15_000);
  });
  afterAll(() => browser.close());

  it('opens with what has to be done first, and shows what that rests on', async () => {
    await page.getByRole('heading', { level: 1, name: /Retension B by about \d+ \w+/u }).waitFor();
    await page.getByText('Both belts are inside the target.').waitFor();
    await page.getByText(/B slips away from A by \d\.\d\s% a month\./u).waitFor();
    await page.getByRole('img', { name: /^Forces of A and B from/u }).waitFor();
    await page.getByRole('img', { name: 'How far B stands from A, each with its 95 % interval.' }).waitFor();
    await page.getByText(/leaves the match, \d+ \w+ to \d+ \w+/u).waitFor();
    expect(await rowCount(page)).toBe(12);
  });

  it('tells the plots to a screen reader as tables', async () => {
    const forces = page.getByRole('table', { name: 'Forces over time' });
    expect(await forces.getByRole('row').count()).toBe(21);
    expect(await serious(page)).toEqual([]);
  });

  it('finds by words and narrows by kind', async () => {
    await page.getByRole('searchbox', { name: 'Find' }).fill('window');
    await expect.poll(() => rowCount(page)).toBe(1);
    await page.getByRole('searchbox', { name: 'Find' }).fill('no such thing');
    await page.getByText('Nothing here goes with that.').waitFor();
    await page.getByRole('searchbox', { name: 'Find' }).fill('');
    await page.getByRole('checkbox', { name: 'Readings', exact: true }).uncheck();
    await expect.poll(() => rowCount(page)).toBe(2);
    await page.getByRole('checkbox', { name: 'Readings', exact: true }).check();
  });

  it('takes an entry by keyboard alone, and says what is missing', async () => {
    await page.getByRole('button', { name: 'Add an entry' }).focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Add an entry' });
    await dialog.waitFor();
    await page.getByRole('textbox', { name: 'Note' }).focus();
    await page.getByRole('button', { name: 'Keep it' }).press('Enter');
    await dialog.getByText('Write what happened.').waitFor();
    await page.getByRole('combobox', { name: 'What happened' }).selectOption('Gauge reading');
    await page.getByRole('checkbox', { name: 'B', exact: true }).press('Space');
    await page.getByRole('textbox', { name: 'Force by the gauge, N' }).fill('7.4 ± 0.4');
    await page.getByRole('textbox', { name: 'Temperature, °C' }).fill('19,5 °C');
    await page.getByRole('textbox', { name: 'Note' }).fill('with the brass fork');
    expect(await serious(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keep it' }).press('Enter');
    await page.getByText(/B: 7\.4 ± 0\.4 N: 20\s°C: with the brass fork/u).waitFor();
    await page.reload();
    await page.getByText(/with the brass fork/u).waitFor();
  });

  it('lets a deletion be undone, and keeps a deletion over a reload', async () => {
    const open = () =>
      page
        .getByRole('row', { name: /with the brass fork/u })
        .getByRole('button')
        .click();
    await open();
    await page.getByRole('button', { name: 'Delete it' }).click();
    await page.getByText('Gauge reading was deleted.').waitFor();
    expect(await rowCount(page)).toBe(12);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => rowCount(page)).toBe(13);
    await open();
    await page.getByRole('button', { name: 'Delete it' }).click();
    await expect.poll(() => rowCount(page)).toBe(12);
    await page.reload();
    await page.getByRole('heading', { name: /Retension B by about/u }).waitFor();
    expect(await rowCount(page)).toBe(12);
  });

  it('takes a note and a temperature of readings afterwards', async () => {
    await page.getByRole('table', { name: 'Entries' }).getByRole('row').nth(2).getByRole('button').click();
    await page.getByRole('textbox', { name: 'Temperature, °C' }).fill('warm');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page.getByText('Write a temperature in degrees, such as 18.').waitFor();
    await page.getByRole('textbox', { name: 'Temperature, °C' }).fill('23');
    await page.getByRole('textbox', { name: 'Note' }).fill('after the heating came on');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page.getByText(/^23\s°C, after the heating came on/u).waitFor();
  });

  it('says what an event did to the force', async () => {
    await page
      .getByRole('row', { name: /New belt/u })
      .getByRole('button')
      .click();
    await page.getByText(/B rose by 0\.\d+\sN\s±\s0\.\d+\sN\./u).waitFor();
    await page.keyboard.press('Escape');
  });

  it('makes a reminder that another program reads', async () => {
    await page.getByRole('button', { name: 'Remind me' }).click();
    const day = await page.getByLabel('Day').inputValue();
    await page.getByLabel('Day').fill('2020-01-01');
    await page.getByRole('button', { name: 'Save the calendar file' }).click();
    await page.getByText('Choose a day that is still to come.').waitFor();
    await page.getByLabel('Day').fill(day);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the calendar file' }).click(),
    ]);
    const event = new ICAL.Component(ICAL.parse(readFileSync(await download.path(), 'utf8'))).getFirstSubcomponent('vevent')!;
    expect(event.getFirstPropertyValue('summary')).toBe('Retension B, Dovetable');
    expect(String(event.getFirstPropertyValue('dtstart'))).toBe(day);
    expect(event.getFirstPropertyValue('description')).toContain('Power off and unplugged first.');
  });

  it('broke no policy and asked for nothing outside', () => {
    expect(listen.complaints).toEqual([]);
  });
});

describe('an empty logbook', () => {
  it('says what to do', async () => {
    const browser = await openBrowser();
    const { page } = await ListenPage.open(browser, { address: `${inject('pageAddress')}#/logbook` });
    await page.getByRole('heading', { name: 'Nothing is kept yet' }).waitFor();
    expect(await serious(page)).toEqual([]);
    await page.goto(`${inject('pageAddress')}#/logbook/no-such-machine`);
    await page.getByRole('heading', { name: 'This machine is not here' }).waitFor();
    await browser.close();
  });
});

describe('ten thousand entries', () => {
  it('are drawn as they are seen, and the last is reached', async () => {
    const browser = await openBrowser();
    const { page } = await openLogbook(browser);
    await page.evaluate(async () => {
      const { kept } = document.querySelector('spanwright-app')!.workbench;
      await kept.change((before) => {
        const [machine] = before.machines;
        const many = Array.from({ length: 10_000 }, (_, index) => {
          const at = new Date(Date.UTC(2020, 0, 1) + index * 3_600_000).toISOString();
          const when = { at, zone: 'UTC' };
          return {
            id: `many-${index}`,
            made: when,
            changedAt: at,
            happened: when,
            kind: 'note' as const,
            text: `note number ${index}`,
            machineId: machine!.id,
            machineBeltIds: [],
          };
        });
        return { ...before, entries: [...before.entries, ...many] };
      });
    });
    await expect.poll(() => rowCount(page), { timeout: 20_000 }).toBe(10_012);
    const drawn = () => page.getByRole('table', { name: 'Entries' }).getByRole('row').count();
    expect(await drawn()).toBeLessThan(80);
    await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
    await page.getByText('note number 0', { exact: true }).waitFor();
    expect(await drawn()).toBeLessThan(80);
    await page.getByRole('searchbox', { name: 'Find' }).fill('number 7777');
    await expect.poll(() => rowCount(page)).toBe(1);
    await browser.close();
  });
});

describe.each([
  { name: 'phone, dark', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
  { name: 'narrowest, light', viewport: { width: 320, height: 640 }, colorScheme: 'light' },
] as const)('on a $name', ({ viewport, colorScheme }) => {
  it('nothing is cut off, and axe finds nothing serious', async () => {
    const browser = await openBrowser();
    const { page, complaints } = await openLogbook(browser, { viewport, colorScheme });
    expect(await serious(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
    const small = await page.evaluate(() => {
      const found: string[] = [];
      const visit = (root: ParentNode) => {
        for (const element of root.querySelectorAll('*')) {
          if (element.shadowRoot) visit(element.shadowRoot);
          if (!element.matches('button, a[href], summary, select, input:not([type=checkbox])')) continue;
          const { height, width } = element.getBoundingClientRect();
          if (width > 0 && height > 0 && height < 36) found.push(`${element.textContent?.trim()} ${height}`);
        }
      };
      visit(document);
      return found;
    });
    expect(small).toEqual([]);
    // A reading's temperature, its last line, lies inside its row.
    const row = page.getByRole('table', { name: 'Entries' }).getByRole('row').filter({ hasText: '°C' }).first();
    const [outer, inner] = [(await row.boundingBox())!, (await row.getByRole('cell').last().boundingBox())!];
    expect(inner.y + inner.height).toBeLessThanOrEqual(outer.y + outer.height);
    expect(complaints).toEqual([]);
    await browser.close();
  });
});

describe('one thing changed on two devices', () => {
  it('stands side by side in the logbook until somebody chooses', async () => {
    const browser = await openBrowser();
    const { page } = await openLogbook(browser);
    await page.evaluate(async () => {
      const { kept } = document.querySelector('spanwright-app')!.workbench;
      await kept.change(
        (before) => {
          const [machine] = before.machines;
          const item = { ...machine!, note: 'as the phone has it', changedAt: '2026-01-02T03:04:05.000Z' };
          return { ...before, rivals: [{ id: `${machine!.id}.x1`, section: 'machines' as const, item }] };
        },
        { asTheyAre: true },
      );
    });
    await page.getByRole('heading', { name: 'One thing was changed on two devices' }).waitFor();
    await page.getByRole('cell', { name: 'as the phone has it' }).waitFor();
    expect(await serious(page)).toEqual([]);
    await page.getByRole('button', { name: /^Keep that of 2 Jan/u }).click();
    await expect.poll(() => page.getByRole('heading', { name: 'One thing was changed on two devices' }).count()).toBe(0);
    await page.reload();
    await page.getByText('as the phone has it, 22 entries').waitFor();
    await browser.close();
  });
});
