/** Tells a part how wide it is, so that its drawing is made in real pixels and its text never shrinks with it. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';

export class OwnWidth implements ReactiveController {
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #observer: ResizeObserver;
  #px = 0;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.#host = host;
    this.#observer = new ResizeObserver(() => this.#take());
    host.addController(this);
  }

  /** Width of the part's content box, whole px; 0 before it stands in a page. */
  get px(): number {
    return this.#px;
  }

  hostConnected(): void {
    this.#take();
    this.#observer.observe(this.#host);
  }

  hostDisconnected(): void {
    this.#observer.disconnect();
  }

  #take(): void {
    const px = Math.floor(this.#host.clientWidth);
    if (px === this.#px) return;
    this.#px = px;
    this.#host.requestUpdate();
  }
}
