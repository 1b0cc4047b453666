/** A check of a pair's match in the page: takes each new pluck as the belt that was asked for, and keeps both belts' plucks as takes. */

import type { KeptTake } from '../../../shared/document/take.ts';
import { type MatchCheck, type MatchPluck, matchCheck } from '../../core/machine/match-check.ts';
import type { ReadyGroup } from './adjust-group.ts';
import type { Workbench } from './context.ts';
import { nowAt } from './new-item.ts';
import { changedTake, type HeardTake, newTake } from './take-item.ts';

export class MatchChecking extends EventTarget {
  readonly group: ReadyGroup;
  readonly #workbench: Workbench;
  #plucks: readonly MatchPluck[] = [];
  #check: MatchCheck;
  #dealtWith = 0;
  /** The kept take of each belt in this check. */
  #takes: readonly (string | undefined)[] = [undefined, undefined];

  constructor({ workbench, group }: { workbench: Workbench; group: ReadyGroup }) {
    super();
    this.#workbench = workbench;
    this.group = group;
    this.#check = matchCheck(group.plan, []);
  }

  get check(): MatchCheck {
    return this.#check;
  }
  get plucks(): readonly MatchPluck[] {
    return this.#plucks;
  }
  get owner(): string {
    return `match ${this.group.machine.id} ${this.group.id}`;
  }
  get isListening(): boolean {
    const { errand, activity } = this.#workbench.store.state;
    return errand?.owner === this.owner && activity.kind === 'listening';
  }

  connect(): void {
    this.#workbench.store.addEventListener('change', this.#heard);
  }

  disconnect(): void {
    this.#workbench.store.removeEventListener('change', this.#heard);
    if (this.#workbench.store.state.errand?.owner === this.owner) void this.#workbench.effects.endErrand();
  }

  listen(): void {
    void this.#workbench.effects.listenFor(this.owner, this.group.members[0]!.entered);
    this.#dealtWith = 0;
  }

  stop(): void {
    void this.#workbench.effects.stop();
  }

  undo(): void {
    this.#to(this.#plucks.slice(0, -1));
  }

  /** The last pluck was of the other belt. */
  swapLast(): void {
    const last = this.#plucks.at(-1);
    if (last) this.#to([...this.#plucks.slice(0, -1), { ...last, belt: last.belt === 0 ? 1 : 0 }]);
  }

  /** What was plucked so far stays in the logbook. */
  startAnew(): void {
    this.#takes = [undefined, undefined];
    this.#plucks = [];
    this.#changed();
  }

  readonly #heard = (): void => {
    const { errand, take } = this.#workbench.store.state;
    if (errand?.owner !== this.owner) return;
    const plucks = take?.plucks ?? [];
    if (plucks.length < this.#dealtWith) this.#dealtWith = plucks.length;
    for (const { sound } of plucks.slice(this.#dealtWith)) {
      this.#dealtWith += 1;
      if (this.#check.test.verdict === 'more') this.#to([...this.#plucks, { belt: this.#check.test.next, sound }]);
    }
    this.dispatchEvent(new Event('change'));
  };

  #to(plucks: readonly MatchPluck[]): void {
    this.#plucks = plucks;
    this.#changed();
    this.#keep();
  }

  #changed(): void {
    this.#check = matchCheck(this.group.plan, this.#plucks);
    this.dispatchEvent(new Event('change'));
  }

  #keep(): void {
    const made = ([0, 1] as const).map((belt): { id: string; take?: KeptTake; heard?: HeardTake } | undefined => {
      const heard = this.#heardTake(belt);
      const known = this.#takes[belt];
      if (heard === undefined) return known === undefined ? undefined : { id: known };
      if (known !== undefined) return { id: known, heard };
      const take = newTake(heard);
      return { id: take.id, take, heard };
    });
    this.#takes = made.map((one) => (one?.heard ? one.id : undefined));
    const deletedAt = nowAt();
    void this.#workbench.kept.change((document) => {
      const there = new Set(document.takes.map(({ id }) => id));
      const changed = document.takes.map((take) => {
        const one = made.find((each) => each?.id === take.id);
        if (one === undefined) return take;
        return one.heard ? changedTake(take, one.heard) : { ...take, deletedAt };
      });
      const fresh = made.flatMap((one) => (one?.take && !there.has(one.id) ? [one.take] : []));
      return { ...document, takes: [...changed, ...fresh] };
    });
  }

  #heardTake(belt: 0 | 1): HeardTake | undefined {
    const reading = this.#check.readings[belt];
    const { take } = this.#workbench.store.state;
    if (reading === undefined) return undefined;
    const { plan, members } = this.group;
    const { sampleRateHz, processing, source } = take ?? { ...plan.source, source: 'microphone' as const };
    return {
      sounds: this.#check.sounds[belt],
      entered: members[belt]!.entered,
      setup: plan.belts[belt]!.setup,
      reading,
      sampleRateHz,
      processing,
      source,
    };
  }
}
