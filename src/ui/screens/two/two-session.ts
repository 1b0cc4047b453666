/** How far a reading at two positions has come: what was heard at each, and what a person is to do next. */

import type { Take } from '../../../core/answer.ts';
import { expectedFrequencyHz } from '../../../core/force/expected.ts';
import { type TwoPositions, twoPositions } from '../../../core/machine/two-positions.ts';
import type { HeardPluck } from '../../state/take.ts';

export type Position = 'first' | 'second';

/** `start`: nobody listens yet. `move`: the first is read, and nothing that fits the second was heard yet. */
export type Step = 'start' | Position | 'move' | 'done';

export interface TwoSession {
  readonly first?: Take | undefined;
  readonly second?: Take | undefined;
}

/** Three plucks make a good reading. */
export const ENOUGH_PLUCKS = 3;
/**
 * While the carriage is moved there are knocks, and a last pluck at the first position is soon made: at the second only what rings near the
 * frequency that follows from the first is taken. A force that changed by half lies well inside.
 */
const NEAR_EXPECTED = 0.3;

export const nextPosition = ({ first }: TwoSession): Position => (first ? 'second' : 'first');

export function stepOf(session: TwoSession, now: { readonly isListening: boolean; readonly fitting: number }): Step {
  if (session.first && session.second) return 'done';
  if (!now.isListening) return 'start';
  if (!session.first) return 'first';
  return now.fitting === 0 ? 'move' : 'second';
}

/** First partial to expect at the second length under the force that the first told, Hz; undefined where it told none. */
export function expectedSecondHz(first: Take, forceN: number | undefined, secondM: number): number | undefined {
  if (forceN === undefined || !first.setup.spanLengthM) return undefined;
  const setup = { ...first.setup, spanLengthM: { ...first.setup.spanLengthM, value: secondM } };
  return expectedFrequencyHz(setup, { lowN: forceN, highN: forceN })?.lowHz;
}

/** Plucks that can be of the second position: near what is expected there, and nearer to it than to the first; all where nothing is expected. */
export function fittingPlucks(
  plucks: readonly HeardPluck[],
  { expectedHz, firstHz }: { readonly expectedHz?: number | undefined; readonly firstHz?: number | undefined },
): readonly HeardPluck[] {
  if (expectedHz === undefined) return plucks;
  const away = (hz: number, from: number) => Math.abs(Math.log(hz / from));
  return plucks.filter(({ sound: { frequencyHz } }) => {
    const off = away(frequencyHz.value, expectedHz);
    return off < NEAR_EXPECTED && (firstHz === undefined || off < away(frequencyHz.value, firstHz));
  });
}

/** Undefined until both are heard. */
export const outcomeOf = ({ first, second }: TwoSession): TwoPositions | undefined =>
  first && second ? twoPositions([first, second]) : undefined;
