/** What the page listens for, followed event by event: what sounds before the room is known says nothing, and the last thing that began is heard out. */

import type { ListeningEvent } from '../../core/listening.ts';

/** `waiting`: the room is heard first. `ready`: a pluck may come. `ringing`: something began to sound and is heard out. */
export type Ear = 'waiting' | 'ready' | 'ringing';

export interface Hearing {
  readonly ear: Ear;
  /** From here on the room is known. */
  readonly readyAtS?: number | undefined;
  /** When those began to sound of which it has not been told what they were; in order. */
  readonly onsetsAtS: readonly number[];
}

export const HEARING_THE_ROOM: Hearing = { ear: 'waiting', onsetsAtS: [] };

/** An answer's own time lies this near to its onset: a touch comes shortly before, a ring shortly after it. */
const OWN_ONSET_WITHIN_S = 0.3;

/** Whether anything follows from an event. A pluck always counts; what was none counts only where the room was known before it. */
export function counts({ readyAtS }: Hearing, event: ListeningEvent): boolean {
  if (event.kind === 'ready' || event.kind === 'pluck') return true;
  if (readyAtS === undefined) return false;
  return event.atS >= readyAtS || (event.kind === 'no-pluck' && isOfWholeTake(event));
}

/** Told of a whole take when it ends, with its start as time. */
const isOfWholeTake = ({ why }: Extract<ListeningEvent, { kind: 'no-pluck' }>): boolean => why === 'silence' || why === 'no-onset';

/** The hearing after an event that counts. */
export function hearingAfter(before: Hearing, event: ListeningEvent): Hearing {
  switch (event.kind) {
    case 'ready':
      return { ...before, ...of(before.onsetsAtS), readyAtS: before.readyAtS ?? event.atS };
    case 'onset':
      return { ...before, ...of([...before.onsetsAtS, event.atS]) };
    case 'pluck':
      return { ...before, ...of(stillOpen(before.onsetsAtS, event.sound.startS)) };
    case 'no-pluck':
      return { ...before, ...of(stillOpen(before.onsetsAtS, event.atS)) };
  }
}

const of = (onsetsAtS: readonly number[]): Pick<Hearing, 'ear' | 'onsetsAtS'> => ({
  ear: onsetsAtS.length > 0 ? 'ringing' : 'ready',
  onsetsAtS,
});

/** Answers come in order: with one, its own onset is settled and all before it. */
function stillOpen(onsetsAtS: readonly number[], answeredAtS: number): readonly number[] {
  const distance = (atS: number) => Math.abs(atS - answeredAtS);
  const nearest = onsetsAtS.reduce((best, atS) => (distance(atS) < distance(best) ? atS : best), Number.POSITIVE_INFINITY);
  const settledUpToS = distance(nearest) <= OWN_ONSET_WITHIN_S ? nearest : answeredAtS;
  return onsetsAtS.filter((atS) => atS > settledUpToS);
}
