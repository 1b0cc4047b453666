import { describe, expect, test } from 'vitest';
import { forceFromFrequency, forceNodes, shareBelow, shareWithoutForce } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { forceFromPartial } from '../../../../src/core/vibration/beam.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const HEARD = { frequencyHz: 122.5, relativeU: 0.005 };

describe('the interval', () => {
  test('of a good span: about 12 and 8 % on 150 mm at 10 N, the low side longer', () => {
    const force = forceFromFrequency(HEARD, knownSpan(spanOf(0.15))!)!;
    expect(force.value).toBeCloseTo(10, 1);
    expect((force.value - force.low!) / force.value).toBeCloseTo(0.12, 1);
    expect((force.high! - force.value) / force.value).toBeCloseTo(0.08, 1);
    expect(force.u95).toBe(force.value - force.low!);
  });

  test('of a string whose force is known but for the density is the density’s', () => {
    const bendingStiffnessNm2 = { kind: 'known', value: { value: 0, standardUncertainty: 0 } } as const;
    const span = { ...knownSpan(spanOf(0.15, { ...WEIGHED_BELT, bendingStiffnessNm2 }))!, spanLengthRelativeU: 0 };
    const force = forceFromFrequency({ frequencyHz: 110, relativeU: 0 }, span)!;
    const string = 4 * 0.0078 * (0.15 * 110) ** 2;
    const k = 1.959964; // normal distribution, 97.5 %
    expect(force.value / string).toBeCloseTo(1, 5);
    expect(force.high! / string).toBeCloseTo(Math.exp(k * span.linearDensityRelativeU), 4);
    expect(force.low! / string).toBeCloseTo(Math.exp(-k * span.linearDensityRelativeU), 4);
  });

  test('grows with every doubt', () => {
    const half = (setup: ReturnType<typeof spanOf>, relativeU = 0.005) =>
      forceFromFrequency({ frequencyHz: 122.5, relativeU }, knownSpan(setup)!)!.u95!;
    const base = half(spanOf(0.15));
    expect(half(spanOf(0.15), 0.02)).toBeGreaterThan(base);
    expect(half(spanOf(0.15, WEIGHED_BELT, { spanLengthM: { value: 0.15, standardUncertainty: 0.003 } }))).toBeGreaterThan(base);
    const vague = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'range', low: 2e-5, high: 9e-4 } } as const;
    expect(half(spanOf(0.15, vague))).toBeGreaterThan(base);
    const clip = { kind: 'between', low: 0.7, high: 1 } as const;
    const wrapped = { kind: 'between', low: 0, high: 0.5 } as const;
    expect(half(spanOf(0.15, WEIGHED_BELT, { ends: [clip, wrapped] }))).toBeLessThan(base);
  });
});

describe('a slack or short span', () => {
  const span = knownSpan(spanOf(0.045))!;

  test('loses its low bound where more than 2.5 % of stiffness and ends allow no force', () => {
    const heard = { frequencyHz: 250, relativeU: 0.005 };
    const force = forceFromFrequency(heard, span)!;
    expect(shareWithoutForce(heard, span, forceNodes(span))).toBeGreaterThan(0.025);
    expect(force.low).toBeUndefined();
    expect(force.u95).toBeUndefined();
    expect(force.high).toBeGreaterThan(force.value);
  });

  test('so low that the stiffness alone rings higher has no force at all', () => {
    expect(forceFromFrequency({ frequencyHz: 20, relativeU: 0.005 }, span)).toBeUndefined();
  });

  test('the share below a force comes down to the share without one', () => {
    for (const frequencyHz of [100, 150, 250, 400]) {
      const heard = { frequencyHz, relativeU: 0.005 };
      const nodes = forceNodes(span);
      // A hundredth: ends that are all but clamped turn hinged only where the force is far below what the table holds.
      expect(Math.abs(shareBelow(1e-9, heard, span, nodes) - shareWithoutForce(heard, span, nodes))).toBeLessThan(0.01);
    }
  });
});

/** The same question by drawing (JCGM 101:2008): every input from its distribution, the beam solved for each draw. */
describe('against random draws', () => {
  test.each([
    { spanLengthM: 0.15, frequencyHz: 122.5 },
    { spanLengthM: 0.06, frequencyHz: 330 },
    { spanLengthM: 0.06, frequencyHz: 240 },
  ])('$spanLengthM m at $frequencyHz Hz', ({ spanLengthM, frequencyHz }) => {
    const heard = { frequencyHz, relativeU: 0.005 };
    const span = knownSpan(spanOf(spanLengthM))!;
    const force = forceFromFrequency(heard, span)!;
    const random = createRandom(11);
    const DRAWS = 20_000;
    const fixity = () => [0, 1, random.uniform()][Math.floor(3 * random.uniform())]!;
    const draws = Array.from({ length: DRAWS }, () => {
      const tail = random.uniform();
      const [low, high] = tail < 0.025 ? [5e-5 / 3, 5e-5] : tail > 0.975 ? [3e-4, 9e-4] : [5e-5, 3e-4];
      const one = fixity();
      const drawn = forceFromPartial({
        spanLengthM: spanLengthM * Math.exp(span.spanLengthRelativeU * random.gaussian()),
        linearDensityKgPerM: span.linearDensityKgPerM * Math.exp(span.linearDensityRelativeU * random.gaussian()),
        bendingStiffnessNm2: low * (high / low) ** random.uniform(),
        fixity: [one, random.uniform() < 0.5 ? one : fixity()],
        number: 1,
        partialHz: frequencyHz * Math.exp(heard.relativeU * random.gaussian()),
      });
      return drawn ?? 0;
    });
    // Below each bound as many draws as it says, within three standard deviations of the count and a little for the cells.
    for (const [bound, share] of [
      [force.low, 0.025],
      [force.value, 0.5],
      [force.high, 0.975],
    ] as const) {
      const below = draws.filter((drawn) => drawn < bound!).length / DRAWS;
      expect(Math.abs(below - share)).toBeLessThan(3 * Math.sqrt((share * (1 - share)) / DRAWS) + 0.003);
    }
  });
});
