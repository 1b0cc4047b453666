import { describe, expect, it } from 'vitest';
import { type MovingTone, movingTones } from '../../../../src/core/pluck/moving-tones.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { tones } from '../../../support/tones.ts';

const rateHz = 8000;
const count = (seconds: number) => Math.round(seconds * rateHz);

/** a cos(2π (f t − s (D − t)²/2)) with f and s at the end D of the stretch: f(t) = f − s (D − t). */
interface Glide {
  readonly endHz: number;
  readonly slopeHzPerS: number;
  readonly amplitude?: number;
}

function gliding(glides: readonly Glide[], { noise = 0.001, durationS = 0.5, seed = 1 } = {}): Float64Array {
  const random = createRandom(seed);
  return Float64Array.from({ length: count(durationS) }, (_, i) => {
    const t = i / rateHz;
    const left = durationS - t;
    return glides.reduce(
      (sum, { endHz, slopeHzPerS, amplitude = 0.1 }) =>
        sum + amplitude * Math.cos(2 * Math.PI * (endHz * t + (slopeHzPerS * left * left) / 2)),
      noise * random.gaussian(),
    );
  });
}

const heard = (samples: Float64Array, noise = 0.001) => movingTones(samples, { rateHz, noiseAt: () => noise * noise }).tones;
const amplitudeOf = ({ re, im }: MovingTone) => Math.hypot(re, im);
const nearest = (found: readonly MovingTone[], hz: number) =>
  found.toSorted((a, b) => Math.abs(a.frequencyHz - hz) - Math.abs(b.frequencyHz - hz))[0];

describe('a tone that glides', () => {
  it.each([
    [150, 40],
    [310, 120],
    [310, -120],
    [640, -250],
    [1250, 300],
  ])('to %d Hz at %d Hz/s is foreseen from where the stretch ends', (endHz, slopeHzPerS) => {
    const found = nearest(heard(gliding([{ endHz, slopeHzPerS }])), endHz)!;
    expect(Math.abs(found.frequencyHz - endHz)).toBeLessThan(3);
    expect(Math.abs(found.slopeHzPerS / slopeHzPerS - 1)).toBeLessThan(0.15);
    expect(Math.abs(amplitudeOf(found) / 0.1 - 1)).toBeLessThan(0.15);
  });

  it('is found beside another one, the stronger first', () => {
    const glides = [
      { endHz: 300, slopeHzPerS: 60, amplitude: 0.05 },
      { endHz: 900, slopeHzPerS: -180, amplitude: 0.2 },
    ];
    const found = heard(gliding(glides));
    expect(Math.abs(found[0]!.frequencyHz - 900)).toBeLessThan(3);
    expect(Math.abs(nearest(found, 300)!.frequencyHz - 300)).toBeLessThan(3);
    const amplitudes = found.map(amplitudeOf);
    expect(amplitudes).toEqual(amplitudes.toSorted((a, b) => b - a));
  });

  it('with its harmonics, as of a motor that speeds up, is found in all of them', () => {
    const harmonics = [1, 2, 3].map((n) => ({ endHz: 210 * n, slopeHzPerS: 50 * n, amplitude: 0.1 / n }));
    const found = heard(gliding(harmonics));
    for (const { endHz, slopeHzPerS } of harmonics) {
      expect(Math.abs(nearest(found, endHz)!.frequencyHz - endHz)).toBeLessThan(3);
      expect(Math.abs(nearest(found, endHz)!.slopeHzPerS / slopeHzPerS - 1)).toBeLessThan(0.15);
    }
  });

  it.each([0.01, 1, 100])('is the same whatever the gain, %d', (gain) => {
    const samples = gliding([{ endHz: 310, slopeHzPerS: 120 }]);
    const [plain] = heard(samples);
    const [louder] = heard(
      samples.map((x) => gain * x),
      0.001 * gain,
    );
    expect(louder!.frequencyHz).toBeCloseTo(plain!.frequencyHz, 6);
    expect(amplitudeOf(louder!) / gain).toBeCloseTo(amplitudeOf(plain!), 9);
  });

  it('is heard by its last part: what it did long before makes no difference', () => {
    const glide = gliding([{ endHz: 310, slopeHzPerS: 120 }], { durationS: 0.3 });
    const after = Float64Array.from([...tones([], { rateHz, count: count(0.5), noise: 0.3 }), ...glide]);
    expect(heard(after)).toEqual(heard(glide));
  });
});

describe('what does not glide', () => {
  const steady = [
    { frequencyHz: 120, amplitude: 0.1 },
    { frequencyHz: 443, amplitude: 0.2 },
  ];

  it('steady tones, loud or quiet', () => {
    expect(heard(tones(steady, { rateHz, count: count(0.5), noise: 0.001 }))).toEqual([]);
  });

  it('noise alone, in 40 draws', () => {
    for (let seed = 1; seed <= 40; seed++) expect(heard(gliding([], { noise: 0.1, seed }), 0.1)).toEqual([]);
  });

  it('the end of a ring', () => {
    const ring = [1, 2, 3].map((n) => ({ frequencyHz: 130 * n, amplitude: 0.2 / n, decayS: 0.08 }));
    expect(heard(tones(ring, { rateHz, count: count(0.4), noise: 0.001 }))).toEqual([]);
  });

  it('a tone that leaps', () => {
    const leap = Float64Array.from({ length: count(0.24) }, (_, i) => {
      const hz = [300, 380, 330][Math.floor((i / count(0.24)) * 3)]!;
      return 0.1 * Math.cos((2 * Math.PI * hz * i) / rateHz);
    });
    expect(heard(leap)).toEqual([]);
  });
});

it('a glide below the noise is left to the noise', () => {
  const samples = gliding([{ endHz: 310, slopeHzPerS: 120, amplitude: 0.01 }], { noise: 0.1 });
  expect(heard(samples, 0.1)).toEqual([]);
});

it.each([0, 1, 1199])('%d samples are too few to see a path', (length) => {
  expect(heard(gliding([{ endHz: 310, slopeHzPerS: 120 }]).subarray(0, length))).toEqual([]);
});

it('leaves the samples as they were', () => {
  const samples = gliding([{ endHz: 310, slopeHzPerS: 120 }]);
  const before = samples.slice();
  heard(samples);
  expect(samples).toEqual(before);
});
