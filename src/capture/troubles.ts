/** Keeps the account of what is wrong with an open microphone, so that each trouble is told once and ends once. */

import type { CaptureTrouble } from '../ports.ts';

/** What can pass. Several at once make one trouble, which ends with the last of them. */
export type PassingCause = 'context-not-running' | 'clock-stalled' | 'track-muted' | 'digital-silence' | 'no-blocks';

const TROUBLE_OF: Readonly<Record<PassingCause, 'paused' | 'silent'>> = {
  'context-not-running': 'paused',
  'clock-stalled': 'paused',
  'track-muted': 'silent',
  'digital-silence': 'silent',
  'no-blocks': 'silent',
};

export class Troubles {
  readonly #causes = new Set<PassingCause>();
  readonly #listeners: ((trouble: CaptureTrouble) => void)[] = [];
  #end: 'gone' | 'recorder-failed' | undefined;

  /** Notes whether a cause holds now. */
  note(cause: PassingCause, holds: boolean): void {
    const trouble = TROUBLE_OF[cause];
    const before = this.#has(trouble);
    if (holds) this.#causes.add(cause);
    else this.#causes.delete(cause);
    const after = this.#has(trouble);
    if (before === after || this.#end !== undefined) return;
    if (after) this.#tell(trouble);
    else this.#tell(trouble === 'paused' ? 'resumed' : 'sound-again');
  }

  /** The microphone is lost; told once, and nothing after it. */
  end(trouble: 'gone' | 'recorder-failed'): void {
    if (this.#end !== undefined) return;
    this.#end = trouble;
    this.#tell(trouble);
  }

  holds(cause: PassingCause): boolean {
    return this.#causes.has(cause);
  }

  /** Whoever listens late is told at once what holds. */
  listen(listener: (trouble: CaptureTrouble) => void): void {
    this.#listeners.push(listener);
    if (this.#end !== undefined) listener(this.#end);
    else for (const trouble of ['paused', 'silent'] as const) if (this.#has(trouble)) listener(trouble);
  }

  /** Tells nobody any more. */
  clear(): void {
    this.#listeners.length = 0;
  }

  #has(trouble: 'paused' | 'silent'): boolean {
    return [...this.#causes].some((cause) => TROUBLE_OF[cause] === trouble);
  }

  #tell(trouble: CaptureTrouble): void {
    for (const listener of [...this.#listeners]) listener(trouble);
  }
}
