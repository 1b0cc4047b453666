/** Holds the state of the page and tells when it changed. */

import { type AppEvent, type AppState, reduce } from './state.ts';

export class Store extends EventTarget {
  #state: AppState;

  constructor(state: AppState) {
    super();
    this.#state = state;
  }

  get state(): AppState {
    return this.#state;
  }

  dispatch(event: AppEvent): void {
    const before = this.#state;
    this.#state = reduce(before, event);
    if (this.#state !== before) this.dispatchEvent(new Event('change'));
  }
}
