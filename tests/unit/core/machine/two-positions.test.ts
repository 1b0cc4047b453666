import { describe, expect, it } from 'vitest';
import { twoPositions } from '../../../../src/core/machine/two-positions.ts';
import { createRandom } from '../../../../src/core/math/random.ts';
import { drawTwoTakes } from '../../../support/two-takes.ts';

const SPANS_M = [0.15, 0.3] as const;
const draw = (seed: number, forceFactor = 1, spansM: readonly [number, number] = SPANS_M) =>
  drawTwoTakes(createRandom(seed, 3), { spansM, forceFactor });

describe('twoPositions', () => {
  const BELTS = 60;
  /** Bounds of a count that keeps a promise of 95 % of 60: 1 in 1000 fall below 51 (binomial). */
  const HOLD_AT_LEAST = 51;

  it('narrows the interval of the shorter span to about a half and holds the truth, over seeded belts', () => {
    const ratios: number[] = [];
    let holding = 0;
    for (let seed = 0; seed < BELTS; seed++) {
      const { takes, forceN } = draw(seed);
      const found = twoPositions(takes);
      if (found.kind !== 'combined') continue;
      const { low = 0, high = Number.POSITIVE_INFINITY } = found.alone[0].forceN!;
      ratios.push((found.forceN.high! - found.forceN.low!) / (high - low));
      if (found.forceN.low! <= forceN && forceN <= found.forceN.high!) holding++;
    }
    expect(ratios.length).toBeGreaterThan(50); // of 60, the others refused: a twentieth of the ratios lies outside its interval
    const median = ratios.toSorted((a, b) => a - b)[ratios.length >> 1]!;
    expect(median).toBeLessThanOrEqual(0.6);
    expect(holding).toBeGreaterThanOrEqual(HOLD_AT_LEAST - (BELTS - ratios.length));
  });

  it('refuses to combine where the force changed by 15 % between the positions', () => {
    const refused = [1.15, 0.85].map((factor) =>
      Array.from({ length: 30 }, (_, seed) => twoPositions(draw(seed, factor).takes).kind).filter((kind) => kind === 'not-one-force'),
    );
    expect(refused[0]!.length).toBeGreaterThanOrEqual(21);
    expect(refused[1]!.length).toBeGreaterThanOrEqual(21);
  });

  it('tells the ratio of the forces whichever way it says', () => {
    const changed = twoPositions(draw(4, 1.3).takes);
    expect(changed.kind).toBe('not-one-force');
    if (changed.kind !== 'not-one-force') return;
    expect(changed.ratio.low).toBeGreaterThan(1);
    expect(changed.ratio.low).toBeLessThan(1.3);
    expect(changed.ratio.high).toBeGreaterThan(1.2);
  });

  it('does not mind which position came first', () => {
    const { takes } = draw(7);
    const [one, other] = [twoPositions(takes), twoPositions([takes[1], takes[0]])];
    if (one.kind !== 'combined' || other.kind !== 'combined') throw new Error('refused');
    expect(other.forceN.value / one.forceN.value).toBeCloseTo(1, 3);
    expect(other.forceN.u95! / one.forceN.u95!).toBeCloseTo(1, 1);
    expect(other.ratio.value * one.ratio.value).toBeCloseTo(1, 2);
  });

  it('grades the combined interval, and holds it at doubtful where nobody weighed the belt', () => {
    const { takes } = draw(7);
    const unweighed = takes.map((take) => {
      const belt = take.setup.belt!;
      const { value } = belt.linearDensityKgPerM;
      const density = { value, standardUncertainty: 0.1 * value };
      return { ...take, setup: { ...take.setup, belt: { ...belt, linearDensityKgPerM: density, densityFrom: 'catalogue' as const } } };
    });
    const found = twoPositions(unweighed as unknown as Parameters<typeof twoPositions>[0]);
    if (found.kind !== 'combined') throw new Error('refused');
    expect(found.grade).toBe('doubtful');
    expect(found.reasons.map(({ id }) => id)).toContain('density-from-catalogue');
    // A density that is wrong moves both forces alike: the ratio knows nothing of it.
    const weighed = twoPositions(takes);
    expect('ratio' in weighed && weighed.ratio.low).toBeCloseTo('ratio' in found ? found.ratio.low : 0, 2);
  });

  it('needs two lengths that differ, and a force at each', () => {
    expect(twoPositions(draw(1, 1, [0.15, 0.16]).takes)).toEqual({ kind: 'not-two', why: 'lengths-alike' });
    const [first, second] = draw(1).takes;
    expect(twoPositions([{ ...first, sounds: [] }, second])).toEqual({ kind: 'not-two', why: 'no-force' });
  });
});
