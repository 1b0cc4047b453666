/** The closed form, the draws and the law of propagation against one another: all agree where the beam is straight, the last one fails where it is not. */

import { describe, expect, test } from 'vitest';
import { budgetSum, forceBudget } from '../../../../src/core/force/budget.ts';
import { forceFromPartials } from '../../../../src/core/force/force.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { monteCarloForce } from '../../../../src/core/force/monte-carlo.ts';
import type { ForceN } from '../../../../src/core/outcome.ts';
import type { SpanSetup } from '../../../../src/core/setup.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const DRAWS = 60_000;
const known = (value: number, standardUncertainty: number) => ({ kind: 'known', value: { value, standardUncertainty } }) as const;
const KNOWN: Partial<SpanSetup> = { ends: [known(0.5, 0.1), known(0.5, 0.1)] };
const KNOWN_BELT = { ...WEIGHED_BELT, bendingStiffnessNm2: known(1.2e-4, 1.2e-5) };

function heardOf(forceN: number, spanLengthM: number, numbers: readonly number[]) {
  const truth = { forceN, spanLengthM, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] as const };
  return {
    partials: numbers.map((number) => ({ number, frequencyHz: partialHz({ ...truth, number }), relativeU: 0.001 })),
    sharedRelativeU: 0.005,
  };
}

function expectClose(one: ForceN, other: ForceN, within: number): void {
  for (const end of ['low', 'value', 'high'] as const) expect(Math.abs(one[end]! / other[end]! - 1)).toBeLessThan(within);
}

describe('draws agree with the closed form', () => {
  test.each([
    { forceN: 10, spanLengthM: 0.3, numbers: [1], within: 0.006 },
    { forceN: 10, spanLengthM: 0.15, numbers: [1, 2, 3, 4], within: 0.008 },
    { forceN: 5, spanLengthM: 0.06, numbers: [1, 2, 3], within: 0.025 }, // few draws fit three partials there: their own noise
    { forceN: 10, spanLengthM: 0.15, numbers: [2, 3], within: 0.008 },
  ])(
    '$forceN N on $spanLengthM m, partials $numbers',
    ({ forceN, spanLengthM, numbers, within }) => {
      const heard = heardOf(forceN, spanLengthM, numbers);
      const span = knownSpan(spanOf(spanLengthM))!;
      expectClose(monteCarloForce({ heard, span, seed: 7, draws: DRAWS }).forceN!, forceFromPartials(heard, span).forceN!, within);
    },
    60_000,
  );
});

/** Interval of the draws, and the sum of the budget, of one span heard by its first partial. */
function bothWays(forceN: number, setup: SpanSetup) {
  const spanLengthM = setup.spanLengthM!.value;
  const heard = heardOf(forceN, spanLengthM, [1]);
  const span = knownSpan(setup)!;
  const drawn = monteCarloForce({ heard, span, seed: 7, draws: DRAWS }).forceN!;
  const doubt = { withinRelative: 0.001, repeatabilityRelative: 0.005, amplitudeRelative: 0, modelRelative: 0.0025 };
  return { drawn, sum: budgetSum(forceBudget({ forceN: drawn.value, span, doubt }), drawn) };
}

describe('the law of propagation', () => {
  test('gives the drawn interval where ends and stiffness are known and the span is long', () => {
    const { drawn, sum } = bothWays(10, spanOf(0.3, KNOWN_BELT, KNOWN));
    expect(sum.firstOrderHolds).toBe(true);
    expect(Math.abs((sum.coverageFactor * sum.forceUN) / drawn.u95! - 1)).toBeLessThan(0.05);
  }, 60_000);

  test('does not where the span is short and slack, and that is said', () => {
    const { drawn, sum } = bothWays(5, spanOf(0.06));
    expect(sum.firstOrderHolds).toBe(false);
    expect(drawn.value - (drawn.low ?? 0)).toBeGreaterThan(1.5 * (drawn.high! - drawn.value)); // lopsided, which first order cannot be
  }, 60_000);
});

test('a seed is all the chance there is, and progress runs to the end', () => {
  const given = { heard: heardOf(10, 0.15, [1, 2]), span: knownSpan(spanOf(0.15))!, draws: 2000 };
  const told: number[] = [];
  const once = monteCarloForce({ ...given, seed: 3, progress: (share) => told.push(share) });
  expect(monteCarloForce({ ...given, seed: 3 }).forceN).toEqual(once.forceN);
  expect(monteCarloForce({ ...given, seed: 4 }).forceN).not.toEqual(once.forceN);
  expect(told).toHaveLength(100);
  expect(told.at(-1)).toBe(1);
  expect(told).toEqual(told.toSorted((a, b) => a - b));
});

test('a sound too low for any force has none, and a slack one no low bound', () => {
  const span = knownSpan(spanOf(0.045))!;
  const low = (frequencyHz: number) => ({ partials: [{ number: 1, frequencyHz, relativeU: 0.001 }], sharedRelativeU: 0.005 });
  expect(monteCarloForce({ heard: low(20), span, seed: 1, draws: 2000 })).toMatchObject({ forceN: undefined, shareWithoutForce: 1 });
  const slack = monteCarloForce({ heard: low(250), span, seed: 1, draws: 4000 });
  expect(slack.shareWithoutForce).toBeGreaterThan(0.025);
  expect(slack.forceN!.low).toBeUndefined();
});
