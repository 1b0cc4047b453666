/** The steps of a session as the document keeps them, a take for each reading and an entry for each move, and back, so that a reload loses nothing. */

import type { KeptEntry } from '../../../shared/document/entry.ts';
import type { KeptTake } from '../../../shared/document/take.ts';
import type { KeptDocument } from '../../../shared/document.ts';
import type { Advice } from '../../core/machine/adjust/next-turn.ts';
import type { Step } from '../../core/machine/adjust/steps.ts';
import type { PluckSound } from '../../core/outcome.ts';
import type { ReadyGroup } from './adjust-group.ts';
import { newItem, nowWhen } from './new-item.ts';

/** A step with the item that keeps it. */
export type RecordedStep = Step & { readonly itemId: string };

/** What was read longer ago may not be so any more: belts settle, and somebody may have turned a screw. Our judgement. */
const GOES_ON_WITHIN_MS = 2 * 3600_000;

/** Steps of the session that goes on: since it was begun anew, and not too long ago. */
export function recordedSteps(
  { takes, entries }: KeptDocument,
  { id, machine, members }: ReadyGroup,
  now: number,
): readonly RecordedStep[] {
  const beltOf = (machineBeltId: string): number => members.findIndex(({ belt }) => belt.id === machineBeltId);
  const readings = takes.flatMap((take) => {
    const belt = take.on?.machineId === machine.id && take.deletedAt === undefined ? beltOf(take.on.machineBeltId) : -1;
    const span = members[belt]?.span.id;
    return belt >= 0 && take.on?.spanId === span ? [{ at: Date.parse(take.made.at), step: readingStep(take, belt) }] : [];
  });
  const own = entries.filter((entry) => entry.deletedAt === undefined && entry.adjusting?.groupId === id);
  const moves = own.flatMap((entry) => {
    const step = moveStep(entry, beltOf);
    return step ? [{ at: Date.parse(entry.made.at), step }] : [];
  });
  const begun = own.filter(({ adjusting }) => adjusting?.kind === 'begun').map(({ made }) => Date.parse(made.at));
  // What was read in the same moment was read after the move.
  const all = [...moves, ...readings].sort((a, b) => a.at - b.at).filter(({ at }) => at >= Math.max(0, ...begun));
  // From the end back to the first long pause.
  let from = all.length;
  let next = now;
  while (from > 0 && next - all[from - 1]!.at <= GOES_ON_WITHIN_MS) {
    from -= 1;
    next = all[from]!.at;
  }
  return all.slice(from).map(({ step }) => step);
}

const readingStep = (take: KeptTake, belt: number): RecordedStep => ({
  kind: 'reading',
  belt,
  sounds: take.sounds as unknown as readonly PluckSound[],
  itemId: take.id,
});

function moveStep({ id, adjusting }: KeptEntry, beltOf: (machineBeltId: string) => number): RecordedStep | undefined {
  if (adjusting?.kind !== 'moved') return undefined;
  const belt = beltOf(adjusting.machineBeltId);
  if (belt < 0) return undefined;
  const { amount } = adjusting;
  const advice: Advice = adjusting.by === 'turn' ? { kind: 'turn', belt, turns: amount } : { kind: 'way', belt, way: amount > 0 ? 1 : -1 };
  return { kind: 'move', advice, itemId: id };
}

export function movedEntry({ id, machine, members }: ReadyGroup, advice: Advice, text: string): KeptEntry {
  const machineBeltId = members[advice.belt]!.belt.id;
  const amount = advice.kind === 'turn' ? advice.turns : advice.way;
  return {
    ...newItem(),
    happened: nowWhen(),
    kind: 'adjusted',
    text,
    machineId: machine.id,
    machineBeltIds: [machineBeltId],
    adjusting: { kind: 'moved', groupId: id, machineBeltId, by: advice.kind, amount },
  };
}

export function begunEntry({ id, machine, members }: ReadyGroup, text: string): KeptEntry {
  return {
    ...newItem(),
    happened: nowWhen(),
    kind: 'adjusted',
    text,
    machineId: machine.id,
    machineBeltIds: members.map(({ belt }) => belt.id),
    adjusting: { kind: 'begun', groupId: id },
  };
}
