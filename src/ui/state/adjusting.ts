/** A session of adjusting in the page: takes each new pluck as the belt that was asked for, keeps every step, and tells when something changed. */

import type { KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import { beltReading } from '../../core/machine/adjust/group-readings.ts';
import type { Advice } from '../../core/machine/adjust/next-turn.ts';
import { type Session, sessionOf, withPluck } from '../../core/machine/adjust/session.ts';
import { lastPluckGivenTo, type Step, withoutLastStep } from '../../core/machine/adjust/steps.ts';
import type { PluckSound } from '../../core/outcome.ts';
import { adjustGroup, type ReadyGroup } from './adjust-group.ts';
import { begunEntry, movedEntry, type RecordedStep, recordedSteps } from './adjust-record.ts';
import type { Workbench } from './context.ts';
import { nowAt } from './new-item.ts';
import type { Take } from './take.ts';
import { changedTake, newTake } from './take-item.ts';

export interface AdjustWords {
  readonly moved: (group: ReadyGroup, advice: Advice) => string;
  readonly begun: (group: ReadyGroup) => string;
}

/** An onset and the pluck that it turns out to be lie this near to each other. */
const OWN_ONSET_WITHIN_S = 0.35;

export class Adjusting extends EventTarget {
  readonly #workbench: Workbench;
  readonly #words: AdjustWords;
  #group: ReadyGroup;
  #steps: readonly RecordedStep[];
  #session: Session;
  /** Plucks of the present take that were dealt with. */
  #dealtWith = 0;
  #take: Take | undefined;
  /** Onsets that fell into speech, s of the take. */
  #deafened: readonly number[] = [];
  #onsetsSeen: readonly number[] = [];
  /** Speech is on: what is heard meanwhile is not a belt. */
  isSpeaking = false;

  constructor({ workbench, words, group }: { workbench: Workbench; words: AdjustWords; group: ReadyGroup }) {
    super();
    this.#workbench = workbench;
    this.#words = words;
    this.#group = group;
    this.#steps = recordedSteps(workbench.kept.document, group, Date.now());
    this.#session = sessionOf(group.plan, this.#steps);
  }

  get group(): ReadyGroup {
    return this.#group;
  }
  get session(): Session {
    return this.#session;
  }
  get steps(): readonly Step[] {
    return this.#steps;
  }

  /** Name under which the page listens for this group. */
  get owner(): string {
    return `adjust ${this.#group.machine.id} ${this.#group.id}`;
  }
  get isListening(): boolean {
    const { errand, activity } = this.#workbench.store.state;
    return errand?.owner === this.owner && activity.kind === 'listening';
  }

  connect(): void {
    this.#workbench.store.addEventListener('change', this.#heard);
    this.#workbench.kept.addEventListener('change', this.#keptChanged);
  }

  disconnect(): void {
    this.#workbench.store.removeEventListener('change', this.#heard);
    this.#workbench.kept.removeEventListener('change', this.#keptChanged);
    if (this.#workbench.store.state.errand?.owner === this.owner) void this.#workbench.effects.endErrand();
  }

  listen(): void {
    void this.#workbench.effects.listenFor(this.owner, this.#group.members[0]!.entered);
  }

  stop(): void {
    void this.#workbench.effects.stop();
  }

  undo(): void {
    const { ask } = this.#session;
    this.#to(withoutLastStep(this.#steps, ask.kind === 'pluck' && ask.have > 0));
  }

  /** The last pluck was of this belt. */
  give(belt: number): void {
    this.#to(lastPluckGivenTo(this.#steps, belt));
  }

  startAnew(): void {
    const entry = begunEntry(this.#group, this.#words.begun(this.#group));
    void this.#workbench.kept.change((document) => ({ ...document, entries: [...document.entries, entry] }));
    this.#steps = [];
    this.#changed();
  }

  readonly #heard = (): void => {
    const { errand, take, activity } = this.#workbench.store.state;
    if (errand?.owner !== this.owner) return;
    if (activity.kind === 'listening') this.#watchOnsets(activity.onsetsAtS);
    const plucks = take?.plucks ?? [];
    if (plucks.length < this.#dealtWith) this.#dealtWith = plucks.length;
    if (take) this.#hearThrough(take);
    for (const { sound } of plucks.slice(this.#dealtWith)) {
      this.#dealtWith += 1;
      if (!this.#fellIntoSpeech(sound)) this.#to(withPluck(this.#plan, this.#steps, sound));
    }
    this.dispatchEvent(new Event('change'));
  };

  #hearThrough(take: Take): void {
    this.#take = take;
    const { sampleRateHz, processing } = take;
    const { source } = this.#plan;
    if (source.sampleRateHz === sampleRateHz && source.processing === processing) return;
    this.#group = { ...this.#group, plan: { ...this.#plan, source: { sampleRateHz, processing } } };
    this.#session = sessionOf(this.#plan, this.#steps);
  }

  get #plan() {
    return this.#group.plan;
  }

  #watchOnsets(onsetsAtS: readonly number[]): void {
    const fresh = onsetsAtS.filter((atS) => !this.#onsetsSeen.includes(atS));
    this.#onsetsSeen = onsetsAtS;
    if (this.isSpeaking) this.#deafened = [...this.#deafened, ...fresh];
  }

  #fellIntoSpeech({ startS }: PluckSound): boolean {
    return this.#deafened.some((atS) => Math.abs(atS - startS) <= OWN_ONSET_WITHIN_S);
  }

  /** A density or a length that is corrected counts at once, for what was heard before too. */
  readonly #keptChanged = (): void => {
    const found = adjustGroup(this.#workbench.kept.document, this.#group.machine.id, this.#group.id, this.#plan.source);
    if (found.kind !== 'ready' || JSON.stringify(found.plan) === JSON.stringify(this.#plan)) return;
    this.#group = found;
    this.#changed();
  };

  #to(steps: readonly Step[]): void {
    if (steps === this.#steps) return;
    const before = this.#steps;
    const { steps: recorded, change } = this.#recorded(before, steps);
    this.#steps = recorded;
    void this.#workbench.kept.change(change);
    this.#changed();
  }

  #changed(): void {
    this.#session = sessionOf(this.#plan, this.#steps);
    this.dispatchEvent(new Event('change'));
  }

  /** New steps get items, changed ones keep theirs, and those of steps that are gone are marked as deleted. */
  #recorded(
    before: readonly RecordedStep[],
    after: readonly Step[],
  ): { steps: readonly RecordedStep[]; change: (document: KeptDocument) => KeptDocument } {
    const steps: RecordedStep[] = [];
    const takes = new Map<string, (take: KeptTake | undefined) => KeptTake>();
    const entries: KeptDocument['entries'][number][] = [];
    for (const step of after) {
      const known = 'itemId' in step ? (step as RecordedStep) : undefined;
      const itemId = known?.itemId;
      const old = before.find((one) => one.itemId === itemId);
      if (
        known &&
        old &&
        (old === known || (old.kind === 'reading' && known.kind === 'reading' && old.sounds === known.sounds && old.belt === known.belt))
      ) {
        steps.push(known);
      } else if (step.kind === 'move') {
        const entry = movedEntry(this.#group, step.advice, this.#words.moved(this.#group, step.advice));
        entries.push(entry);
        steps.push({ ...step, itemId: entry.id });
      } else {
        const heard = this.#heardTake(step.belt, step.sounds);
        const fresh = newTake(heard);
        const id = itemId ?? fresh.id;
        takes.set(id, (take) => (take ? changedTake(take, heard) : { ...fresh, id }));
        steps.push({ ...step, itemId: id });
      }
    }
    const kept = new Set(steps.map(({ itemId }) => itemId));
    const gone = new Set(before.map(({ itemId }) => itemId).filter((id) => !kept.has(id)));
    return { steps, change: (document) => changedDocument(document, { takes, entries, gone }) };
  }

  #heardTake(belt: number, sounds: readonly PluckSound[]) {
    const { entered } = this.#group.members[belt]!;
    const { reading } = beltReading(this.#plan, belt, sounds);
    const { sampleRateHz, processing, source } = this.#take ?? { ...this.#plan.source, source: 'microphone' as const };
    return { sounds, entered, setup: this.#plan.belts[belt]!.setup, reading, sampleRateHz, processing, source };
  }
}

function changedDocument(
  document: KeptDocument,
  {
    takes,
    entries,
    gone,
  }: {
    readonly takes: ReadonlyMap<string, (take: KeptTake | undefined) => KeptTake>;
    readonly entries: readonly KeptDocument['entries'][number][];
    readonly gone: ReadonlySet<string>;
  },
): KeptDocument {
  const there = new Set(document.takes.map(({ id }) => id));
  const deletedAt = nowAt();
  const marked = <Item extends { readonly id: string }>(item: Item): Item => (gone.has(item.id) ? { ...item, deletedAt } : item);
  return {
    ...document,
    takes: [
      ...document.takes.map((take) => marked(takes.get(take.id)?.(take) ?? take)),
      ...[...takes].filter(([id]) => !there.has(id)).map(([, make]) => make(undefined)),
    ],
    entries: [...document.entries.map(marked), ...entries],
  };
}
