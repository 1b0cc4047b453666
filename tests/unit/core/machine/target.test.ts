import { expect, it } from 'vitest';
import { answerOf } from '../../../../src/core/answer.ts';
import { knownSpan } from '../../../../src/core/force/known-span.ts';
import {
  againstFrequencyTarget,
  forceOfTarget,
  frequencyOfForce,
  frequencyOnSpan,
  readingAgainstTarget,
} from '../../../../src/core/machine/target.ts';
import type { SpanSetup } from '../../../../src/core/setup.ts';
import { verdictOf } from '../../../../src/core/verdict/conformance.ts';
import { pluckSound } from '../../../support/heard-plucks.ts';

const LIMP = { kind: 'known', value: { value: 0, standardUncertainty: 0 } } as const;
const setup = (spanLengthM: number, density = 0.0078, limp = true): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 },
  belt: {
    linearDensityKgPerM: { value: density, standardUncertainty: density / 10 },
    densityFrom: 'catalogue',
    bendingStiffnessNm2: limp ? LIMP : { kind: 'range', low: 5e-5, high: 3e-4 },
  },
  ends: [
    { kind: 'between', low: 0, high: 0.5 },
    { kind: 'between', low: 0.7, high: 1 },
  ],
});
const TARGET = { lowHz: 80, highHz: 100, spanLengthM: 0.18 };

it('means the force of the string law, as dense as the belt is taken to be', () => {
  // T = 4 μ L² f² (Rayleigh, The Theory of Sound, vol. I, ch. VI), by hand: 4 · 0.0078 · 0.18² · 80² = 6.469632 N, 100²: 10.10880 N
  expect(forceOfTarget(TARGET, setup(0.18))).toEqual({ lowN: expect.closeTo(6.469632, 9), highN: expect.closeTo(10.1088, 9) });
  const heavy = forceOfTarget(TARGET, setup(0.18, 0.0156))!;
  expect(heavy.lowN).toBeCloseTo(2 * 6.469632, 9);
  expect(forceOfTarget(TARGET, { ...setup(0.18), belt: undefined })).toBeUndefined();
});

it('carries a frequency to another span by its length, whatever the belt weighs', () => {
  for (const density of [0.0078, 0.0156]) {
    const range = frequencyOnSpan(TARGET, setup(0.24, density))!;
    expect(range.lowHz).toBeCloseTo((80 * 0.18) / 0.24, 9);
    expect(range.highHz).toBeCloseTo((100 * 0.18) / 0.24, 9);
  }
  // Stiffness and ends raise the shorter span more, so that a stiff belt must ring higher than by length alone.
  expect(frequencyOnSpan(TARGET, setup(0.09, 0.0078, false))!.lowHz).toBeGreaterThan(160);
});

it('tells what a force should sound like, with what is not known of the belt', () => {
  const range = frequencyOfForce({ lowN: 6.469632, highN: 10.1088 }, setup(0.18))!;
  expect([range.lowHz, range.highHz]).toEqual([expect.closeTo(80, 3), expect.closeTo(100, 3)]);
  // 10 % of density is 5 % of frequency, one standard deviation; the interval is about twice that on each side.
  expect(range.low!.highHz / range.lowHz - 1).toBeGreaterThan(0.09);
  expect(frequencyOfForce({ lowN: 0, highN: 9 }, setup(0.18))!.low).toBeUndefined();
});

it('judges what was heard against a frequency without the density', () => {
  const span = knownSpan(setup(0.18, 0.0078, false))!;
  const heard = (frequencyHz: number) => ({ span, frequencyHz, partials: [], sharedRelativeU: 0.003 });
  const verdict = (hz: number) => verdictOf(againstFrequencyTarget({ heard: heard(hz), soundRelativeU: 0.003, target: TARGET })!);
  expect([74, 80, 90, 100, 107].map(verdict)).toEqual(['low', 'undecided', 'met', 'undecided', 'high']);
  // As a force the same reading would be open: 10 % of density is half the target's width.
  const { below, inside, above } = againstFrequencyTarget({ heard: heard(84), soundRelativeU: 0.003, target: TARGET })!;
  expect(inside).toBeGreaterThan(0.99);
  expect(below + inside + above).toBeCloseTo(1, 9);
});

it('gives a reading the verdict of its target: of a frequency without the density, of a force with it', () => {
  const stiff = setup(0.18, 0.0078, false);
  const reading = (hz: number, of: SpanSetup) =>
    answerOf({ sounds: [hz, hz, hz].map((f) => pluckSound(f)), setup: of, sampleRateHz: 48_000 }).reading!;
  const hertz = { ...stiff, targetHz: TARGET, targetForceN: forceOfTarget(TARGET, stiff)! };
  const force = { ...stiff, targetForceN: hertz.targetForceN };
  const kinds = (hz: number) => [
    readingAgainstTarget(reading(hz, hertz), hertz)?.kind,
    readingAgainstTarget(reading(hz, force), force)?.kind,
  ];
  expect(kinds(82)).toEqual(['inside', 'probably-inside']);
  expect(kinds(74)[0]).toBe('low');
  expect(kinds(108)[0]).toBe('high');
  expect(readingAgainstTarget(reading(84, stiff), stiff)).toBeUndefined();
});
