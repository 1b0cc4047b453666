import { describe, expect, it } from 'vitest';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { frequencyRatio, nextToPluck, type PairPluck } from '../../../../src/core/machine/alternating-plucks.ts';
import { pairRatio } from '../../../../src/core/machine/pair-ratio.ts';
import { beltToMove, MOST_PLUCKS, pairTest } from '../../../../src/core/machine/pair-test.ts';
import type { HeardBelt } from '../../../../src/core/machine/shared-cells.ts';
import { createRandom, type Random } from '../../../../src/core/math/random.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';

const setup = (spanLengthM: number, change: Partial<NonNullable<SpanSetup['belt']>> = {}): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 },
  belt: {
    linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00078 },
    densityFrom: 'catalogue',
    bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
    ...change,
  },
  ends: UNKNOWN_ENDS,
});
const heard = (spanSetup: SpanSetup, frequencyHz: number): HeardBelt => ({
  span: knownSpan(spanSetup)!,
  frequencyHz,
  partials: [{ number: 1, frequencyHz, relativeU: 0.0005 }],
  sharedRelativeU: 0.003,
});

describe('ratio of two belts', () => {
  it('is the square of the frequencies for belts that do not resist bending', () => {
    const limp = setup(0.18, { bendingStiffnessNm2: { kind: 'known', value: { value: 0, standardUncertainty: 0 } } });
    const ratio = pairRatio({ belts: [heard(limp, 100), heard(limp, 90)], likeness: 'one-belt', soundRelativeU: 0 })!;
    expect(ratio.value).toBeCloseTo((100 / 90) ** 2, 6); // T = 4 μ L² f² for both (Rayleigh, The Theory of Sound, vol. I, ch. VI)
    // Each ruler error enters twice: √2 · 2 · 0.5/180
    expect(ratio.relativeU).toBeCloseTo((Math.SQRT2 * 2 * 0.5) / 180, 5);
  });

  it('takes the lengths into account, and says what unequal spans cost', () => {
    const equal = pairRatio({ belts: [heard(setup(0.15), 110), heard(setup(0.15), 110)], likeness: 'same-roll', soundRelativeU: 0.003 })!;
    const apart = pairRatio({ belts: [heard(setup(0.15), 110), heard(setup(0.1), 170)], likeness: 'same-roll', soundRelativeU: 0.003 })!;
    expect(equal.value).toBeCloseTo(1, 6);
    expect(equal.onEqualSpansRelativeU).toBeUndefined();
    expect(apart.relativeU).toBeGreaterThan(1.2 * apart.onEqualSpansRelativeU!);
    expect(apart.onEqualSpansRelativeU).toBeCloseTo(equal.relativeU, 2);
  });

  it('does not mind what density nobody weighed, and minds two rolls', () => {
    const belts = [heard(setup(0.18), 100), heard(setup(0.18), 99)] as const;
    const same = pairRatio({ belts, likeness: 'same-roll', soundRelativeU: 0.003 })!;
    const two = pairRatio({ belts, likeness: 'two-rolls', soundRelativeU: 0.003 })!;
    expect(same.relativeU).toBeLessThan(0.02); // either force: 10 % and more
    expect(two.relativeU).toBeGreaterThan(2 * same.relativeU);
    expect(same.unlikeRelativeU).toBeLessThan(same.relativeU);
  });

  it('holds the true ratio in 95 % of its intervals', () => {
    // Truths are drawn from the beam and from what the belts are told to share; the count is binomial: 95 % of 160 is 152 ± 2.8, four of these below it
    const random = createRandom(11);
    let held = 0;
    const count = 160;
    for (let i = 0; i < count; i++) held += drawnPair(random);
    expect(held).toBeGreaterThanOrEqual(141);
  });
});

/** 1 where the interval of a drawn pair holds its true ratio. */
function drawnPair(random: Random): number {
  const [L1, L2] = [random.between(0.12, 0.3), random.between(0.12, 0.3)];
  const stiffness = 5e-5 * 6 ** random.uniform();
  const ends = [random.uniform(), random.uniform()] as const;
  const densityFactor = Math.exp(0.1 * random.gaussian());
  const truth = (L: number, forceN: number) =>
    partialHz({
      spanLengthM: L + 0.0005 * random.gaussian(),
      linearDensityKgPerM: 0.0078 * densityFactor * (1 + 0.005 * random.gaussian()),
      bendingStiffnessNm2: stiffness * (1 + 0.05 * random.gaussian()),
      fixity: [clamped(ends[0] + 0.1 * random.gaussian()), clamped(ends[1] + 0.1 * random.gaussian())],
      number: 1,
      forceN,
    }) *
    (1 + 0.003 * random.gaussian());
  const [T1, T2] = [random.between(5, 15), random.between(5, 15)];
  const belts = [heard(setup(L1), truth(L1, T1)), heard(setup(L2), truth(L2, T2))] as const;
  const ratio = pairRatio({ belts, likeness: 'same-roll', soundRelativeU: 0.003 * Math.SQRT2 })!;
  return Number(ratio.low <= T1 / T2 && T1 / T2 <= ratio.high);
}
const clamped = (φ: number): number => Math.min(1, Math.max(0, φ));

const pluck = (belt: 0 | 1, value: number): PairPluck => ({ belt, frequencyHz: { value, standardUncertainty: value * 0.0005 } });

describe('plucks that alternate', () => {
  it('take a steady drift out', () => {
    const row = Array.from({ length: 8 }, (_, k) => pluck(k % 2 === 0 ? 0 : 1, (k % 2 === 0 ? 101 : 100) * Math.exp(0.002 * k)));
    const plain = Math.log(101 / 100);
    const { lnRatio, driftRelative } = frequencyRatio(row)!;
    expect(Math.abs(lnRatio - plain)).toBeLessThan(0.0012); // the plain means differ from it by 0.002
    expect(driftRelative).toBeGreaterThan(0.001);
  });

  it('ask for the other belt each time', () => {
    expect([nextToPluck([]), nextToPluck([pluck(0, 100)]), nextToPluck([pluck(0, 100), pluck(1, 100)])]).toEqual([0, 1, 0]);
    expect(frequencyRatio([pluck(0, 100), pluck(0, 100)])).toBeUndefined();
  });
});

describe('a match tested after each pluck', () => {
  const spanSetup = setup(0.18);
  const row = (random: Random, ratio: number) => {
    const plucks: PairPluck[] = [];
    for (;;) {
      const test = pairTest({
        plucks,
        belts: plucks.length < 2 ? undefined : [heard(spanSetup, 100), heard(spanSetup, 100 / Math.sqrt(ratio))],
        likeness: 'same-roll',
        toleranceRelative: 0.05,
      });
      if (test.verdict !== 'more') return { ...test, count: plucks.length };
      plucks.push(pluck(test.next, (test.next === 0 ? 100 : 100 / Math.sqrt(ratio)) * (1 + 0.004 * random.gaussian())));
    }
  };

  it('stops early where it is clear, and is seldom wrong', () => {
    const random = createRandom(3);
    const runs = Array.from({ length: 40 }, () => ({ like: row(random, 1), unlike: row(random, 1.15) }));
    expect(runs.filter(({ like }) => like.verdict === 'not-matched').length).toBeLessThanOrEqual(1);
    expect(runs.filter(({ unlike }) => unlike.verdict === 'matched')).toEqual([]);
    expect(runs.filter(({ like }) => like.verdict === 'matched').length).toBeGreaterThan(32);
    const mean = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0) / counts.length;
    expect(mean(runs.map(({ unlike }) => unlike.count))).toBeLessThan(4);
    expect(Math.max(...runs.map(({ like }) => like.count))).toBeLessThanOrEqual(MOST_PLUCKS);
  });

  it('does not ask for plucks that cannot help', () => {
    const verdict = pairTest({
      plucks: Array.from({ length: 8 }, (_, k) => pluck(k % 2 === 0 ? 0 : 1, k % 2 === 0 ? 100 : 99)),
      belts: [heard(spanSetup, 100), heard(spanSetup, 99)],
      likeness: 'two-rolls',
      toleranceRelative: 0.05,
    }).verdict;
    expect(verdict).toBe('cannot-tell');
  });
});

it('moves the belt that is further from the middle of the target', () => {
  const target = { lowN: 6, highN: 9 };
  expect([beltToMove([7.4, 8.8], target), beltToMove([6.1, 7.6], target), beltToMove([4, 12], target), beltToMove([5, 6])]).toEqual([
    1,
    0,
    undefined,
    0,
  ]);
});
