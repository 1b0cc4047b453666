import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../src/core/math/random.ts';
import {
  expectedSecondHz,
  fittingPlucks,
  nextPosition,
  outcomeOf,
  stepOf,
  type TwoSession,
} from '../../../../src/ui/screens/two/two-session.ts';
import type { HeardPluck } from '../../../../src/ui/state/take.ts';
import { drawTwoTakes } from '../../../support/two-takes.ts';

const { takes, forceN } = drawTwoTakes(createRandom(7, 3), { spansM: [0.15, 0.3], forceFactor: 1 });
const [first, second] = takes;
const plucksOf = (take: typeof first): readonly HeardPluck[] => take.sounds.map((sound) => ({ sound }) as HeardPluck);

describe('a session at two positions', () => {
  it('leads from the first position over the move to the second', () => {
    const steps = (session: TwoSession, isListening: boolean, fitting: number) => stepOf(session, { isListening, fitting });
    expect(steps({}, false, 0)).toBe('start');
    expect(steps({}, true, 2)).toBe('first');
    expect(steps({ first }, true, 0)).toBe('move');
    expect(steps({ first }, true, 1)).toBe('second');
    expect(steps({ first, second }, false, 0)).toBe('done');
    expect([nextPosition({}), nextPosition({ first })]).toEqual(['first', 'second']);
  });

  it('takes at the second position only what can be of it', () => {
    const expectedHz = expectedSecondHz(first, forceN, 0.3)!;
    expect(Math.abs(Math.log(expectedHz / second.sounds[0]!.frequencyHz.value))).toBeLessThan(0.2);
    const firstHz = first.sounds[0]!.frequencyHz.value;
    expect(fittingPlucks(plucksOf(second), { expectedHz, firstHz })).toHaveLength(3);
    expect(fittingPlucks(plucksOf(first), { expectedHz, firstHz })).toHaveLength(0);
    // A second position so near that the first would pass as well, were it not nearer to itself.
    expect(fittingPlucks(plucksOf(first), { expectedHz: 0.8 * firstHz, firstHz })).toHaveLength(0);
    expect(fittingPlucks(plucksOf(first), {})).toHaveLength(3);
    expect(expectedSecondHz(first, undefined, 0.3)).toBeUndefined();
  });

  it('has an outcome once both are heard', () => {
    expect(outcomeOf({ first })).toBeUndefined();
    expect(outcomeOf({ first, second })?.kind).toBe('combined');
  });
});
