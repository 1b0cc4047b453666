import { describe, expect, test } from 'vitest';
import { answerOf } from '../../../../src/core/answer.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import { sagRise, withoutSag } from '../../../../src/core/force/sag.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { heardPluck, spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const WIDE = { ...WEIGHED_BELT, linearDensityKgPerM: { value: 0.0216, standardUncertainty: 0.0004 }, toothPitchM: 0.003 };

// Worked out by hand from λ² = (μ g L/T)² EA/T with EA 22 kN at 7.8 g/m, 60 kN at 21.6 g/m.
test.each([
  { belt: WEIGHED_BELT, forceN: 5, rise: 0.03 },
  { belt: WEIGHED_BELT, forceN: 2, rise: 0.47 },
  { belt: WIDE, forceN: 5, rise: 0.64 },
])('600 mm at $forceN N rise by $rise', ({ belt, forceN, rise }) => {
  expect(sagRise(knownSpan(spanOf(0.6, belt))!, forceN)).toBeCloseTo(rise, 1);
});

test('even partials know nothing of sag, the third a 1/81 of what the first does', () => {
  const partials = [1, 2, 3].map((number) => ({ number, frequencyHz: 100 * number, relativeU: 0 }));
  const [first, second, third] = withoutSag(partials, 0.01);
  const moved = (partial: typeof first, hz: number) => Math.log(hz / partial!.frequencyHz);
  expect(moved(second, 200)).toBe(0);
  expect(moved(third, 300) / moved(first, 100)).toBeCloseTo(1 / 81, 3);
  // Anything from none to one and a half times the rise of the force, half of it in the frequency: the middle, and its even half width.
  expect(moved(first, 100)).toBeCloseTo((1.5 * 0.01) / 4, 4);
  expect(first!.relativeU).toBeCloseTo((1.5 * 0.01) / 2 / Math.sqrt(12), 4);
});

/** A span that hangs: all partials of the beam, the odd ones raised by the share of the arc's stretch that the loop does not take up. */
function hanging(forceN: number, spanLengthM: number, trapped: number) {
  const setup = spanOf(spanLengthM);
  const rise = trapped * sagRise(knownSpan(setup)!, forceN);
  const truth = { forceN, spanLengthM, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] as const };
  const hz = (number: number) => partialHz({ ...truth, number }) * Math.sqrt(1 + (number % 2 === 0 ? 0 : rise / number ** 4));
  const pluck = heardPluck(hz(1));
  const partials = [1, 2, 3].map((number) => ({
    ...pluck.partials[0]!,
    number,
    frequencyHz: { value: hz(number), standardUncertainty: 0.001 * hz(number) },
  }));
  return { setup, sound: { ...pluck, partials }, alone: { ...pluck, partials: partials.slice(0, 1) } };
}

describe('told that it lies flat', () => {
  test.each([0, 0.5, 1])('the interval holds the force with %f of the stretch trapped, by three partials or by one', (trapped) => {
    for (const forceN of [3, 4, 8]) {
      const { setup, sound, alone } = hanging(forceN, 0.5, trapped);
      for (const heard of [sound, alone]) {
        const { forceN: force } = answerOf({ sounds: [heard], setup: { ...setup, lie: 'flat' }, sampleRateHz: 48_000 }).reading!;
        expect(force!.low ?? 0).toBeLessThan(forceN);
        expect(force!.high!).toBeGreaterThan(forceN);
      }
    }
  });

  const reasonsOf = (forceN: number, lie: 'edge' | 'flat' | undefined) => {
    const { setup, sound } = hanging(forceN, 0.5, 1);
    const { reasons } = answerOf({ sounds: [sound], setup: { ...setup, lie }, sampleRateHz: 48_000 }).reading!;
    return reasons.filter(({ id }) => id === 'span-sags').map(({ holdsAt }) => holdsAt);
  };

  test('a tenth of the force is a doubt, a hundredth a word, less is nothing, and on edge there is none', () => {
    expect(reasonsOf(2.6, 'flat')).toEqual(['doubtful']);
    expect(reasonsOf(5, 'flat')).toEqual(['trusted']);
    expect(reasonsOf(8, 'flat')).toEqual([]);
    expect(reasonsOf(2.6, 'edge')).toEqual([]);
    expect(reasonsOf(2.6, undefined)).toEqual([]);
  });
});

test('a stretch stiffness that was measured goes before the one that the density lets expect', () => {
  const told = knownSpan(spanOf(0.6, { ...WEIGHED_BELT, axialStiffnessN: { value: 11_000, standardUncertainty: 200 } }))!;
  // Half of the 22 kN that a belt of 7.8 g/m is taken to have, so half of the rise worked out above
  expect(sagRise(told, 2)).toBeCloseTo(0.47 / 2, 1);
});
