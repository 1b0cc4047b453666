/**
 * The one list of places, and of the pages in each. A place stands in the bar as soon as it is in this list; whatever it draws with is
 * fetched when it is first opened. Within a place the first page that fits is shown, so that the widest pattern stands last.
 */

import { html, type TemplateResult } from 'lit';
import type { PlaceName } from '../words/places-en.ts';
import type { Route } from './route.ts';

/** Parts of the address by the names in the pattern. */
export type PageParams = Readonly<Record<string, string | undefined>>;

export interface Page {
  /** What follows the place: `:name` takes any part, `:name?` may be missing. `''` is the place itself. */
  readonly pattern: string;
  /** Fetches what the page draws with; none where it came with the frame. */
  readonly load?: (() => Promise<unknown>) | undefined;
  readonly draw: (params: PageParams, query: URLSearchParams) => TemplateResult;
  /** Takes the whole screen, without bars. */
  readonly whole?: boolean | undefined;
}

export interface Place {
  readonly id: PlaceName;
  readonly pages: readonly [Page, ...Page[]];
  /** Stands at the side of the bar, or behind Menu, instead of among the shelves. */
  readonly aside?: boolean | undefined;
}

const listen: Place = {
  id: 'listen',
  pages: [
    { pattern: 'far', whole: true, load: () => import('./screens/far-screen.ts'), draw: () => html`<far-screen></far-screen>` },
    { pattern: 'two', load: () => import('./screens/two/two-screen.ts'), draw: () => html`<two-screen></two-screen>` },
    { pattern: 'from', load: () => import('./screens/link/link-screen.ts'), draw: () => html`<link-screen></link-screen>` },
    { pattern: '', draw: () => html`<listen-screen></listen-screen>` },
  ],
};

const machines: Place = {
  id: 'machines',
  pages: [
    { pattern: 'plan', load: () => import('./screens/planner/planner-screen.ts'), draw: () => html`<planner-screen></planner-screen>` },
    {
      pattern: ':machine/plan',
      load: () => import('./screens/planner/planner-screen.ts'),
      draw: ({ machine }) => html`<planner-screen .machineId=${machine ?? ''}></planner-screen>`,
    },
    {
      pattern: ':machine/adjust/:group',
      whole: true,
      load: () => import('./screens/adjust/adjust-screen.ts'),
      draw: ({ machine, group }) => html`<adjust-screen .machineId=${machine ?? ''} .groupId=${group ?? ''}></adjust-screen>`,
    },
    {
      pattern: ':machine/match/:group',
      whole: true,
      load: () => import('./screens/adjust/match-screen.ts'),
      draw: ({ machine, group }) => html`<match-screen .machineId=${machine ?? ''} .groupId=${group ?? ''}></match-screen>`,
    },
    {
      pattern: ':machine/card',
      load: () => import('./screens/machines/target-card.ts'),
      draw: ({ machine }) => html`<target-card .machineId=${machine ?? ''}></target-card>`,
    },
    {
      pattern: ':machine?',
      load: () => import('./screens/machines/machines-screen.ts'),
      draw: ({ machine }) => html`<machines-screen .machineId=${machine ?? ''}></machines-screen>`,
    },
  ],
};

const logbook: Place = {
  id: 'logbook',
  pages: [
    {
      pattern: 'validation',
      load: () => import('./screens/validation/validation-screen.ts'),
      draw: () => html`<validation-screen></validation-screen>`,
    },
    {
      pattern: ':book/report',
      load: () => import('./screens/logbook/report-screen.ts'),
      draw: ({ book }) => html`<report-screen .bookId=${book ?? ''}></report-screen>`,
    },
    {
      pattern: ':book?',
      load: () => import('./screens/logbook/logbook-screen.ts'),
      draw: ({ book }) => html`<logbook-screen .bookId=${book ?? ''}></logbook-screen>`,
    },
  ],
};

const settings: Place = {
  id: 'settings',
  aside: true,
  pages: [
    { pattern: '', load: () => import('./screens/settings/settings-screen.ts'), draw: () => html`<settings-screen></settings-screen>` },
  ],
};

const belts: Place = {
  id: 'belts',
  pages: [
    {
      pattern: ':id?/:page?',
      load: () => import('./screens/belts/belts-screen.ts'),
      draw: ({ id = '', page = '' }, query) =>
        html`<belts-screen .beltId=${id} .page=${page} .like=${query.get('like') ?? ''}></belts-screen>`,
    },
  ],
};

const gauges: Place = {
  id: 'gauges',
  pages: [
    {
      pattern: ':gauge?/:tab?',
      load: () => import('./screens/gauges/gauges-screen.ts'),
      draw: ({ gauge, tab }) => html`<gauges-screen .gaugeId=${gauge ?? ''} .tab=${tab ?? ''}></gauges-screen>`,
    },
  ],
};

/** In the order of the bar. */
export const places: readonly [Place, ...Place[]] = [listen, machines, belts, gauges, logbook, settings];

export interface Shown {
  readonly place: Place;
  readonly page: Page;
  readonly params: PageParams;
}

/** What an address shows: the first place where it names none that is built, the place's last page where it names none of its pages. */
export function shownAt(route: Route, all: readonly [Place, ...Place[]] = places): Shown {
  const place = all.find(({ id }) => id === route.place) ?? all[0];
  const own = place.id === route.place ? route.rest : [];
  for (const page of place.pages) {
    const params = paramsOf(page.pattern, own);
    if (params) return { place, page, params };
  }
  return { place, page: place.pages.at(-1) ?? place.pages[0], params: {} };
}

/** Undefined where the parts do not fit the pattern. */
function paramsOf(pattern: string, parts: readonly string[]): PageParams | undefined {
  const wanted = pattern === '' ? [] : pattern.split('/');
  if (parts.length > wanted.length) return undefined;
  const params: Record<string, string | undefined> = {};
  for (const [index, want] of wanted.entries()) {
    const part = parts[index];
    if (want.startsWith(':')) {
      if (part === undefined && !want.endsWith('?')) return undefined;
      params[want.slice(1).replace('?', '')] = part;
    } else if (want !== part) return undefined;
  }
  return params;
}
