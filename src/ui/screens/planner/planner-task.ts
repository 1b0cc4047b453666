/** Asks the planner anew when the question has changed and rested for a moment; what comes too late is dropped. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { AskedPlan, PlanAnswer } from '../../../core/machine/ask-plan.ts';
import type { Planner } from '../../../ports.ts';

export type PlanState =
  | { readonly kind: 'none' }
  /** `last`: what stands meanwhile. */
  | { readonly kind: 'reckoning'; readonly last?: Planned | undefined }
  | ({ readonly kind: 'planned' } & Planned)
  | { readonly kind: 'broken' };

export interface Planned {
  readonly asked: AskedPlan;
  readonly answer: PlanAnswer;
}

const REST_MS = 150;

export class PlannerTask implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #planner: () => Planner;
  #key = '';
  #aborting: AbortController | undefined;
  #resting: ReturnType<typeof setTimeout> | undefined;
  state: PlanState = { kind: 'none' };

  constructor(host: ReactiveControllerHost, planner: () => Planner) {
    this.#host = host;
    this.#planner = planner;
    host.addController(this);
  }

  hostConnected(): void {}

  hostDisconnected(): void {
    this.#giveUp();
    this.#key = '';
  }

  /** Cheap where nothing changed; to be called from `willUpdate`. */
  ask(asked: AskedPlan | undefined): void {
    const key = asked === undefined ? '' : JSON.stringify(asked);
    if (key === this.#key) return;
    this.#key = key;
    this.#giveUp();
    if (asked === undefined) {
      this.state = { kind: 'none' };
      return;
    }
    this.state = { kind: 'reckoning', last: this.#last };
    this.#resting = setTimeout(() => void this.#run(asked), REST_MS);
  }

  get #last(): Planned | undefined {
    if (this.state.kind === 'planned') return { asked: this.state.asked, answer: this.state.answer };
    return this.state.kind === 'reckoning' ? this.state.last : undefined;
  }

  async #run(asked: AskedPlan): Promise<void> {
    const aborting = new AbortController();
    this.#aborting = aborting;
    try {
      const answer = await this.#planner().plan(asked, { signal: aborting.signal });
      if (this.#aborting !== aborting) return;
      this.state = answer ? { kind: 'planned', asked, answer } : { kind: 'none' };
    } catch {
      if (this.#aborting !== aborting) return;
      this.state = { kind: 'broken' };
    }
    this.#host.requestUpdate();
  }

  #giveUp(): void {
    clearTimeout(this.#resting);
    const aborting = this.#aborting;
    this.#aborting = undefined;
    aborting?.abort();
  }
}
