/** Lets a screen follow a part of something that tells its changes: it is drawn anew only when that part has changed. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';

export class FollowedPart<Source extends EventTarget, T> implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #source: () => Source;
  readonly #select: (source: Source) => T;
  #followed: Source | undefined;
  #value: T | undefined;

  /** @param select  gives a part as it stands there; what it makes anew each time would draw each time */
  constructor(host: ReactiveControllerHost, source: () => Source, select: (source: Source) => T) {
    this.#host = host;
    this.#source = source;
    this.#select = select;
    host.addController(this);
  }

  get value(): T {
    return this.#select(this.#source());
  }

  hostConnected(): void {
    this.#followed = this.#source();
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
