/** The Listen screen as a person meets it: by the names of its controls. Each browser hears one recording, or none. */

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import { inject } from 'vitest';
import { chromiumArguments, findChromium } from '../../src/setup/chromium.mjs';

export const fixturePath = (name: string): string => fileURLToPath(new URL(`../../fixtures/${name}`, import.meta.url));

export interface PageTruth {
  readonly frequencyHz: number;
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
}

export const truthOf = (name: string): PageTruth => JSON.parse(readFileSync(fixturePath(`${name}.json`), 'utf8')) as PageTruth;

export interface BrowserOptions {
  /** Fixture that the microphone hears, played once. */
  readonly microphone?: string | undefined;
  /** The same with the path of any recording. */
  readonly microphoneFile?: string | undefined;
  /** Whether the browser says yes without being asked. */
  readonly grant?: boolean | undefined;
  /** Whether there is a microphone at all. */
  readonly device?: boolean | undefined;
  readonly more?: readonly string[] | undefined;
}

export function openBrowser({ microphone, microphoneFile, grant = true, device = true, more = [] }: BrowserOptions = {}): Promise<Browser> {
  const microphoneWav = microphoneFile ?? (microphone && fixturePath(microphone));
  const all = chromiumArguments({ ...(microphoneWav ? { microphoneWav } : {}), grant });
  const args = device ? all : all.filter((argument: string) => !argument.startsWith('--use-fake-device'));
  return chromium.launch({ executablePath: findChromium() ?? '', chromiumSandbox: false, args: [...args, ...more] });
}

type ContextOptions = NonNullable<Parameters<Browser['newContext']>[0]>;

export class ListenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What broke the policy, left the origin, or went wrong in the page. */
  readonly complaints: string[] = [];

  private constructor(page: Page) {
    this.page = page;
    this.context = page.context();
    page.on('console', (message) => {
      if (message.type() === 'error' || message.text().includes('Content Security Policy')) this.complaints.push(message.text());
    });
    page.on('pageerror', (fault) => this.complaints.push(fault.message));
    page.on('request', (request) => {
      const ours = request.url().startsWith(inject('pageAddress')) || /^(?:data|blob):/u.test(request.url());
      if (!ours) this.complaints.push(`request to ${request.url()}`);
    });
  }

  static async open(
    browser: Browser,
    { address = inject('pageAddress'), before, ...options }: ContextOptions & { address?: string; before?: () => void } = {},
  ): Promise<ListenPage> {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB', ...options });
    if (before) await context.addInitScript(before);
    const listen = new ListenPage(await context.newPage());
    await listen.page.goto(address);
    return listen;
  }

  readonly button = (name: string) => this.page.getByRole('button', { name });
  readonly textbox = (name: string) => this.page.getByRole('textbox', { name });
  readonly belt = () => this.page.getByRole('combobox', { name: 'Belt' });
  readonly recording = () => this.page.getByLabel('Open a recording');

  /** All text of the Reading. */
  async reading(): Promise<string> {
    return (await this.page.getByRole('status', { name: 'Reading' }).textContent()) ?? '';
  }

  /** Fills in what is known of a fixture's span; the belt as weighed by its owner. */
  async describe(truth: PageTruth): Promise<void> {
    await this.belt().selectOption({ label: 'My own belt' });
    await this.textbox('Linear density').fill(`${truth.linearDensityKgPerM * 1000} g/m`);
    await this.textbox('Span length').fill(`${truth.spanLengthM * 1000} mm`);
    await this.textbox('Span length').press('Enter');
  }

  close(): Promise<void> {
    return this.context.close();
  }
}

export interface ReadingFigures {
  readonly forceN: number;
  readonly forceU95N: number;
  readonly frequencyHz: number;
  readonly grade: string;
}

/** The figures in the Reading's text, as a person reads them. */
export function figuresIn(text: string): ReadingFigures | undefined {
  const force = /([\d.]+)\s*N\s*±\s*([\d.]+)\s*N/u.exec(text);
  const frequency = /([\d.]+)\s*Hz/u.exec(text);
  const grade = /\b(trusted|doubtful|unusable)\b/u.exec(text);
  if (!force || !frequency || !grade) return undefined;
  return { forceN: Number(force[1]), forceU95N: Number(force[2]), frequencyHz: Number(frequency[1]), grade: grade[1]! };
}
