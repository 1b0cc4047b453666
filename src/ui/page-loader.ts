/** Fetches a page's parts when it is first opened, and tells its user when they are there or did not come. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Page } from './places.ts';

export type Loading = 'ready' | 'loading' | 'failed';

export class PageLoader implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #states = new Map<Page, Loading>();

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {}

  /** Begins to fetch at the first call; a page that did not come is asked for again when it is opened again. */
  stateOf(page: Page): Loading {
    if (!page.load) return 'ready';
    const known = this.#states.get(page);
    if (known) return known;
    this.#states.set(page, 'loading');
    page.load().then(
      () => this.#tell(page, 'ready'),
      () => this.#tell(page, 'failed'),
    );
    return 'loading';
  }

  /** Forgets what failed, so that the next opening tries again. */
  forgetFailures(): void {
    for (const [page, state] of this.#states) if (state === 'failed') this.#states.delete(page);
  }

  #tell(page: Page, state: Loading): void {
    this.#states.set(page, state);
    this.#host.requestUpdate();
  }
}
