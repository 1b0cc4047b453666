import { describe, expect, it } from 'vitest';
import type { AdjustPlan } from '../../../../../src/core/machine/adjust/plan.ts';
import { type Ask, sessionOf, withPluck } from '../../../../../src/core/machine/adjust/session.ts';
import { lastPluckGivenTo, type Step, withoutLastStep } from '../../../../../src/core/machine/adjust/steps.ts';
import type { SpanSetup } from '../../../../../src/core/setup.ts';
import { partialHz } from '../../../../../src/core/vibration/beam.ts';
import { pluckSound } from '../../../../support/heard-plucks.ts';
import { SimulatedMachine } from '../../../../support/simulated-machine.ts';

const BELT = { linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.2, 0.2] } as const;
const setup = (spanLengthM = 0.18): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 },
  belt: {
    linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.0001 },
    densityFrom: 'weighed',
    bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
  },
  ends: [
    { kind: 'between', low: 0, high: 0.5 },
    { kind: 'between', low: 0, high: 0.3 },
  ],
});
const plan = (change: Partial<AdjustPlan> = {}): AdjustPlan => ({
  belts: [0, 1].map(() => ({ setup: setup(), limitN: 26, adjuster: { kind: 'screw', modelResponseN: 3 } })),
  targetForceN: { lowN: 6, highN: 9 },
  matchRelative: 0.05,
  crossed: true,
  likeness: 'same-roll',
  source: { sampleRateHz: 48_000 },
  ...change,
});
const heard = (forceN: number, spanLengthM = 0.18) => pluckSound(partialHz({ ...BELT, spanLengthM, forceN, number: 1 }));
const plucked = (one: AdjustPlan, forcesN: readonly number[], steps: readonly Step[] = []): readonly Step[] =>
  forcesN.reduce<readonly Step[]>((before, forceN) => withPluck(one, before, heard(forceN)), steps);

describe('first readings', () => {
  it('asks for each belt in turn, three plucks each, and then for a move', () => {
    expect(sessionOf(plan(), []).ask).toEqual({ kind: 'pluck', belt: 0, have: 0, need: 3, why: 'first' });
    const three = plucked(plan(), [4, 4, 4]);
    expect(sessionOf(plan(), three).ask).toEqual({ kind: 'pluck', belt: 1, have: 0, need: 3, why: 'first' });
    const session = sessionOf(plan(), plucked(plan(), [7.5, 7.5, 7.5], three));
    expect(session.ask).toMatchObject({ kind: 'move', advice: { kind: 'turn', belt: 0 } });
    // The forces are those of the beam that made the sounds, within what is known of the span.
    const [a, b] = session.standing!.belts.map(({ forceN }) => forceN);
    expect(Math.abs(a!.value - 4)).toBeLessThan(2 * a!.standardUncertainty);
    expect(Math.abs(b!.value - 7.5)).toBeLessThan(2 * b!.standardUncertainty);
    // The ratio is free of what both share.
    expect(Math.abs(session.standing!.match!.difference.value - (4 / 7.5 - 1))).toBeLessThan(0.01);
    expect(session.path.length).toBe(1);
  });

  it('is done at once where target and match hold', () => {
    expect(sessionOf(plan(), plucked(plan(), [7.5, 7.5, 7.5, 7.52, 7.52, 7.52])).ask).toEqual({ kind: 'done' });
  });
});

describe('a mix-up and a step back', () => {
  it('gives the last pluck to the other belt', () => {
    const steps = plucked(plan(), [4, 4, 6]);
    const mended = lastPluckGivenTo(steps, 1);
    const { ask, latest } = sessionOf(plan(), mended);
    expect([ask, latest.map((reading) => reading?.sounds.length)]).toEqual([
      { kind: 'pluck', belt: 0, have: 2, need: 3, why: 'first' },
      [2, 1],
    ]);
    expect(lastPluckGivenTo(mended, 1)).toBe(mended);
  });

  it('takes back a pluck while a reading goes on, and a reading with its move after', () => {
    const two = plucked(plan(), [4, 4]);
    expect(withoutLastStep(two, true)).toEqual(plucked(plan(), [4]));
    const read = plucked(plan(), [4, 4, 4, 7.5, 7.5, 7.5]);
    const moved = plucked(plan(), [6], read);
    expect(moved.map(({ kind }) => kind)).toEqual(['reading', 'reading', 'move', 'reading']);
    expect(withoutLastStep(moved, false)).toEqual(read);
    expect(sessionOf(plan(), withoutLastStep(moved, false)).ask).toEqual(sessionOf(plan(), read).ask);
    expect(withoutLastStep([], false)).toEqual([]);
  });
});

describe('after a move', () => {
  it('asks for the moved belt once, as it repeats well, and for its neighbour where the gantry couples them', () => {
    const read = plucked(plan(), [4, 4, 4, 7.5, 7.5, 7.5]);
    const moved = sessionOf(plan(), plucked(plan(), [5.4], read));
    expect(moved.ask).toMatchObject({ kind: 'pluck', belt: 1, why: 'neighbour' });
    const apart = plan({ crossed: false });
    const alone = sessionOf(apart, plucked(apart, [5.4], plucked(apart, [4, 4, 4, 7.5, 7.5, 7.5])));
    expect(alone.ask).toMatchObject({ kind: 'move', advice: { belt: 0 } });
  });

  it('asks for more plucks where a single one lies far from what was expected', () => {
    const read = plucked(plan(), [4, 4, 4, 7.5, 7.5, 7.5]);
    expect(sessionOf(plan(), plucked(plan(), [17], read)).ask).toEqual({ kind: 'pluck', belt: 0, have: 1, need: 3, why: 'moved' });
  });

  it('says when no move helps without passing a limit', () => {
    const limited = plan({ belts: plan().belts.map((belt) => ({ ...belt, limitN: 5 })) });
    expect(sessionOf(limited, plucked(limited, [4.9, 4.9, 4.9, 4.9, 4.9, 4.9])).ask).toEqual({ kind: 'stuck', why: 'no-move' });
  });

  it('alternates where only the match is open, and gives up where the belts themselves leave it open', () => {
    const rolls = plan({ likeness: 'two-rolls' });
    let steps = plucked(rolls, [7.5, 7.5, 7.5, 7.5, 7.5, 7.5]);
    const asked: Ask[] = [];
    for (let i = 0; i < 10; i++) {
      const { ask } = sessionOf(rolls, steps);
      asked.push(ask);
      if (ask.kind !== 'pluck') break;
      steps = withPluck(rolls, steps, heard(7.5));
    }
    expect(asked.filter(({ kind }) => kind === 'pluck').map((ask) => (ask as { belt: number }).belt)).toEqual([0, 1, 0, 1, 0, 1]);
    expect(asked.at(-1)).toEqual({ kind: 'stuck', why: 'cannot-tell' });
  });
});

it('brings simulated machines into target and match by plucks alone', () => {
  let right = 0;
  const count = 12;
  for (let i = 0; i < count; i++) right += Number(ledHome(new SimulatedMachine(5, i)));
  expect(right).toBeGreaterThanOrEqual(count - 2);
});

/** Plucks what is asked for, turns what is asked for, until it is said to be done. */
function ledHome(machine: SimulatedMachine): boolean {
  const { targetN, limitN } = machine;
  const own = plan({
    belts: machine.modelResponseN.map((modelResponseN) => ({ setup: setup(), limitN, adjuster: { kind: 'screw', modelResponseN } })),
    targetForceN: { lowN: 0.88 * targetN, highN: 1.12 * targetN },
  });
  let steps: readonly Step[] = [];
  for (let acts = 0; acts < 80; acts++) {
    const { ask } = sessionOf(own, steps);
    if (ask.kind === 'move') {
      if (ask.advice.kind !== 'turn') return false;
      machine.turn(ask.advice.belt as 0 | 1, ask.advice.turns);
      steps = withPluck(own, steps, heard(Math.max(0.3, machine.read(ask.advice.belt as 0 | 1))));
    } else if (ask.kind === 'pluck') {
      steps = withPluck(own, steps, heard(Math.max(0.3, machine.read(ask.belt as 0 | 1))));
    } else return ask.kind === 'done' && machine.isRight;
  }
  return false;
}
