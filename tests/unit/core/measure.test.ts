import { describe, expect, it } from 'vitest';
import { measure } from '../../../src/core/measure.ts';
import { UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import { spanOf } from '../../support/heard.ts';
import { PLAIN, plainTake } from '../../support/plain-take.ts';
import { recordingOf, tones } from '../../support/tones.ts';

const one = PLAIN.plucks[0]!;
const take = plainTake({ durationS: 2.9, plucks: [0.7, 1.4, 2.1].map((startS) => ({ ...one, startS })) });
const setup = spanOf(0.15);

describe('three plucks of a known span', () => {
  const measured = measure(take.recording, setup);
  const { outcome, plucks } = measured;

  it('give one reading of them all, whose force holds the one that was simulated', () => {
    if (outcome.kind !== 'reading') throw new Error(outcome.why);
    expect(outcome.pluckCount).toBe(3);
    expect(plucks.map(({ used }) => used)).toEqual([true, true, true]);
    expect(Math.abs(outcome.frequencyHz.value - take.firstHz)).toBeLessThan(outcome.frequencyHz.u95);
    expect(outcome.forceN!.low!).toBeLessThan(PLAIN.span.forceN);
    expect(outcome.forceN!.high!).toBeGreaterThan(PLAIN.span.forceN);
    expect(outcome.soundGrade).toBe('trusted');
  });

  it('tell rate and length of the recording', () => {
    expect([measured.sampleRateHz, measured.durationS]).toEqual([16_000, 2.9]);
  });

  it('give the same again, and leave the recording as it was', () => {
    const before = take.recording.samples.slice();
    expect(measure(take.recording, setup)).toEqual(measured);
    expect(take.recording.samples).toEqual(before);
  });

  it('bear a longer span as a smaller density of force: knowledge changes the force, not the frequency', () => {
    const other = measure(take.recording, spanOf(0.16));
    if (outcome.kind !== 'reading' || other.outcome.kind !== 'reading') throw new Error('no reading');
    expect(other.outcome.frequencyHz.value / outcome.frequencyHz.value).toBeCloseTo(1, 3);
    expect(other.outcome.forceN!.value).toBeGreaterThan(outcome.forceN!.value);
  });
});

it('without span and belt gives the frequency, and no force', () => {
  const { outcome } = measure(take.recording, { ends: UNKNOWN_ENDS });
  if (outcome.kind !== 'reading') throw new Error(outcome.why);
  expect(outcome.forceN).toBeUndefined();
  expect(outcome.budget).toEqual([]);
  expect(Math.abs(outcome.frequencyHz.value - take.firstHz)).toBeLessThan(outcome.frequencyHz.u95);
});

it('says that sound was altered on its way', () => {
  const { outcome } = measure({ ...take.recording, processing: 'altered' }, setup);
  if (outcome.kind !== 'reading') throw new Error(outcome.why);
  expect(outcome.reasons.map(({ id }) => id)).toContain('sound-altered');
});

describe('where nothing was plucked', () => {
  const rateHz = 16_000;
  it.each([
    ['silence', new Float64Array(2 * rateHz), 'silence'],
    ['noise', tones([], { rateHz, count: 2 * rateHz, noise: 0.01 }), 'no-onset'],
    ['too little', tones([], { rateHz, count: 800, noise: 0.01 }), 'too-short'],
    ['nothing at all', new Float64Array(0), 'too-short'],
  ])('%s', (_, samples, why) => {
    const measured = measure(recordingOf(samples, rateHz), setup);
    expect(measured.outcome).toEqual({ kind: 'nothing', why });
    expect(measured.plucks).toEqual([]);
  });

  it('a held tone that begins: not a span', () => {
    const held = tones([{ frequencyHz: 121, amplitude: 0.1, startS: 0.8 }], { rateHz, count: 2 * rateHz, noise: 0.001 });
    expect(measure(recordingOf(held, rateHz), setup).outcome).toEqual({ kind: 'nothing', why: 'not-a-span' });
  });
});
