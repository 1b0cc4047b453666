import { describe, expect, it } from 'vitest';
import { type AdjustGroup, COUPLING, RESPONSE_PRIOR } from '../../../../../src/core/machine/adjust/adjusters.ts';
import { type Belief, beliefBefore, believedForceN, believedResponseN } from '../../../../../src/core/machine/adjust/belief.ts';
import { read, turned } from '../../../../../src/core/machine/adjust/learning.ts';
import { nextTurn } from '../../../../../src/core/machine/adjust/next-turn.ts';
import { standingOf } from '../../../../../src/core/machine/adjust/standing.ts';
import { adjusted, MOST_ADJUSTMENTS } from '../../../../bench/adjust.ts';
import { SimulatedMachine } from '../../../../support/simulated-machine.ts';

const pair = (change: Partial<AdjustGroup> = {}): AdjustGroup => ({
  targetForceN: { lowN: 6.5, highN: 8.5 },
  matchRelative: 0.05,
  belts: [
    { limitN: 26, adjuster: { kind: 'screw', modelResponseN: 3 } },
    { limitN: 26, adjuster: { kind: 'screw', modelResponseN: 3 } },
  ],
  coupling: COUPLING.crossed,
  commonRelativeU: 0.025,
  ...change,
});
const readAll = (belief: Belief, forcesN: readonly number[]): Belief =>
  forcesN.reduce((before, forceN, belt) => read(before, { belt, forceN, ownRelativeU: 0.008 }), belief);

it('draws the first response from a range even in its logarithm', () => {
  // x even in ln x from 0.3 to 3: mean 2.7/ln 10 = 1.17260, mean square (9 − 0.09)/(2 ln 10) = 1.93480 (calculus)
  expect(RESPONSE_PRIOR.mean).toBeCloseTo(1.1726, 4);
  expect(RESPONSE_PRIOR.sd).toBeCloseTo(Math.sqrt(1.9348 - 1.1726 ** 2), 3);
});

describe('learning', () => {
  it('takes a turn and its readings for the response, and the coupling with it', () => {
    let belief = readAll(beliefBefore(pair()), [4, 4]);
    const before = believedResponseN(belief, 0, 0).standardUncertainty;
    belief = readAll(turned(belief, { belt: 0, turns: 1 }), [6, 4.5]);
    // 2 N for a turn of which up to an eighth was play; 0.5 N on the other.
    expect(believedResponseN(belief, 0, 0).value).toBeCloseTo(2.1, 0);
    expect(believedResponseN(belief, 0, 1).value).toBeCloseTo(0.52, 1);
    expect(believedResponseN(belief, 0, 0).standardUncertainty).toBeLessThan(before / 5);
    expect(believedResponseN(belief, 1, 1).standardUncertainty).toBeCloseTo(before, 6);
  });

  it('learns nothing of the screw from a belt that hangs', () => {
    let belief = readAll(beliefBefore(pair()), [4, 4]);
    const before = believedResponseN(belief, 0, 0).value;
    belief = read(turned(belief, { belt: 0, turns: -2 }), { belt: 0, forceN: 0.2, ownRelativeU: 0.008 });
    expect(believedForceN(belief, 0).value).toBeCloseTo(0.2);
    expect(believedResponseN(belief, 0, 0).value).toBeCloseTo(before, 6);
  });
});

describe('advice', () => {
  it('tightens a slack belt in eighths and loosens a tight one first', () => {
    expect(nextTurn(readAll(beliefBefore(pair()), [4, 7.5]), [0, 1])).toMatchObject({ kind: 'turn', belt: 0 });
    const both = nextTurn(readAll(beliefBefore(pair()), [4, 12]), [0, 1]);
    expect(both).toMatchObject({ kind: 'turn', belt: 1 });
    expect(both!.kind === 'turn' && both!.turns).toBeLessThan(0);
  });

  it('uses eighths where they are fine enough, finer steps where they are not', () => {
    const turnsAt = (modelResponseN: number): number => {
      const group = pair({ belts: [{ adjuster: { kind: 'screw', modelResponseN } }], matchRelative: undefined });
      const advice = nextTurn(readAll(beliefBefore(group), [4]), [0]);
      return advice?.kind === 'turn' ? advice.turns : 0;
    };
    expect((turnsAt(1) * 8) % 1).toBe(0);
    expect(turnsAt(1)).toBeGreaterThan(1);
    expect((turnsAt(11) * 32) % 1).toBe(0);
    expect(turnsAt(11)).toBeLessThan(1 / 2);
  });

  it('never asks for a turn that could pass the limit', () => {
    const limited = pair({ belts: pair().belts.map(({ adjuster }) => ({ limitN: 9, adjuster })) });
    const free = nextTurn(readAll(beliefBefore(pair()), [3, 7.5]), [0]);
    const held = nextTurn(readAll(beliefBefore(limited), [3, 7.5]), [0]);
    expect(free?.kind === 'turn' && held?.kind === 'turn' && held.turns < free.turns && held.turns > 0).toBe(true);
    // Three times the model's response and a tenth more is the most that is feared.
    expect(3 + 3.3 * 3 * (held as { turns: number }).turns).toBeLessThan(9);
    expect(nextTurn(readAll(beliefBefore(limited), [6, 8.8]), [0])).toBeUndefined();
  });

  it('adds the play where the way changes', () => {
    let belief = readAll(beliefBefore(pair()), [4, 7.5]);
    belief = readAll(turned(belief, { belt: 0, turns: 1.5 }), [9.5, 7.5]);
    const back = nextTurn(belief, [0]);
    const response = believedResponseN(belief, 0, 0).value;
    expect(back?.kind === 'turn' && -back.turns).toBeGreaterThan((9.5 - 7.5) / response);
  });

  it('tells only the way of a spring', () => {
    const group = pair({ belts: [{ adjuster: { kind: 'spring' } }, ...pair().belts.slice(1)], coupling: COUPLING.apart });
    expect(nextTurn(readAll(beliefBefore(group), [4, 7.5]), [0])).toEqual({ kind: 'way', belt: 0, way: 1 });
    const after = turned(readAll(beliefBefore(group), [4, 7.5]), { belt: 0, turns: 1 });
    expect(believedForceN(after, 0).standardUncertainty).toBeGreaterThan(5);
    expect(believedForceN(after, 1).standardUncertainty).toBeLessThan(0.1);
  });

  it('moves a slide in millimetres that a person can set', () => {
    const group = pair({ belts: [{ adjuster: { kind: 'slide', modelResponseN: 1 } }], matchRelative: undefined });
    const advice = nextTurn(readAll(beliefBefore(group), [3]), [0]);
    expect(advice?.kind === 'turn' && Math.abs((advice.turns * 20) % 1)).toBeCloseTo(0, 9);
  });
});

describe('standing', () => {
  it('is done only when target and match hold together', () => {
    expect(standingOf(readAll(beliefBefore(pair()), [7.5, 7.5])).done).toBe(true);
    const apart = standingOf(readAll(beliefBefore(pair()), [7.2, 7.8]));
    expect(apart.belts.map(({ verdict }) => verdict)).toEqual(['met', 'met']);
    expect([apart.match?.verdict, apart.done]).toEqual(['not-matched', false]);
    expect(standingOf(readAll(beliefBefore(pair()), [5, 5])).belts.map(({ verdict }) => verdict)).toEqual(['low', 'low']);
  });

  it('knows the match better than either force, as the readings share their error', () => {
    const { belts, match } = standingOf(readAll(beliefBefore(pair()), [7.5, 7.6]));
    // 0.8 % each: √2 × 0.8 % of the ratio; 2.5 % and 0.8 % of each force
    expect(match!.difference.standardUncertainty).toBeCloseTo(Math.SQRT2 * 0.008, 3);
    expect(belts[0]!.forceN.standardUncertainty / 7.5).toBeCloseTo(Math.hypot(0.025, 0.008), 3);
  });

  it('takes the worst two of a group', () => {
    const four = pair({ belts: [0, 1, 2, 3].map(() => pair().belts[0]!), coupling: COUPLING.apart });
    const { match } = standingOf(readAll(beliefBefore(four), [7.5, 7.4, 7.9, 7.5]));
    expect(match!.pair).toEqual([1, 2]);
  });
});

it('brings at least 19 in 20 simulated machines into target and match within four adjustments, and passes no limit', () => {
  const results = Array.from({ length: 200 }, (_, i) => adjusted(new SimulatedMachine(7, i)));
  expect(results.filter(({ limitPassed }) => limitPassed)).toEqual([]);
  expect(results.every(({ adjustments }) => adjustments <= MOST_ADJUSTMENTS)).toBe(true);
  expect(results.filter(({ right }) => right).length).toBeGreaterThanOrEqual(190);
  // Who is told that all is done may rely on it.
  const told = results.filter(({ saidDone }) => saidDone);
  expect(told.filter(({ right }) => right).length / told.length).toBeGreaterThan(0.95);
});
