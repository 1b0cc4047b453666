/** Lets a screen follow a part of the state. */

import type { ReactiveControllerHost } from 'lit';
import { FollowedPart } from './followed-part.ts';
import type { AppState } from './state.ts';
import type { Store } from './store.ts';

export class Selected<T> extends FollowedPart<Store, T> {
  constructor(host: ReactiveControllerHost, store: () => Store, select: (state: AppState) => T) {
    super(host, store, ({ state }) => select(state));
  }
}
