import { describe, expect, it } from 'vitest';
import { type FittedPartial, firstPartialOf, fitPartials } from '../../../../src/core/frequency/refine.ts';
import { powerOfTwoFrom } from '../../../../src/core/math/fft.ts';
import type { Stretch } from '../../../../src/core/pluck/segment.ts';
import { binGrid } from '../../../../src/core/spectrum/damped-sinusoid.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';
import { spread, stiffPartials, type Tone, tones } from '../../../support/tones.ts';

const rateHz = 8000;

function stretch(list: readonly Tone[], { noise = 0.002, seed = 1 } = {}): Stretch {
  const samples = tones(list, { rateHz, count: 4600, noise, seed });
  const grid = binGrid({ rateHz, length: samples.length, size: powerOfTwoFrom(samples.length), highestHz: 3200 });
  return { samples, grid, noise: new Float64Array(grid.binCount).fill(noise ** 2), room: new Uint8Array(grid.binCount) };
}

const guess = ({ frequencyHz, amplitude, decayS }: Tone) => ({
  frequencyHz: 1.003 * frequencyHz,
  decayPerS: 1.2 / decayS!,
  re: amplitude,
  im: 0,
});

describe('fitPartials', () => {
  const list = stiffPartials({ firstHz: 60, inharmonicity: 0.01, numbers: [1, 2, 3], amplitude: 0.2, decayS: 0.03 });
  const numbered = list.map((tone, i) => ({ number: i + 1, sinusoid: guess(tone) }));

  it('gives undamped frequencies, sqrt(f² + (1/2πτ)²), by number', () => {
    const fitted = fitPartials(stretch(list), numbered, []);
    expect(fitted.map(({ number }) => number)).toEqual([1, 2, 3]);
    fitted.forEach(({ frequencyHz }, i) => {
      const { frequencyHz: ringingHz, decayS } = list[i]!;
      const truth = Math.hypot(ringingHz, 1 / (2 * Math.PI * decayS!));
      expect(Math.abs(frequencyHz.value - truth)).toBeLessThan(4 * frequencyHz.standardUncertainty);
      expect(frequencyHz.standardUncertainty).toBeLessThan(0.1);
      if (i === 0) expect(truth - ringingHz).toBeGreaterThan(8 * frequencyHz.standardUncertainty); // it would be noticed if left out
    });
  });

  it('is not pulled by a stranger that is fitted along', () => {
    const stranger = { frequencyHz: 128, amplitude: 0.15, decayS: 0.06 };
    const fitted = fitPartials(stretch([...list, stranger]), numbered, [guess(stranger)]);
    const truth = Math.hypot(list[1]!.frequencyHz, 1 / (2 * Math.PI * list[1]!.decayS!));
    expect(Math.abs(fitted[1]!.frequencyHz.value - truth)).toBeLessThan(4 * fitted[1]!.frequencyHz.standardUncertainty);
  });

  it('believes a partial less around which something is left that it cannot explain', () => {
    const slow = stiffPartials({ firstHz: 113, inharmonicity: 0.005, numbers: [1, 2], amplitude: 0.2, decayS: 0.18 });
    const from = slow.map((tone, i) => ({ number: i + 1, sinusoid: guess(tone) }));
    const stranger = { frequencyHz: slow[1]!.frequencyHz + 5, amplitude: 0.03, decayS: 0.15 };
    const [clean, disturbed] = [fitPartials(stretch(slow), from, []), fitPartials(stretch([...slow, stranger]), from, [])];
    expect(disturbed[1]!.frequencyHz.standardUncertainty).toBeGreaterThan(3 * clean[1]!.frequencyHz.standardUncertainty);
  });
});

/** Partials at their places, each with its own uncertainty. */
function partials(
  options: { firstHz?: number; inharmonicity?: number; relativeU?: number; off?: (number: number) => number },
  numbers: readonly number[],
): FittedPartial[] {
  const { firstHz = 121, inharmonicity = 0.006, relativeU = 0.0002, off = () => 0 } = options;
  return stiffPartials({ firstHz, inharmonicity, numbers, amplitude: 0.2, decayS: 0.2 }).map((tone, i) => {
    const value = tone.frequencyHz * (1 + off(numbers[i]!));
    const frequencyHz = { value, standardUncertainty: relativeU * value };
    return { number: numbers[i]!, frequencyHz, sinusoid: { ...guess(tone), frequencyHz: value } };
  });
}

const BROAD = { value: 0.01, standardUncertainty: 0.05 };
const START = { firstHz: 123, inharmonicity: 0.01 };

describe('firstPartialOf', () => {
  it.each([
    ['all', [1, 2, 3, 4, 5]],
    ['the first alone', [1]],
    ['all but the first', [2, 3, 4]],
    ['two', [1, 3]],
  ])('finds partial 1 from %s', (_, numbers) => {
    const { firstHz } = firstPartialOf(
      partials({}, numbers),
      START,
      numbers.length > 1 ? BROAD : { value: 0.006, standardUncertainty: 0.001 },
    );
    expect(Math.abs(firstHz.value / 121 - 1)).toBeLessThan(1e-4);
  });

  it.each([0.0001, 0.006, 0.1])('finds the inharmonicity coefficient %d', (inharmonicity) => {
    const found = firstPartialOf(partials({ inharmonicity }, [1, 2, 3, 4, 5]), { firstHz: 121, inharmonicity: 0.02 }, BROAD).inharmonicity;
    expect(Math.abs(found.value - inharmonicity)).toBeLessThan(0.02 * inharmonicity + 1e-5);
  });

  it('is not pulled by one partial that does not belong', () => {
    const one = firstPartialOf(partials({ off: (m) => (m === 4 ? 0.03 : 0) }, [1, 2, 3, 4, 5, 6]), START, BROAD);
    expect(Math.abs(one.firstHz.value / 121 - 1)).toBeLessThan(0.001);
  });

  it('knows more from more partials, less from partials that are less sure, and no more than the model is exact', () => {
    const u = (relativeU: number, numbers: readonly number[]) =>
      firstPartialOf(partials({ relativeU }, numbers), START, BROAD).firstHz.standardUncertainty / 121;
    expect(u(0.002, [1, 2, 3, 4, 5])).toBeLessThan(u(0.002, [1, 2]));
    expect(u(0.0002, [1, 2, 3])).toBeLessThan(u(0.002, [1, 2, 3]));
    expect(u(0.0002, [2, 3, 4])).toBeGreaterThan(u(0.0002, [1, 2, 3, 4]));
    expect(u(1e-9, [1, 2, 3, 4, 5, 6, 7])).toBeGreaterThan(5e-5);
  });

  it('scatters no more than it says where its partials do as they say', () => {
    const random = createRandom(11);
    const ratios = Array.from({ length: 400 }, () => {
      const drawn = partials({ relativeU: 0.002, off: () => 0.002 * random.gaussian() }, [1, 2, 3, 4]);
      const { firstHz } = firstPartialOf(drawn, START, BROAD);
      return (firstHz.value - 121) / firstHz.standardUncertainty;
    });
    const { mean, sd } = spread(ratios);
    expect(Math.abs(mean)).toBeLessThan(0.25);
    expect(sd).toBeLessThan(1.2); // the model's own share makes it smaller than 1, Huber's weights a little larger
    expect(sd).toBeGreaterThan(0.6);
  });

  it('takes from the prior what the sound does not say', () => {
    const prior = { value: 0.03, standardUncertainty: 0.002 };
    const { inharmonicity, firstHz } = firstPartialOf(partials({ inharmonicity: 0.03 }, [2]), { firstHz: 121, inharmonicity: 0.03 }, prior);
    expect(Math.abs(inharmonicity.value - 0.03)).toBeLessThan(0.0005);
    expect(Math.abs(inharmonicity.standardUncertainty / 0.002 - 1)).toBeLessThan(0.05);
    expect(Math.abs(firstHz.value / 121 - 1)).toBeLessThan(0.001);
  });
});
