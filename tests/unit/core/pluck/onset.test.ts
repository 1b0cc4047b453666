import { describe, expect, it } from 'vitest';
import { createOnsetFinder } from '../../../../src/core/pluck/onset.ts';
import { backgroundSound } from '../../../../src/core/synthesis/background.ts';
import { stiffPartials, type Tone, tones } from '../../../support/tones.ts';

const rateHz = 8000;
const count = (seconds: number) => Math.round(seconds * rateHz);
const ring = (startS: number, amplitude = 0.2): Tone[] =>
  stiffPartials({ firstHz: 113, inharmonicity: 0.005, numbers: [1, 2, 3, 4, 5], amplitude, decayS: 0.18, startS });

/** Onsets in seconds. */
function onsetsS(samples: Float64Array, blockSize = samples.length): number[] {
  const finder = createOnsetFinder(rateHz);
  const found: number[] = [];
  for (let from = 0; from < samples.length; from += blockSize) found.push(...finder.push(samples.subarray(from, from + blockSize)));
  found.push(...finder.finish());
  return found.map((index) => index / rateHz);
}

/** One frame; the exact moment is another module's work, which searches further than this. */
const NEAR_S = 0.032;
function expectNear(found: readonly number[], startsS: readonly number[]) {
  expect(found.length).toBe(startsS.length);
  startsS.forEach((startS, i) => {
    expect(Math.abs(found[i]! - startS)).toBeLessThan(NEAR_S);
  });
}

describe('what is steady is no onset', () => {
  const extent = { sampleRateHz: rateHz, sampleCount: count(4) };
  const hum = { mainsHz: 49.97, levelDbfs: -20, harmonicsDb: [-4, -2, -10, -7, -16] };
  it.each([1, 2, 3, 4, 5, 6])('white and pink noise, hum and a fan, draw %d', (seed) => {
    expect(onsetsS(backgroundSound({ whiteDbfs: -30 }, { seed, ...extent }))).toEqual([]);
    expect(onsetsS(backgroundSound({ pinkDbfs: -30 }, { seed, ...extent }))).toEqual([]);
    expect(onsetsS(backgroundSound({ whiteDbfs: -60, hum }, { seed, ...extent }))).toEqual([]);
    const fan = { bladePassHz: 190, toneDbfs: -25, airDbfs: -30, wander: 0.002 };
    expect(onsetsS(backgroundSound({ fan }, { seed, ...extent }))).toEqual([]);
  });

  it('held tones, digital silence, a constant', () => {
    const three = [110, 223, 441].map((frequencyHz) => ({ frequencyHz, amplitude: 0.1 }));
    for (const noise of [1e-4, 1e-3, 1e-2]) expect(onsetsS(tones(three, { rateHz, count: count(3), noise }))).toEqual([]);
    expect(onsetsS(new Float64Array(count(3)))).toEqual([]);
    expect(onsetsS(new Float64Array(count(3)).fill(0.3))).toEqual([]);
  });

  it.each([0, 1, 100, 400])('%d samples, too few for anything', (n) => {
    expect(onsetsS(tones([], { rateHz, count: n, noise: 0.1 }))).toEqual([]);
  });
});

describe('a pluck is one', () => {
  it.each([0.06, 0.1, 0.3, 1])('after %d s of room', (startS) => {
    const samples = tones(ring(startS), { rateHz, count: count(startS + 1), noise: 0.002 });
    expectNear(onsetsS(samples), [startS]);
  });

  it('in digital silence, and in loud hum', () => {
    expectNear(onsetsS(tones(ring(0.6), { rateHz, count: count(1.6) })), [0.6]);
    const hum = [1, 2, 3, 4, 5].map((n) => ({ frequencyHz: 50.02 * n, amplitude: 0.2 / n }));
    expectNear(onsetsS(tones([...ring(0.6), ...hum], { rateHz, count: count(1.6), noise: 0.002 })), [0.6]);
  });

  it('after a long wait', () => {
    expectNear(onsetsS(tones(ring(12.3), { rateHz, count: count(13.3), noise: 0.003 })), [12.3]);
  });

  it('near the end of the sound', () => {
    expectNear(onsetsS(tones(ring(1), { rateHz, count: count(1.12), noise: 0.003 })), [1]);
  });

  it.each([0.001, 0.1, 100])('whatever the gain, %d', (gain) => {
    const samples = tones(ring(0.5), { rateHz, count: count(1.5), noise: 0.003 });
    expectNear(onsetsS(samples.map((x) => gain * x)), [0.5]);
  });
});

describe('several plucks', () => {
  const startsS = [0.5, 1.2, 1.9, 2.8, 3.4];
  const samples = tones(
    startsS.flatMap((startS, i) => ring(startS, [0.2, 0.15, 0.25, 0.1, 0.2][i]!)),
    { rateHz, count: count(4.2), noise: 0.002 },
  );

  it('are each found', () => {
    expectNear(onsetsS(samples), startsS);
  });

  it.each([1, 37, 160, 1000, 8192])('the same in blocks of %d', (blockSize) => {
    expect(onsetsS(samples, blockSize)).toEqual(onsetsS(samples));
  });

  it('are each told within the latency', () => {
    const finder = createOnsetFinder(rateHz);
    const block = 80;
    for (let from = 0; from < samples.length; from += block) {
      for (const onset of finder.push(samples.subarray(from, from + block)))
        expect(from + block - onset).toBeLessThanOrEqual(finder.latency + block);
    }
    expect(finder.latency / rateHz).toBeLessThan(0.5);
  });

  it('stand out as a change far beyond the usual', () => {
    const finder = createOnsetFinder(rateHz);
    finder.push(tones([], { rateHz, count: count(2), noise: 0.002 }));
    finder.finish();
    const ofNoise = finder.largestChange;
    finder.push(samples);
    finder.finish();
    expect(finder.largestChange).toBeGreaterThan(2 * ofNoise);
  });
});
