import { describe, expect, it } from 'vitest';
import { nearestPartial, partialOfSeriesHz, partialRatio, seriesThrough } from '../../../../src/core/partials/series.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';

describe.each([0, 1e-6, 0.004, 0.08, 0.5])('a series of inharmonicity %d', (inharmonicity) => {
  const series = { firstHz: 113, inharmonicity };
  const numbers = [1, 2, 3, 4, 6, 9, 15];

  it('has f0 m sqrt(1 + B m²) for partial m', () => {
    const f0 = 113 / Math.sqrt(1 + inharmonicity);
    for (const m of numbers) expect(partialOfSeriesHz(series, m)).toBeCloseTo(f0 * m * Math.sqrt(1 + inharmonicity * m * m), 8);
  });

  it('knows the number of its own partials, also a little off', () => {
    for (const m of numbers) {
      for (const off of [0.99, 1, 1.01]) expect(nearestPartial(series, off * partialOfSeriesHz(series, m))).toBe(m);
    }
    expect(nearestPartial(series, 0.3 * 113)).toBe(0);
  });

  it('is found again through any two of its partials', () => {
    for (const [a, b] of [
      [1, 2],
      [1, 3],
      [2, 3],
      [3, 7],
    ] as const) {
      const at = (number: number) => ({ number, frequencyHz: partialOfSeriesHz(series, number) });
      const found = seriesThrough(at(a), at(b), 1e-9)!;
      expect(found.firstHz).toBeCloseTo(113, 6);
      expect(found.inharmonicity).toBeCloseTo(inharmonicity, 8);
    }
  });
});

it('is the law of a hinged beam, B = π² EI/(T L²)', () => {
  const span = { forceN: 9, spanLengthM: 0.1, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 2e-4, fixity: [0, 0] as const };
  const inharmonicity = (Math.PI ** 2 * 2e-4) / (9 * 0.1 ** 2);
  for (const m of [2, 3, 5])
    expect(partialRatio(m, inharmonicity)).toBeCloseTo(partialHz({ ...span, number: m }) / partialHz({ ...span, number: 1 }), 9);
});

describe('seriesThrough', () => {
  const lower = { number: 1, frequencyHz: 100 };
  it('gives nothing where partials lie closer than harmonics do, beyond the slack', () => {
    expect(seriesThrough(lower, { number: 2, frequencyHz: 190 }, 0.01)).toBeUndefined();
    expect(seriesThrough(lower, { number: 2, frequencyHz: 199.9 }, 0.01)).toEqual({ firstHz: 100, inharmonicity: 0 });
  });

  it('gives nothing where they lie farther apart than any stiffness takes them', () => {
    expect(seriesThrough(lower, { number: 2, frequencyHz: 400 }, 0.01)).toBeUndefined(); // a beam without force has m²
    expect(seriesThrough(lower, { number: 2, frequencyHz: 390 }, 0.01)).toBeDefined();
  });
});
