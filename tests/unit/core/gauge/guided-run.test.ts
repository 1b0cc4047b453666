/** The guided run: what it asks for, in which order, and that it can be gone on with. */

import { describe, expect, it } from 'vitest';
import { guidedSteps, proposedMassesKg, stepsLeft } from '../../../../src/core/gauge/guided-run.ts';

const weights = [0.4, 0.6, 0.8, 1, 1.2, 1.4].map((massKg, k) => ({ id: `w${k}`, massKg }));

describe('guided run', () => {
  const steps = guidedSteps({ weights, rig: 'straight', seed: 7 });

  it('puts the gauge on anew under each load three times, then goes up and down once', () => {
    expect(steps).toHaveLength(30);
    const inserted = steps.filter(({ how }) => how === 'inserted');
    for (const { id } of weights) expect(inserted.filter(({ weightId }) => weightId === id)).toHaveLength(3);
    const leftOn = steps.slice(18).map(({ weightId, direction }) => `${weightId} ${direction}`);
    expect(leftOn).toEqual([...weights.map(({ id }) => `${id} up`), ...[...weights].reverse().map(({ id }) => `${id} down`)]);
    expect(steps.filter(({ begins }) => begins).map(({ begins }) => begins)).toEqual(['same-place', 'same-place', 'moved', 'left-on']);
  });

  it('takes the loads in an order that no drift follows, the same for the same seed', () => {
    const order = (seed: number) =>
      guidedSteps({ weights, rig: 'straight', seed })
        .slice(0, 18)
        .map(({ weightId }) => weightId)
        .join(' ');
    expect(order(7)).toBe(order(7));
    expect(new Set([1, 2, 3, 4, 5].map(order)).size).toBe(5);
    const rising = weights.map(({ id }) => id).join(' ');
    expect(
      [0, 6, 12].map((from) =>
        steps
          .slice(from, from + 6)
          .map(({ weightId }) => weightId)
          .join(' '),
      ),
    ).not.toContain(rising);
  });

  it('over a roller, ends with one load from either side; a wire hangs in no row', () => {
    const roller = guidedSteps({ weights: [...weights, { id: 'wire', massKg: 0, hangs: false }], rig: 'roller', seed: 7 });
    expect(roller.slice(-2)).toMatchObject([
      { weightId: 'w3', how: 'eased', direction: 'up', begins: 'eased' },
      { weightId: 'w3', how: 'eased', direction: 'down' },
    ]);
    expect(roller.filter(({ weightId }) => weightId === 'wire').map(({ how }) => how)).toEqual(['inserted', 'inserted', 'inserted']);
  });

  it('goes on where it stood, whatever was read out of turn', () => {
    const noted = [steps[0]!, steps[5]!, steps[20]!];
    const left = stepsLeft(steps, noted);
    expect(left).toHaveLength(27);
    expect(left[0]).toEqual(steps[1]);
    expect(left).not.toContain(steps[20]);
    expect(stepsLeft(steps, steps)).toEqual([]);
  });

  it('proposes six loads over the target and beyond it, none above what may hang', () => {
    const masses = proposedMassesKg({ lowN: 6, highN: 9 }, 9.81);
    expect(masses).toHaveLength(6);
    expect(masses[0]! * 9.81).toBeLessThan(6);
    expect(masses.at(-1)! * 9.81).toBeGreaterThan(9);
    expect(proposedMassesKg({ lowN: 6, highN: 9 }, 9.81, 10).at(-1)! * 9.81).toBeLessThan(10.3);
  });
});
