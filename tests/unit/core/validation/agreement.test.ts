/** The agreement report on takes whose differences are planted: figures by hand, and causes named by their mark and size, or left open. */

import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../src/core/math/random.ts';
import { agreementOf, wilson } from '../../../../src/core/validation/agreement.ts';
import type { KnownForceTake } from '../../../../src/core/validation/known-take.ts';

interface Planted {
  readonly spansM?: readonly number[];
  readonly forcesN?: readonly number[];
  /** ln(heard / known) by span and force. */
  readonly ratio: (spanLengthM: number, forceN: number) => number;
  readonly scatter?: number;
  readonly seed?: number;
}

function takes({ spansM = [0.12, 0.24], forcesN = [4, 10, 25], ratio, scatter = 0.003, seed = 1 }: Planted): readonly KnownForceTake[] {
  const random = createRandom(seed);
  return spansM.flatMap((spanLengthM) =>
    forcesN.map((known): KnownForceTake => {
      const value = known * Math.exp(ratio(spanLengthM, known) + scatter * random.gaussian());
      return {
        name: `${spanLengthM}-${known}`,
        knownForceN: { value: known, standardUncertainty: 0.002 * known },
        spanLengthM: { value: spanLengthM, standardUncertainty: 0.0003 },
        linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00005 },
        heard: {
          forceN: { value, low: 0.95 * value, high: 1.05 * value, u95: 0.05 * value },
          frequencyRelativeU: 0.0005,
          grade: 'trusted',
        },
      };
    }),
  );
}

const causeOf = (planted: Planted) => agreementOf(takes(planted)).cause!;

describe('figures', () => {
  it('are the mean, spread and limits of the differences', () => {
    const [one, two, three] = takes({
      spansM: [0.15],
      forcesN: [5, 10, 20],
      ratio: (_, force) => ({ 5: 0.01, 10: 0.02, 20: 0.03 })[force]!,
      scatter: 0,
    });
    const { bias, spread, limits, inside } = agreementOf([one!, two!, three!]);
    expect(bias!.value).toBeCloseTo(0.02, 12);
    expect(spread!).toBeCloseTo(0.01, 12);
    // Student's t for 95 % and 2 degrees of freedom is 4.303: GUM (JCGM 100:2008), table G.2.
    expect(bias!.u95).toBeCloseTo((4.303 * 0.01) / Math.sqrt(3), 5);
    expect(limits!.high).toBeCloseTo(0.02 + 1.96 * 0.01, 5);
    expect(inside).toMatchObject({ count: 3, of: 3 });
  });

  // Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3: 81 of 263 gives 0.2553 to 0.3662, 15 of 148 gives 0.0624 to 0.1605.
  it('give shares the published intervals', () => {
    for (const [count, of, low, high] of [
      [81, 263, 0.2553, 0.3662],
      [15, 148, 0.0624, 0.1605],
      [0, 20, 0, 0.1611],
    ] as const) {
      expect(Math.abs(wilson(count, of).low - low)).toBeLessThan(0.00005);
      expect(Math.abs(wilson(count, of).high - high)).toBeLessThan(0.00005);
    }
  });

  it('count a refusal as a refusal', () => {
    const [first, ...others] = takes({ ratio: () => 0 });
    const { refused, compared, inside } = agreementOf([{ ...first!, heard: undefined }, ...others]);
    expect(refused).toEqual([first!.name]);
    expect(compared.length).toBe(5);
    expect(inside.of).toBe(5);
  });

  it('find the weight outside an interval that is too narrow, but allow for the weight’s own doubt', () => {
    const [take] = takes({ ratio: () => Math.log(1.06), scatter: 0 });
    expect(agreementOf([take!]).inside.count).toBe(0);
    const unsure = { ...take!, knownForceN: { value: take!.knownForceN.value, standardUncertainty: 0.05 * take!.knownForceN.value } };
    expect(agreementOf([unsure]).inside.count).toBe(1);
  });

  it('say nothing of nothing', () => {
    expect(agreementOf([])).toMatchObject({ compared: [], inside: { count: 0, of: 0 } });
    expect(agreementOf([]).cause).toBeUndefined();
  });
});

describe('likely cause', () => {
  it('is the density where everything is off alike by more than weights are', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { likely } = causeOf({ ratio: () => Math.log(1.1), seed });
      expect(likely!.id).toBe('density');
      expect(Math.abs(likely!.size!.value - Math.log(1.1))).toBeLessThan(1.5 * likely!.size!.u95);
    }
  });

  it('is the span where short ones are off more', () => {
    const { likely } = causeOf({ ratio: (span) => 2 * Math.log(1 + 0.004 / span) });
    expect(likely!.id).toBe('span-length');
    expect(likely!.size!.value).toBeCloseTo(0.004, 3);
  });

  it('is the ends where short and slack ones are off more', () => {
    expect(causeOf({ ratio: (span, force) => 0.016 / (span * Math.sqrt(force)) }).likely!.id).toBe('ends');
  });

  it('is a forgotten hook where small weights are off more, whatever the span', () => {
    const { likely } = causeOf({ ratio: (_, force) => Math.log(1 + 0.4 / force) });
    expect(likely!.id).toBe('forgotten-weight');
    expect(likely!.size!.value).toBeGreaterThan(0.3);
  });

  it('is none where sound and weights agree', () => {
    const named = Array.from({ length: 40 }, (_, index) => causeOf({ ratio: () => 0, seed: 100 + index })).filter(
      ({ likely }) => likely && likely.id !== 'none',
    );
    expect(named.length).toBeLessThan(5);
  });

  it('stays open on one span, and asks for another', () => {
    const { likely, next, causes } = causeOf({ spansM: [0.18], ratio: () => 0.045 });
    expect(likely).toBeUndefined();
    expect(next).toBe('another-span');
    expect(
      causes
        .slice(0, 2)
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['density', 'span-length']);
  });

  it('stays open under one force, and asks for another', () => {
    const { likely, next } = causeOf({ forcesN: [8], ratio: () => 0.03, spansM: [0.1, 0.2, 0.3] });
    expect(likely).toBeUndefined();
    expect(next).toBe('another-force');
  });
});
