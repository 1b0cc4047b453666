/** What has happened in a session of adjusting, in order: readings and moves. Everything else follows from them, so that a step can be taken back. */

import type { PluckSound } from '../../outcome.ts';
import type { Advice } from './next-turn.ts';

export type Step =
  | { readonly kind: 'reading'; readonly belt: number; readonly sounds: readonly PluckSound[] }
  | { readonly kind: 'move'; readonly advice: Advice };

export type Reading = Extract<Step, { kind: 'reading' }>;

/** Without the last pluck of a reading that goes on, else without the last reading and the move before it. */
export function withoutLastStep(steps: readonly Step[], readingGoesOn: boolean): readonly Step[] {
  const last = steps.at(-1);
  if (last === undefined) return steps;
  const before = steps.slice(0, -1);
  if (last.kind === 'reading' && readingGoesOn && last.sounds.length > 1) return [...before, { ...last, sounds: last.sounds.slice(0, -1) }];
  return last.kind === 'reading' && before.at(-1)?.kind === 'move' ? before.slice(0, -1) : before;
}

/** The last pluck was of another belt than was asked for. */
export function lastPluckGivenTo(steps: readonly Step[], belt: number): readonly Step[] {
  const last = steps.at(-1);
  if (last?.kind !== 'reading' || last.belt === belt) return steps;
  const { sounds } = last;
  const rest: readonly Step[] = sounds.length > 1 ? [{ ...last, sounds: sounds.slice(0, -1) }] : [];
  return [...steps.slice(0, -1), ...rest, { kind: 'reading', belt, sounds: sounds.slice(-1) }];
}

/** Moves made so far. */
export const movesIn = (steps: readonly Step[]): number => steps.filter(({ kind }) => kind === 'move').length;

const together = new WeakMap<readonly PluckSound[], WeakMap<readonly PluckSound[], readonly PluckSound[]>>();

/** Both in one list; the same list each time, so that what was reckoned for it stands. */
export function soundsTogether(one: readonly PluckSound[], other: readonly PluckSound[]): readonly PluckSound[] {
  const known = together.get(one)?.get(other);
  if (known) return known;
  const both = [...one, ...other];
  together.set(one, (together.get(one) ?? new WeakMap()).set(other, both));
  return both;
}
