import { describe, expect, test } from 'vitest';
import { combinedPlucks, REPEATABILITY_PRIOR } from '../../../../src/core/frequency/combine.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';

const plucks = (...values: readonly number[]) => values.map((value) => ({ value, standardUncertainty: 0.001 * value }));

/** Correlation of what plucks of one take are wrong by. */
const ALIKE = 0.3;

describe('one pluck', () => {
  test('keeps its own uncertainty for the frequency, and has the prior for how plucks repeat', () => {
    const combined = combinedPlucks([{ value: 120, standardUncertainty: 0.12 }]);
    expect(combined.frequencyHz.value).toBeCloseTo(120, 12);
    expect(combined.frequencyHz.standardUncertainty).toBeCloseTo(0.12, 12);
    expect(combined.frequencyHz.u95).toBeCloseTo(0.24, 12);
    expect(combined.repeatabilityRelative).toBeCloseTo(REPEATABILITY_PRIOR.relative, 12);
    expect(combined.differ).toBe(false);
  });
});

describe('plucks that agree', () => {
  test('are surer together, and repeat the surer the more there are', () => {
    const combined = combinedPlucks(plucks(120, 120.1, 119.95, 120.05));
    expect(combined.used).toEqual([true, true, true, true]);
    expect(combined.frequencyHz.u95 / 120).toBeCloseTo(2 * 0.001 * Math.sqrt((1 - ALIKE) / 4 + ALIKE), 5);
    // Four degrees of freedom of 0.5 % and three of next to nothing, over four plucks.
    expect(combined.repeatabilityRelative).toBeCloseTo(Math.sqrt((4 * 0.005 ** 2) / 7 / 4), 6);
  });

  test('the better known one counts more', () => {
    const combined = combinedPlucks([
      { value: 120, standardUncertainty: 0.1 },
      { value: 123, standardUncertainty: 3 },
    ]);
    expect(combined.frequencyHz.value).toBeLessThan(120.4);
    expect(combined.differ).toBe(false);
  });
});

describe('plucks that differ', () => {
  test('widen the frequency by their scatter', () => {
    const combined = combinedPlucks(plucks(118, 120, 122));
    expect(combined.differ).toBe(true);
    expect(combined.used).toEqual([true, true, true]);
    expect(combined.frequencyHz.u95 / 120).toBeGreaterThan(0.01);
  });

  test('one clearly apart from two is left out and named by how far it lies', () => {
    const combined = combinedPlucks(plucks(120, 127.2, 120.1));
    expect(combined.used).toEqual([true, false, true]);
    expect(combined.differenceRelative[1]).toBeCloseTo(0.0595, 3);
    expect(combined.frequencyHz.value).toBeCloseTo(120.05, 3);
  });

  test('one a little apart stays', () => {
    expect(combinedPlucks(plucks(120, 121.5, 120.1)).used).toEqual([true, true, true]);
  });

  test('one apart but hardly known stays', () => {
    const [one, two] = plucks(120, 120.1);
    expect(combinedPlucks([one!, two!, { value: 126, standardUncertainty: 3 }]).used).toEqual([true, true, true]);
  });

  test('two of five can be left out, an octave up and elsewhere', () => {
    expect(combinedPlucks(plucks(120, 240, 120.2, 131, 119.9)).used).toEqual([true, false, true, false, true]);
  });

  test('never half of them: two against two all stay', () => {
    expect(combinedPlucks(plucks(120, 120.1, 131, 131.2)).used).toEqual([true, true, true, true]);
    expect(combinedPlucks(plucks(120, 240)).used).toEqual([true, true]);
  });
});

test('no pluck at all is a caller’s mistake', () => {
  expect(() => combinedPlucks([])).toThrow(RangeError);
});

test('the order of the plucks makes no difference', () => {
  const values = plucks(120, 121, 119.6, 128, 120.4);
  const forward = combinedPlucks(values);
  const backward = combinedPlucks(values.toReversed());
  expect(backward.frequencyHz.value).toBeCloseTo(forward.frequencyHz.value, 10);
  expect(backward.used.toReversed()).toEqual(forward.used);
});

describe('coverage over seeded takes: twice u holds the truth in about 95 %', () => {
  const TRIALS = 3000;
  /** Share of takes whose interval holds 100 Hz, each pluck off by its own uncertainty, in part alike, and by `scatter` from pluck to pluck. */
  function coverage(count: number, scatter: number): number {
    const random = createRandom(7, count);
    let held = 0;
    for (let trial = 0; trial < TRIALS; trial++) {
      const shared = random.gaussian();
      const take = Array.from({ length: count }, () => {
        const relativeU = random.between(0.0005, 0.003);
        const own = relativeU * (Math.sqrt(ALIKE) * shared + Math.sqrt(1 - ALIKE) * random.gaussian());
        return { value: 100 * Math.exp(own + scatter * random.gaussian()), standardUncertainty: 100 * relativeU };
      });
      const { value, u95 } = combinedPlucks(take).frequencyHz;
      if (Math.abs(value - 100) <= u95) held++;
    }
    return held / TRIALS;
  }

  // Three standard deviations of the count itself: ± 1.2 points.
  test.each([1, 2, 3, 6])('%i plucks that only their own noise parts', (count) => {
    expect(coverage(count, 0)).toBeGreaterThan(0.938);
    expect(coverage(count, 0)).toBeLessThan(0.985);
  });

  test.each([3, 6])('%i plucks that scatter by 0.5 %', (count) => {
    expect(coverage(count, 0.005)).toBeGreaterThan(0.895); // three plucks hardly know their own scatter
  });
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, 0, -3])('%d is no frequency, and is said to be none', (value) => {
  expect(() =>
    combinedPlucks([
      { value: 121, standardUncertainty: 0.1 },
      { value, standardUncertainty: 0.1 },
    ]),
  ).toThrow(RangeError);
});
