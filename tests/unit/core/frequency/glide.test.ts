import { describe, expect, it } from 'vitest';
import { glideOf, type LaterFit } from '../../../../src/core/frequency/glide.ts';
import type { FittedPartial } from '../../../../src/core/frequency/refine.ts';
import { createRandom } from '../../../../src/core/synthesis/random.ts';

const decayS = 0.16;
const numbers = [1, 2, 3, 4];

const at = (relative: (m: number) => number, relativeU: number, of: readonly number[] = numbers): FittedPartial[] =>
  of.map((number) => {
    const value = 121 * number * (1 + relative(number));
    return {
      number,
      frequencyHz: { value, standardUncertainty: relativeU * value },
      sinusoid: { frequencyHz: value, decayPerS: 1 / decayS, re: 0.1, im: 0 },
    };
  });

/** The offset of a stretch that begins d later is exp(−2 d/τ) of that of the first. */
const later = (offset: number, relativeU: number, more: (m: number) => number = () => 0, of?: readonly number[]): LaterFit[] =>
  [0.1, 0.2].map((laterS) => ({ laterS, partials: at((m) => offset * Math.exp((-2 * laterS) / decayS) + more(m), relativeU, of) }));

describe('glideOf', () => {
  it.each([0.003, 0.01, 0.04])('finds an offset of %d', (offset) => {
    const { value, standardUncertainty } = glideOf(
      at(() => offset, 1e-4),
      later(offset, 2e-4),
      decayS,
    );
    // A glide of nothing is the prior; it pulls by a share of the offset that is small where the partials are sure.
    expect(Math.abs(value / offset - 1)).toBeLessThan(0.15);
    expect(value).toBeLessThan(1.02 * offset);
    expect(standardUncertainty).toBeGreaterThan(0);
    expect(standardUncertainty).toBeLessThan(0.002);
  });

  it('finds none where there is none', () => {
    const { value, standardUncertainty } = glideOf(
      at(() => 0, 1e-4),
      later(0, 2e-4),
      decayS,
    );
    expect(Math.abs(value)).toBeLessThan(1e-9);
    expect(standardUncertainty).toBeLessThan(0.002);
  });

  it('never says that a span rises much as it dies', () => {
    expect(
      glideOf(
        at(() => -0.02, 1e-4),
        later(-0.02, 2e-4),
        decayS,
      ).value,
    ).toBeGreaterThan(-0.003);
  });

  it('without a later stretch knows no more than before', () => {
    const none = glideOf(
      at(() => 0.01, 1e-4),
      [],
      decayS,
    );
    expect(none.value).toBe(0);
    expect(none.standardUncertainty).toBeGreaterThan(
      glideOf(
        at(() => 0.01, 1e-4),
        later(0.01, 2e-4),
        decayS,
      ).standardUncertainty,
    );
    expect(
      glideOf(
        at(() => 0.01, 1e-4, [1, 2]),
        later(0.01, 2e-4, () => 0, [3, 4]),
        decayS,
      ),
    ).toEqual(none);
  });

  it('is not led astray by one partial that wanders', () => {
    const wandering = later(0.01, 2e-4, (m) => (m === 3 ? 0.02 : 0));
    expect(
      Math.abs(
        glideOf(
          at(() => 0.01, 1e-4),
          wandering,
          decayS,
        ).value /
          0.01 -
          1,
      ),
    ).toBeLessThan(0.25);
  });

  it('takes little from partials that are not sure', () => {
    const random = createRandom(2);
    for (let draw = 0; draw < 50; draw++) {
      const noisy = later(0, 0.02, () => 0.02 * random.gaussian());
      expect(
        Math.abs(
          glideOf(
            at(() => 0, 0.01),
            noisy,
            decayS,
          ).value,
        ),
      ).toBeLessThan(0.003);
    }
  });
});
