/** Tells a component whether the page is narrow, where layout alone cannot do it. The same width stands in the style sheets. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';

const NARROW = '(max-width: 59.99rem)';

export class Narrow implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #query = matchMedia(NARROW);

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  get matches(): boolean {
    return this.#query.matches;
  }

  hostConnected(): void {
    this.#query.addEventListener('change', this.#changed);
  }

  hostDisconnected(): void {
    this.#query.removeEventListener('change', this.#changed);
  }

  readonly #changed = (): void => this.#host.requestUpdate();
}
