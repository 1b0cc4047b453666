/** Lets a screen follow a part of what is kept: it is drawn anew only when that part has changed. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Kept } from './kept.ts';

export class KeptPart<T> implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #kept: () => Kept;
  readonly #select: (kept: Kept) => T;
  #followed: Kept | undefined;
  #value: T | undefined;

  /** @param select  gives a part as it stands there; what it makes anew each time would draw each time */
  constructor(host: ReactiveControllerHost, kept: () => Kept, select: (kept: Kept) => T) {
    this.#host = host;
    this.#kept = kept;
    this.#select = select;
    host.addController(this);
  }

  get value(): T {
    return this.#select(this.#kept());
  }

  hostConnected(): void {
    this.#followed = this.#kept();
    this.#value = this.value;
    this.#followed.addEventListener('change', this.#changed);
  }

  hostDisconnected(): void {
    this.#followed?.removeEventListener('change', this.#changed);
  }

  readonly #changed = (): void => {
    const value = this.value;
    if (Object.is(value, this.#value)) return;
    this.#value = value;
    this.#host.requestUpdate();
  };
}
