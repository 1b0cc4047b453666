/** Level and spectrum of the moment on their way to the eye, some 15 times a second; past the store, since nothing follows from them. */

import type { LiveMoment } from '../../ports.ts';

export class LiveMoments {
  readonly #followers = new Set<(moment: LiveMoment | undefined) => void>();

  /** Passes a moment on; none: the sound has ended. */
  show(moment: LiveMoment | undefined): void {
    for (const follower of this.#followers) follower(moment);
  }

  /** Returns what ends the following. */
  follow(follower: (moment: LiveMoment | undefined) => void): () => void {
    this.#followers.add(follower);
    return () => this.#followers.delete(follower);
  }
}
