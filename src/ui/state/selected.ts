/** Lets a screen follow a part of the state: it is drawn anew only when that part has changed. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AppState } from './state.ts';
import type { Store } from './store.ts';

export class Selected<T> implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #store: () => Store;
  readonly #select: (state: AppState) => T;
  #followed: Store | undefined;
  #value: T | undefined;

  /** @param select  gives a part of the state as it stands there; what it makes anew each time would draw each time */
  constructor(host: ReactiveControllerHost, store: () => Store, select: (state: AppState) => T) {
    this.#host = host;
    this.#store = store;
    this.#select = select;
    host.addController(this);
  }

  get value(): T {
    return this.#select(this.#store().state);
  }

  hostConnected(): void {
    this.#followed = this.#store();
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
