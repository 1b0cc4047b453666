import { describe, expect, test } from 'vitest';
import { budgetSum, combinedForceUN, forceBudget, widenedForFew } from '../../../../src/core/force/budget.ts';
import { type KnownSpan, knownSpan } from '../../../../src/core/force/known-span.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { forceFromPartial, partialHz } from '../../../../src/core/vibration/beam.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const DOUBT = { withinRelative: 0.001, repeatabilityRelative: 0.003, amplitudeRelative: 0.0005 };

test('shares sum to 1 and follow from the standard uncertainties', () => {
  const lines = forceBudget({ forceN: 10, span: knownSpan(spanOf(0.15))!, doubt: DOUBT });
  const combined = combinedForceUN(lines);
  expect(lines.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 14);
  for (const { share, forceUN } of lines) expect(share).toBeCloseTo((forceUN / combined) ** 2, 14);
});

test('each input has its line, in an order that never changes', () => {
  const inputs = (forceN: number) => forceBudget({ forceN, span: knownSpan(spanOf(0.05))!, doubt: DOUBT }).map(({ input }) => input);
  expect(inputs(2)).toEqual([
    'span length',
    'linear density',
    'end fixity',
    'bending stiffness',
    'frequency',
    'repeatability',
    'amplitude',
  ]);
  expect(inputs(40)).toEqual(inputs(2));
});

test('of a string: density once, length twice, frequency twice', () => {
  const bendingStiffnessNm2 = { kind: 'known', value: { value: 0, standardUncertainty: 0 } } as const;
  const span: KnownSpan = { ...knownSpan(spanOf(0.2, { ...WEIGHED_BELT, bendingStiffnessNm2 }))!, linearDensityRelativeU: 0.02 };
  const lines = forceBudget({ forceN: 10, span, doubt: DOUBT });
  const u = Object.fromEntries(lines.map(({ input, forceUN }) => [input, forceUN]));
  expect(u['linear density']).toBeCloseTo(0.2, 12);
  expect(u['span length']).toBeCloseTo(10 * 2 * (0.0005 / 0.2), 12);
  expect(u.frequency).toBeCloseTo(0.02, 12);
  expect(u.repeatability).toBeCloseTo(0.06, 12);
  expect(u.amplitude).toBeCloseTo(0.01, 12);
  expect(u['end fixity']).toBe(0);
  expect(u['bending stiffness']).toBe(0);
});

test('nothing uncertain: no shares, and nothing that is not a number', () => {
  const certain = { value: 0, standardUncertainty: 0 };
  const belt = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: certain } } as const;
  const span = { ...knownSpan(spanOf(0.2, belt))!, spanLengthRelativeU: 0, linearDensityRelativeU: 0 };
  const lines = forceBudget({ forceN: 10, span, doubt: { withinRelative: 0, repeatabilityRelative: 0, amplitudeRelative: 0 } });
  for (const { share, forceUN } of lines) expect([share, forceUN]).toEqual([0, 0]);
});

/** Each input drawn alone, the beam solved for each draw: where the beam is nearly straight, first order is what the draws show. */
describe('against random draws, one input at a time', () => {
  const setup = spanOf(0.2, WEIGHED_BELT, {
    ends: [
      { kind: 'known', value: { value: 0.5, standardUncertainty: 0.1 } },
      { kind: 'known', value: { value: 0.4, standardUncertainty: 0.1 } },
    ],
    belt: { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: { value: 1.2e-4, standardUncertainty: 1.2e-5 } } },
  });
  const span = knownSpan(setup)!;
  const lines = forceBudget({ forceN: 10, span, doubt: DOUBT });
  const truth = { spanLengthM: 0.2, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.4] as const, number: 1 };
  const heardHz = partialHz({ ...truth, forceN: 10 });

  test.each([
    ['span length', (z: number) => ({ spanLengthM: 0.2 + 0.0005 * z })],
    ['linear density', (z: number) => ({ linearDensityKgPerM: 0.0078 * (1 + span.linearDensityRelativeU * z) })],
    ['end fixity', (z: number, y: number) => ({ fixity: [0.5 + 0.1 * z, 0.4 + 0.1 * y] as const })],
    ['bending stiffness', (z: number) => ({ bendingStiffnessNm2: 1.2e-4 * (1 + 0.1 * z) })],
    ['frequency', (z: number) => ({ partialHz: heardHz * (1 + 0.001 * z) })],
  ] as const)('%s', (input, change) => {
    const random = createRandom(3);
    const clip = (z: number) => Math.max(-3.5, Math.min(3.5, z));
    const forces = Array.from(
      { length: 6000 },
      () => forceFromPartial({ ...truth, partialHz: heardHz, ...change(clip(random.gaussian()), clip(random.gaussian())) })!,
    );
    const mean = forces.reduce((sum, force) => sum + force, 0) / forces.length;
    const sd = Math.sqrt(forces.reduce((sum, force) => sum + (force - mean) ** 2, 0) / (forces.length - 1));
    const line = lines.find((candidate) => candidate.input === input)!;
    expect(Math.abs(line.forceUN / sd - 1)).toBeLessThan(0.04); // three standard deviations of 6000 draws, and the cells' width
  });
});

describe('the sum of the budget', () => {
  const span = knownSpan(spanOf(0.3))!;
  const sumOf = (repeatabilityRelative: number, repeatabilityDegreesOfFreedom?: number) => {
    const lines = forceBudget({ forceN: 10, span, doubt: { ...DOUBT, repeatabilityRelative, repeatabilityDegreesOfFreedom } });
    return { lines, sum: budgetSum(lines, { value: 10, low: 9.3, high: 10.6, u95: 0.7 }) };
  };

  test('counts few plucks by Welch and Satterthwaite', () => {
    const { lines, sum } = sumOf(0.02, 5);
    const repeatability = lines.find(({ input }) => input === 'repeatability')!;
    expect(sum.degreesOfFreedom).toBeCloseTo((5 * sum.forceUN ** 4) / repeatability.forceUN ** 4, 9);
    expect(sum.coverageFactor).toBeGreaterThan(1.97);
    expect(sumOf(0.02).sum.degreesOfFreedom).toBeUndefined();
    expect(sumOf(0.02).sum.coverageFactor).toBeCloseTo(1.96, 3);
  });

  test('widens an interval by Student’s t over the normal factor, on both sides alike in ln T', () => {
    const { lines, sum } = sumOf(0.05, 4);
    const wide = widenedForFew({ value: 10, low: 9, high: 11, u95: 1 }, lines);
    const factor = sum.coverageFactor / 1.959964; // normal distribution, 95 %
    expect(Math.log(wide.low! / 10) / Math.log(0.9)).toBeCloseTo(factor, 4);
    expect(Math.log(wide.high! / 10) / Math.log(1.1)).toBeCloseTo(factor, 4);
    expect(wide.u95).toBe(Math.max(10 - wide.low!, wide.high! - 10));
  });

  test('leaves a bound that is not there away', () => {
    expect(widenedForFew({ value: 10, high: 11 }, sumOf(0.05, 4).lines)).toMatchObject({ low: undefined, u95: undefined });
  });
});
