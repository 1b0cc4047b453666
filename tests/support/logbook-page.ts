/** The Logbook of the demo's plotter with a past, as a person brings it in. */

import type { Browser } from 'playwright';
import { inject } from 'vitest';
import type {} from '../../src/ui/app.ts';
import { ListenPage } from './listen-page.ts';

export async function openLogbook(browser: Browser, options: Parameters<typeof ListenPage.open>[1] = {}): Promise<ListenPage> {
  const opened = await ListenPage.open(browser, { address: `${inject('pageAddress')}#/machines`, timezoneId: 'Europe/Lisbon', ...options });
  const { page } = opened;
  const bring = page.getByRole('button', { name: 'Bring in the demo machines' });
  const fold = page.locator('place-layout summary');
  await bring.or(fold).first().waitFor();
  if (!(await bring.isVisible())) await fold.click();
  await bring.click();
  await page.getByRole('textbox', { name: 'Name of the machine' }).waitFor();
  await page.goto(`${inject('pageAddress')}#/logbook`);
  await page.getByRole('button', { name: 'Bring in a past for the demo' }).click();
  await page.getByRole('heading', { name: /Retension B by about/u }).waitFor();
  return opened;
}
