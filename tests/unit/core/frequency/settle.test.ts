import { expect, it } from 'vitest';
import { settledSeries } from '../../../../src/core/frequency/settle.ts';
import type { HeardSinusoid } from '../../../../src/core/partials/extract.ts';
import { partialOfSeriesHz } from '../../../../src/core/partials/series.ts';

const heard = (frequencyHz: number): HeardSinusoid => ({
  frequencyHz,
  decayPerS: 6,
  re: 0.1,
  im: 0,
  frequencyU: 0.01,
  overNoise: 1e4,
  weight: 0.8,
  isOfRoom: false,
});
const truth = { firstHz: 121, inharmonicity: 0.006 };
const partials = [1, 2, 3, 4, 5].map((number) => heard(partialOfSeriesHz(truth, number)));
const ALLOWED = { low: 0, high: 0.5 };

it('brings a series that is nearly right to its partials', () => {
  const settled = settledSeries({ firstHz: 121.3, inharmonicity: 0.0055 }, partials, ALLOWED);
  expect(settled.firstHz / 121).toBeCloseTo(1, 4);
  expect(Math.abs(settled.inharmonicity - 0.006)).toBeLessThan(2e-4);
});

it('keeps the stiffness that it began with where one partial says nothing of it', () => {
  const settled = settledSeries({ firstHz: 121, inharmonicity: 0.02 }, partials.slice(0, 1), ALLOWED);
  expect(settled.inharmonicity).toBeCloseTo(0.02, 6);
});

it('is no stiffer than allowed', () => {
  expect(settledSeries({ firstHz: 121, inharmonicity: 0.004 }, partials, { low: 0, high: 0.003 }).inharmonicity).toBeLessThanOrEqual(0.003);
});

it('stays where no partial is near', () => {
  const start = { firstHz: 170, inharmonicity: 0.01 };
  const settled = settledSeries(start, [heard(245)], ALLOWED);
  expect(settled.firstHz).toBeCloseTo(170, 9);
  expect(settled.inharmonicity).toBeCloseTo(0.01, 9);
});
