import { describe, expect, it } from 'vitest';
import { fundamentalOf } from '../../../../src/core/frequency/fundamental.ts';
import { searchBounds } from '../../../../src/core/frequency/search-bounds.ts';
import type { HeardStretch } from '../../../../src/core/frequency/series-score.ts';
import type { HeardSinusoid } from '../../../../src/core/partials/extract.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { spanOf } from '../../../support/heard.ts';
import { stiffPartials, type Tone } from '../../../support/tones.ts';

const UNTOLD = searchBounds({ ends: UNKNOWN_ENDS });
const TOLD = searchBounds(spanOf(0.15));

/** Sinusoids as the extraction gives them: well over the noise, known to 0.02 Hz; the fainter, the less they weigh. */
function heard(list: readonly Tone[]): HeardStretch {
  const strongest = Math.max(...list.map(({ amplitude }) => amplitude));
  const sinusoids = list.map(
    ({ frequencyHz, amplitude, decayS = 0.15 }): HeardSinusoid => ({
      frequencyHz,
      decayPerS: 1 / decayS,
      re: amplitude,
      im: 0,
      frequencyU: 0.02,
      overNoise: 1e4,
      isOfRoom: false,
      weight: Math.max(0, 1 + Math.log10(amplitude / strongest) / 2),
    }),
  );
  return { sinusoids, audibleAmplitude: () => 0.001 };
}

const belt = (numbers: readonly number[], { firstHz = 121, inharmonicity = 0.006 } = {}) =>
  stiffPartials({ firstHz, inharmonicity, numbers, amplitude: 0.3, decayS: 0.18 });

/** The answer to the same ring heard from two starts. */
const answer = (list: readonly Tone[], bounds = UNTOLD) => fundamentalOf([heard(list), heard(list)], bounds);
const firstHz = (list: readonly Tone[], bounds = UNTOLD) => answer(list, bounds)?.best.series.firstHz ?? 0;

describe('the numbering', () => {
  it.each([
    ['slack', 42, 0.003],
    ['usual', 121, 0.006],
    ['short', 310, 0.03],
    ['stiff', 380, 0.15],
  ])('of a full series is its own: %s', (_, hz, inharmonicity) => {
    const found = answer(belt([1, 2, 3, 4, 5, 6], { firstHz: hz, inharmonicity }))!;
    expect(found.best.series.firstHz / hz).toBeCloseTo(1, 2);
    expect([...found.best.heard].sort(([a], [b]) => a - b)).toEqual([1, 2, 3, 4, 5, 6].map((m, i) => [m, i]));
    expect(found.best.ownShare).toBeCloseTo(1, 9);
    expect(found.best.unexplained).toBe(0);
  });

  it.each([
    ['the first', [2, 3, 4, 5]],
    ['the second', [1, 3, 4, 5]],
    ['the second and fourth: plucked in the middle', [1, 3, 5]],
    ['the third and sixth: plucked at a third', [1, 2, 4, 5, 7]],
  ])('stands where partials are missing: %s', (_, numbers) => {
    for (const bounds of [UNTOLD, TOLD]) {
      const found = answer(belt(numbers), bounds)!;
      expect(found.best.series.firstHz / 121).toBeCloseTo(1, 1);
      expect([...found.best.heard.keys()].sort((a, b) => a - b)).toEqual(numbers);
    }
  });

  it('is not an octave below, nor above, nor a third of it', () => {
    for (const numbers of [
      [1, 2],
      [1, 2, 3],
      [1, 2, 3, 4, 5, 6, 7],
      [1, 2, 4],
    ]) {
      for (const hz of [65, 121, 240]) expect(firstHz(belt(numbers, { firstHz: hz, inharmonicity: 0.002 })) / hz).toBeCloseTo(1, 1);
    }
  });

  it('does not depend on the order in which the sinusoids were found', () => {
    const list = belt([1, 2, 3, 4, 5]);
    expect(firstHz(list.toReversed())).toBeCloseTo(firstHz(list), 9);
  });

  it('survives a stranger, and counts it', () => {
    const found = answer([...belt([1, 2, 3, 4, 5]), { frequencyHz: 287, amplitude: 0.1 }])!;
    expect(found.best.series.firstHz / 121).toBeCloseTo(1, 2);
    expect(found.best.unexplained).toBeGreaterThan(0.3);
    expect(found.best.ownShare).toBeLessThan(1);
    expect(found.best.ownShare).toBeGreaterThan(0.5);
  });
});

describe('the evidence', () => {
  it('grows with each partial that fits', () => {
    const of = (numbers: readonly number[]) => answer(belt(numbers))!.best.score;
    expect(of([1, 2, 3])).toBeGreaterThan(of([1, 2]));
    expect(of([1, 2, 3, 4])).toBeGreaterThan(of([1, 2, 3]));
  });

  it('is more for a series than for frequencies that fit none', () => {
    const noSeries = [121, 161, 223, 302, 377].map((frequencyHz, i) => ({ frequencyHz, amplitude: 0.3 / (i + 1) }));
    expect(answer(belt([1, 2, 3, 4, 5]))!.evidence).toBeGreaterThan(2 * (answer(noSeries)?.evidence ?? 0));
  });

  it('names a rival, which is another fundamental and scores no higher', () => {
    for (const list of [belt([1, 2, 3, 4]), belt([2, 3, 4]), belt([1, 3])]) {
      const { best, rival } = answer(list)!;
      expect(Math.abs(Math.log(rival!.series.firstHz / best.series.firstHz))).toBeGreaterThan(0.02);
      expect(rival!.score).toBeLessThanOrEqual(best.score);
    }
  });

  it('leads less where two numberings are near even: two partials a fifth apart may be 2 and 3, or 1 and a stiff 2', () => {
    const lead = (list: readonly Tone[]) => {
      const { best, rival } = answer(list)!;
      return best.score - rival!.score;
    };
    expect(lead(belt([2, 3]))).toBeLessThan(lead(belt([1, 2, 3, 4, 5])));
  });

  it('adds over the starts: what is heard only from the first is worth less', () => {
    const [whole, poor] = [heard(belt([1, 2, 3, 4])), heard(belt([1]))];
    expect(fundamentalOf([whole, poor], UNTOLD)!.best.score).toBeLessThan(fundamentalOf([whole, whole], UNTOLD)!.best.score);
  });
});

describe('what is known of the span', () => {
  it('bounds the search: one tone alone is partial 1 of the span that can have it there', () => {
    for (const hz of [60, 121, 250]) expect(firstHz(belt([1], { firstHz: hz }), TOLD) / hz).toBeCloseTo(1, 2);
  });

  it('leaves nothing where no partial of the span can be', () => {
    expect(answer(belt([1], { firstHz: 19 }), searchBounds(spanOf(0.05)))).toBeUndefined();
  });

  it('prefers a fundamental among the forces that are expected, never against clear evidence', () => {
    const expecting = (lowN: number, highN: number) => searchBounds(spanOf(0.15, undefined, { expectedForceN: { lowN, highN } }));
    // 121 Hz are about 9 to 10 N on 150 mm of 7.8 g/m.
    expect(firstHz(belt([1, 2, 3, 4, 5]), expecting(8, 12)) / 121).toBeCloseTo(1, 2);
    expect(firstHz(belt([1, 2, 3, 4, 5]), expecting(30, 40)) / 121).toBeCloseTo(1, 2);
  });
});

it('nothing heard is nothing', () => {
  expect(answer([])).toBeUndefined();
});
