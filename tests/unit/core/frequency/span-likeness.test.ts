import { describe, expect, it } from 'vitest';
import type { Fundamental } from '../../../../src/core/frequency/fundamental.ts';
import type { FittedPartial } from '../../../../src/core/frequency/refine.ts';
import { type Likeness, likenessOf, unlikeSpan } from '../../../../src/core/frequency/span-likeness.ts';
import type { PluckSegment } from '../../../../src/core/pluck/segment.ts';
import { tones } from '../../../support/tones.ts';

const rateHz = 8000;

/** A sound from its touch on in a room of white noise. */
function segmentOf(envelope: (s: number) => number, noise = 1e-3): PluckSegment {
  const tone = tones([{ frequencyHz: 121, amplitude: 0.3 }], { rateHz, count: 4800 });
  const room = tones([], { rateHz, count: 4800, noise });
  const samples = room.map((x, t) => x + tone[t]! * envelope(t / rateHz));
  const background = { rateHz, heardS: 0.7, lines: [], moving: [], lineRemains: 0.03, noiseAt: () => noise ** 2 };
  return { samples, heard: samples, rateHz, startS: 0, background };
}

const fitted = (decayS: number, amplitude = 0.3, frequencyHz = 121): FittedPartial[] => [
  {
    number: 1,
    frequencyHz: { value: frequencyHz, standardUncertainty: 0.01 },
    sinusoid: { frequencyHz, decayPerS: 1 / decayS, re: amplitude, im: 0 },
  },
];
const fundamental: Fundamental = {
  best: { series: { firstHz: 121, inharmonicity: 0.006 }, score: 11, heard: new Map([[1, 0]]), unexplained: 0.2, ownShare: 0.9 },
  evidence: 13,
};
const likeness = (segment: PluckSegment, decayS = 0.15, later: Parameters<typeof likenessOf>[1]['later'] = []) =>
  likenessOf(segment, { fundamental, fitted: fitted(decayS), later });

describe('likenessOf', () => {
  it('measures how a ring dies by its levels: an exponential loses 8.686 dB in each decay time', () => {
    for (const decayS of [0.08, 0.15, 0.3]) {
      const { swellDb, lossDb } = likeness(segmentOf((s) => Math.exp(-s / decayS)));
      const meanDb = (fromS: number, toS: number) =>
        10 * Math.log10((Math.exp((-2 * fromS) / decayS) - Math.exp((-2 * toS) / decayS)) / (toS - fromS));
      expect(Math.abs(swellDb - (meanDb(0.04, 0.09) - meanDb(0.01, 0.04)))).toBeLessThan(0.5);
      expect(Math.abs(lossDb - (meanDb(0.01, 0.05) - meanDb(0.2, 0.3)))).toBeLessThan(0.5);
    }
  });

  it('takes the room’s noise out of the levels', () => {
    const [quiet, noisy] = [1e-4, 0.05].map((noise) => likeness(segmentOf((s) => Math.exp(-s / 0.15), noise)));
    expect(Math.abs(quiet!.lossDb - noisy!.lossDb)).toBeLessThan(1.5);
  });

  it('sees a note swell, and one that is held', () => {
    expect(likeness(segmentOf((s) => Math.min(1, s / 0.1))).swellDb).toBeGreaterThan(4);
    expect(Math.abs(likeness(segmentOf(() => 1)).lossDb)).toBeLessThan(0.5);
  });

  it('compares partials heard later with the exponential that they began', () => {
    const segment = segmentOf((s) => Math.exp(-s / 0.15));
    const laterS = 0.1;
    const kept = 0.3 * Math.exp(-laterS / 0.15);
    const asPromised = likeness(segment, 0.15, [{ laterS, partials: fitted(0.15, kept) }]);
    expect(Math.abs(asPromised.decayMisfitDb)).toBeLessThan(1e-6);
    const otherwise = likeness(segment, 0.15, [{ laterS, partials: fitted(0.15, 2 * kept, 122.21) }]);
    expect(otherwise.decayMisfitDb).toBeCloseTo(20 * Math.log10(2), 4);
  });

  it('gives numbers for the shortest and the most silent', () => {
    const short = { ...segmentOf(() => 1), samples: new Float64Array(80) };
    for (const value of Object.values(likeness(short))) expect(Number.isNaN(value)).toBe(false);
  });
});

describe('unlikeSpan', () => {
  const belt = likeness(segmentOf((s) => Math.exp(-s / 0.15)));
  const unlike = (change: Partial<Likeness>, spanTold = true) => unlikeSpan({ ...belt, ...change }, spanTold);

  it('has nothing against a plucked belt', () => {
    expect(unlike({})).toBeUndefined();
    expect(unlike({}, false)).toBeUndefined();
  });

  // Far beyond any place where the line may be drawn.
  it.each([
    ['without a series', { evidence: 0.5, score: 0.5 }],
    ['mostly of strangers, with little of a series', { evidence: 3.5, score: 3.2, ownShare: 0.1, unexplained: 5 }],
    ['that is over at once and mostly strange', { decayS: 0.009, shortestDecayS: 0.009, ownShare: 0.2 }],
    ['that swells', { swellDb: 8 }],
    ['that is held', { lossDb: 0, decayS: 3, shortestDecayS: 3 }],
    ['that rings on like a bell', { longestCycles: 250, evidence: 9, score: 7 }],
    ['of many sources that last', { unexplained: 6, ownShare: 0.3, lossDb: 3, score: 6, evidence: 7 }],
  ])('refuses a sound %s', (_, change) => {
    expect(unlike(change)).toBeDefined();
  });

  it('without a span leaves room for strings that swell', () => {
    expect(unlike({ swellDb: 3 }, false)).toBeUndefined();
    expect(unlike({ evidence: 0.5, score: 0.5 }, false)).toBeDefined();
  });
});
