/** The synthesised recordings in `fixtures/` are what their truth files say, and can be made again. */
import { describe, expect, it } from 'vitest';
import { readWav } from '../../src/core/samples/wav.ts';
import { spanPartialHz } from '../../src/core/synthesis/span.ts';
import { allFixtures } from '../support/all-fixtures.ts';
import { toneHz } from '../support/heterodyne.ts';
import { soundOf, storedBelts, storedBroken, storedFixtures } from '../support/read-fixtures.ts';

const fresh = new Map(allFixtures().map((fixture) => [fixture.name, fixture]));

it('are all there, and no others', () => {
  expect(storedFixtures.map(({ name }) => name).sort()).toEqual([...fresh.keys()].sort());
});

describe.each(storedFixtures)('$name', ({ name, bytes, truth }) => {
  it('has the truth that it was made with', () => {
    expect(truth).toEqual(JSON.parse(JSON.stringify(fresh.get(name)!.truth)));
  });

  it('has the samples that it was made with', () => {
    const again = fresh.get(name)!.bytes;
    expect(bytes.length).toBe(again.length);
    const [stored, made] = [readWav(bytes), readWav(again)];
    if (stored.kind !== 'wav' || made.kind !== 'wav') {
      expect([...bytes]).toEqual([...again]);
      return;
    }
    expect({ ...stored, recording: undefined }).toEqual({ ...made, recording: undefined });
    // Sine and exponential may differ in their last bit from one machine to the next, which can tip a rounding.
    const furthest = stored.recording.samples.reduce((most, value, i) => Math.max(most, Math.abs(value - made.recording.samples[i]!)), 0);
    expect(furthest).toBeLessThanOrEqual(2 ** -15);
  });
});

describe.each(storedBelts)('$name', (fixture) => {
  const { truth } = fixture;
  const { frequencyHz, ...made } = truth;

  it('has the first partial of a beam with its force, span and belt', () => {
    const span = { ...made, axialStiffnessN: 0, decayS: 1, dampingGrowth: 0 };
    expect(spanPartialHz(span, 1) / frequencyHz).toBeCloseTo(1, 8);
  });
});

/** Where the first partial is filtered away, or little of the ring is left once the amplitude has gone, or a steady tone is close. */
const NOT_HEARD_LATE = ['missing-first-partial', 'noise-10db', 'fan-and-stepper', 'hum-60', 'short-stiff-60mm', 'slack'];

describe.each(storedBelts.filter(({ name }) => !NOT_HEARD_LATE.includes(name)))('$name', (fixture) => {
  it('rings at that frequency late in its last ring, by phase alone', () => {
    const { frequencyHz, pluckStartsS } = fixture.truth;
    const { samples, sampleRateHz } = soundOf(fixture);
    const startS = pluckStartsS[pluckStartsS.length - 1]! + 0.3;
    const heardHz = toneHz(samples, { nearHz: frequencyHz, firstS: startS, secondS: startS + 0.1, lengthS: 0.2, sampleRateHz });
    expect(Math.abs(heardHz / frequencyHz - 1)).toBeLessThan(0.002);
  });
});

it('noise-10db has a tenth of the power of the first tenth of a second as noise', () => {
  const { samples, sampleRateHz } = soundOf(storedBelts.find(({ name }) => name === 'noise-10db')!);
  const power = (fromS: number, toS: number) => {
    const part = samples.subarray(Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz));
    return part.reduce((sum, value) => sum + value * value, 0) / part.length;
  };
  const noise = power(0, 0.54);
  expect(Math.abs(10 * Math.log10((power(0.55, 0.65) - noise) / noise) - 10)).toBeLessThan(0.3);
});

describe.each(storedBroken)('$name', ({ bytes, truth }) => {
  it('is refused for what is wrong with it', () => {
    expect(readWav(bytes)).toMatchObject({ kind: 'wav-fault', why: truth.fault });
  });
});
