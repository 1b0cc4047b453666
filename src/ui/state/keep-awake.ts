/** Keeps the screen on while the page listens: hands are on the belt, and a dark screen would end the take. */

import type { Store } from './store.ts';

/** A hold on the screen; the browser ends it by itself when the page is hidden. */
export interface ScreenHold {
  release(): Promise<void>;
}

export interface Screen {
  /** Undefined where the browser has no such thing; rejects where it refuses, as with a battery that is nearly empty. */
  readonly hold: (() => Promise<ScreenHold>) | undefined;
  readonly isVisible: () => boolean;
  readonly onVisible: (listener: () => void) => void;
}

export class KeepAwake {
  readonly #store: Store;
  readonly #screen: Screen;
  #hold: Promise<ScreenHold | undefined> | undefined;

  constructor({ store, screen }: { readonly store: Store; readonly screen: Screen }) {
    this.#store = store;
    this.#screen = screen;
    store.addEventListener('change', () => this.#follow());
    screen.onVisible(() => this.#again());
  }

  #follow(): void {
    const { kind } = this.#store.state.activity;
    if (kind === 'listening') this.#take();
    else this.#release();
  }

  /** Whoever hid the page and came back has lost the hold. */
  #again(): void {
    if (!this.#screen.isVisible()) return;
    this.#hold = undefined;
    this.#follow();
  }

  #take(): void {
    if (this.#hold || !this.#screen.hold || !this.#screen.isVisible()) return;
    this.#hold = this.#screen.hold().catch(() => undefined); // listening goes on without it
  }

  #release(): void {
    const hold = this.#hold;
    this.#hold = undefined;
    void hold?.then((held) => held?.release()).catch(() => undefined);
  }
}

/** The screen of this browser. */
export const browserScreen = (): Screen => ({
  hold: 'wakeLock' in navigator ? () => navigator.wakeLock.request('screen') : undefined,
  isVisible: () => document.visibilityState === 'visible',
  onVisible: (listener) => document.addEventListener('visibilitychange', listener),
});
