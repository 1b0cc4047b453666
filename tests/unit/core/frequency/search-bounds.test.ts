import { describe, expect, it } from 'vitest';
import { searchBounds } from '../../../../src/core/frequency/search-bounds.ts';
import { UNKNOWN_ENDS } from '../../../../src/core/setup.ts';
import { partialHz } from '../../../../src/core/vibration/beam.ts';
import { spanOf, WEIGHED_BELT } from '../../../support/heard.ts';

const { low, high } = WEIGHED_BELT.bendingStiffnessNm2 as { low: number; high: number };

describe.each([0.06, 0.15, 0.4])('a span of %d m', (spanLengthM) => {
  const bounds = searchBounds(spanOf(spanLengthM));

  it('may ring wherever a beam like it does, under any force of a small machine, any ends, any stiffness told', () => {
    for (const forceN of [1, 5, 20, 60]) {
      for (const bendingStiffnessNm2 of [low, Math.sqrt(low * high), high]) {
        for (const fixity of [[0, 0] as const, [0.5, 0.5] as const, [1, 1] as const]) {
          const span = { forceN, spanLengthM, linearDensityKgPerM: 0.0078, bendingStiffnessNm2, fixity };
          const firstHz = partialHz({ ...span, number: 1 });
          if (firstHz > 650) continue; // beyond what spans of real use ring at
          expect(firstHz).toBeGreaterThan(bounds.lowestFirstHz);
          expect(firstHz).toBeLessThan(bounds.highestFirstHz);
          // Hinged or clamped, the ratios of the partials are nearly those of B = π² EI/(T L²).
          const inharmonicity = (Math.PI ** 2 * bendingStiffnessNm2) / (forceN * spanLengthM ** 2);
          if (inharmonicity > 0.4) continue;
          const allowed = bounds.inharmonicityAt(firstHz);
          expect(inharmonicity).toBeGreaterThan(0.5 * allowed.low);
          expect(inharmonicity).toBeLessThan(allowed.high);
        }
      }
    }
  });

  it('is searched no further than a span can be: less for a longer or a heavier one', () => {
    expect(bounds.spanTold).toBe(true);
    const longer = searchBounds(spanOf(1.5 * spanLengthM));
    expect(longer.lowestFirstHz).toBeLessThanOrEqual(bounds.lowestFirstHz);
    expect(longer.highestFirstHz).toBeLessThanOrEqual(bounds.highestFirstHz);
    expect(bounds.lowestFirstHz).toBeGreaterThan(5);
  });

  it('is stiffer, the lower it rings', () => {
    expect(bounds.inharmonicityAt(150).high).toBeLessThanOrEqual(bounds.inharmonicityAt(75).high);
    for (const hz of [10, 113, 5000]) {
      const allowed = bounds.inharmonicityAt(hz);
      expect(allowed.low).toBeGreaterThanOrEqual(0);
      expect(allowed.high).toBeGreaterThanOrEqual(allowed.low);
    }
  });
});

it('a stiffness that is known leaves less room than a range', () => {
  const known = { ...WEIGHED_BELT, bendingStiffnessNm2: { kind: 'known', value: { value: 1.2e-4, standardUncertainty: 1e-5 } } as const };
  const [narrow, wide] = [searchBounds(spanOf(0.15, known)).inharmonicityAt(120), searchBounds(spanOf(0.15)).inharmonicityAt(120)];
  expect(narrow.high - narrow.low).toBeLessThan(wide.high - wide.low);
});

it('expected forces give the frequencies of a beam under them, with room', () => {
  const bounds = searchBounds(spanOf(0.15, undefined, { expectedForceN: { lowN: 8, highN: 12 } }));
  const expected = bounds.expectedFirstHz!;
  for (const forceN of [8, 10, 12]) {
    const span = { forceN, spanLengthM: 0.15, linearDensityKgPerM: 0.0078, bendingStiffnessNm2: 1.2e-4, fixity: [0.5, 0.5] as const };
    const firstHz = partialHz({ ...span, number: 1 });
    expect(firstHz).toBeGreaterThan(expected.low);
    expect(firstHz).toBeLessThan(expected.high);
  }
  expect(expected.low).toBeGreaterThan(bounds.lowestFirstHz);
  expect(expected.high).toBeLessThan(bounds.highestFirstHz);
});

it('told nothing, anything a small span does is possible', () => {
  const bounds = searchBounds({ ends: UNKNOWN_ENDS });
  expect(bounds.spanTold).toBe(false);
  expect(bounds.expectedFirstHz).toBeUndefined();
  expect(bounds.lowestFirstHz).toBeLessThanOrEqual(20);
  expect(bounds.highestFirstHz).toBeGreaterThanOrEqual(650);
  expect(bounds.inharmonicityAt(100).low).toBe(0);
  expect(bounds.inharmonicityAt(100).high).toBeGreaterThan(0.2);
});
