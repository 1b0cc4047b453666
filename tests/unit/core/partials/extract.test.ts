import { describe, expect, it } from 'vitest';
import { powerOfTwoFrom } from '../../../../src/core/math/fft.ts';
import { extractSinusoids } from '../../../../src/core/partials/extract.ts';
import type { Stretch } from '../../../../src/core/pluck/segment.ts';
import { amplitude, binGrid, decayS } from '../../../../src/core/spectrum/damped-sinusoid.ts';
import { stiffPartials, type Tone, tones } from '../../../support/tones.ts';

const rateHz = 8000;

function stretch(list: readonly Tone[], { noise = 0.001, seed = 1, count = 4600 } = {}): Stretch {
  const samples = tones(list, { rateHz, count, noise, seed });
  const grid = binGrid({ rateHz, length: count, size: powerOfTwoFrom(count), highestHz: 3200 });
  const power = samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, count);
  const floor = noise ** 2 + 1e-5 * power + 1e-12;
  return { samples, grid, noise: new Float64Array(grid.binCount).fill(floor), room: new Uint8Array(grid.binCount) };
}

const ascending = (found: ReturnType<typeof extractSinusoids>) => found.toSorted((a, b) => a.frequencyHz - b.frequencyHz);

describe('extractSinusoids', () => {
  it.each([
    ['a belt of 150 mm', { firstHz: 121, inharmonicity: 0.006, amplitude: 0.3, decayS: 0.19 }],
    ['a long one', { firstHz: 62, inharmonicity: 0.001, amplitude: 0.1, decayS: 0.25 }],
    ['a short stiff one', { firstHz: 310, inharmonicity: 0.06, amplitude: 0.3, decayS: 0.07 }],
  ])('finds the partials of %s, each with frequency, decay and amplitude', (_, options) => {
    const list = stiffPartials({ ...options, numbers: [1, 2, 3, 4, 5] });
    const found = ascending(extractSinusoids(stretch(list)));
    expect(found.length).toBe(5);
    list.forEach((tone, i) => {
      const one = found[i]!;
      expect(Math.abs(one.frequencyHz - tone.frequencyHz)).toBeLessThan(Math.max(0.1, 5 * one.frequencyU));
      expect(Math.abs(amplitude(one) / tone.amplitude - 1)).toBeLessThan(0.05);
      expect(Math.abs(decayS(one) / tone.decayS! - 1)).toBeLessThan(0.05);
      expect(one.overNoise).toBeGreaterThan(10);
      expect(one.weight).toBeGreaterThan(0);
      expect(one.weight).toBeLessThanOrEqual(1);
    });
  });

  it('hears nothing in noise', () => {
    for (let seed = 1; seed <= 25; seed++) expect(extractSinusoids(stretch([], { noise: 0.05, seed }))).toEqual([]);
  });

  it('hears nothing in silence, nor in no samples at all', () => {
    expect(extractSinusoids(stretch([], { noise: 0 }))).toEqual([]);
    expect(extractSinusoids({ ...stretch([]), samples: new Float64Array(0) })).toEqual([]);
  });

  it('takes no knock for a partial', () => {
    expect(extractSinusoids(stretch([{ frequencyHz: 400, amplitude: 0.5, decayS: 0.002 }]))).toEqual([]);
  });

  it('hears a partial 40 dB below another', () => {
    const list = [
      { frequencyHz: 120, amplitude: 0.5, decayS: 0.2 },
      { frequencyHz: 251, amplitude: 0.005, decayS: 0.15 },
    ];
    const found = ascending(extractSinusoids(stretch(list, { noise: 0.0003 })));
    expect(found.map(({ frequencyHz }) => Math.round(frequencyHz))).toEqual([120, 251]);
  });

  it('weighs by strength: what is faint beside the rest, or close to the noise, counts for less', () => {
    const list = [0.5, 0.05, 0.006].map((size, i) => ({ frequencyHz: [120, 250, 390][i]!, amplitude: size, decayS: 0.15 }));
    const [first, second, third] = ascending(extractSinusoids(stretch(list)));
    expect(first!.weight).toBeGreaterThan(second!.weight);
    expect(second!.weight).toBeGreaterThan(third?.weight ?? 0);
  });

  it('changes with the gain in amplitude only', () => {
    const list = stiffPartials({ firstHz: 121, inharmonicity: 0.006, amplitude: 0.3, decayS: 0.19, numbers: [1, 2, 3] });
    const plain = stretch(list);
    const soft: Stretch = { ...plain, samples: plain.samples.map((x) => x / 100), noise: plain.noise.map((n) => n / 1e4) };
    const [of, at] = [extractSinusoids(plain), extractSinusoids(soft)];
    at.forEach((one, i) => {
      expect(one.frequencyHz).toBeCloseTo(of[i]!.frequencyHz, 6);
      expect((amplitude(one) * 100) / amplitude(of[i]!)).toBeCloseTo(1, 6);
      expect(one.weight).toBeCloseTo(of[i]!.weight, 6);
    });
    expect(at.length).toBe(of.length);
  });
});
