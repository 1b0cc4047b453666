import { describe, expect, it } from 'vitest';
import { answerOf, type Take } from '../../../src/core/answer.ts';
import { remediesOf } from '../../../src/core/remedies.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { pluckSound } from '../../support/heard-plucks.ts';

const CATALOGUE: SpanSetup['belt'] = {
  linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00078 },
  densityFrom: 'catalogue',
  bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 2e-4 },
};
const spanOf = (millimetres: number): SpanSetup => ({
  spanLengthM: { value: millimetres / 1000, standardUncertainty: 0.0005 },
  belt: CATALOGUE,
  ends: UNKNOWN_ENDS,
});

function asked(setup: SpanSetup, frequencyHz: number) {
  const take: Take = { sounds: [-0.05, 0, 0.05].map((off) => pluckSound(frequencyHz + off)), setup, sampleRateHz: 48_000 };
  const reading = answerOf(take).reading!;
  return { take, reading, remedies: remediesOf(take, reading) };
}

describe('what each remedy would give', () => {
  it('is narrower than what is, about the same force, the surest first', () => {
    const { reading, remedies } = asked(spanOf(60), 300);
    expect(remedies.length).toBeGreaterThan(1);
    const halves = remedies.map((remedy) => remedy.reading.forceN!.u95!);
    expect(halves).toEqual([...halves].sort((a, b) => a - b));
    for (const { reading: then, kind } of remedies) {
      expect(then.forceN!.u95!, kind).toBeLessThan(reading.forceN!.u95 ?? Number.POSITIVE_INFINITY);
      expect(Math.abs(then.forceN!.value / reading.forceN!.value - 1), kind).toBeLessThan(0.15);
      expect(then.pluckCount, kind).toBe(3);
    }
  });

  it('of weighing is what the budget has left without the density', () => {
    const { reading, remedies } = asked(spanOf(300), 60);
    const left = reading.budget.filter(({ input }) => input !== 'linear density').map(({ forceUN }) => forceUN);
    const weighed = remedies.find(({ kind }) => kind === 'weighed')!;
    // the density itself stays in with its half percent
    const expected = 2 * Math.hypot(...left, 0.005 * reading.forceN!.value);
    expect(weighed.reading.forceN!.u95! / expected).toBeGreaterThan(0.75);
    expect(weighed.reading.forceN!.u95! / expected).toBeLessThan(1.35);
    expect(weighed.reading.reasons.map(({ id }) => id)).not.toContain('density-from-catalogue');
  });

  it('offers a longer span only where the length is the trouble, and with the weighing if that is needed too', () => {
    const long = asked(spanOf(300), 60).remedies.map(({ kind }) => kind);
    expect(long).not.toContain('longer-span');
    const { reading, remedies } = asked(spanOf(45), 330);
    expect(reading.reasons.map(({ id }) => id)).toContain('span-too-short');
    const both = remedies.find(({ kind }) => kind === 'longer-span-weighed')!;
    expect(both.spanLengthM).toBeGreaterThan(0.045);
    expect((both.spanLengthM * 1000) % 5).toBeCloseTo(0, 6);
    expect(both).toBe(remedies[0]);
  });

  it('is nothing where there is no force, or where all is known already', () => {
    expect(asked({ ends: UNKNOWN_ENDS }, 300).remedies).toEqual([]);
    const known: SpanSetup = {
      spanLengthM: { value: 0.3, standardUncertainty: 0.0001 },
      belt: {
        ...CATALOGUE,
        linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00001 },
        densityFrom: 'weighed',
        bendingStiffnessNm2: { kind: 'known', value: { value: 1e-4, standardUncertainty: 1e-6 } },
      },
      ends: [0, 1].map(() => ({ kind: 'known', value: { value: 0.3, standardUncertainty: 0.01 } })) as unknown as SpanSetup['ends'],
    };
    expect(asked(known, 60).remedies).toEqual([]);
  });
});
