/** A small seeded part of the gauge benchmark: intervals hold, slips are named, nothing is answered above a stop. Counts, not luck: seed fixed. */

import { expect, it } from 'vitest';
import { GAUGE_KINDS } from '../../../support/gauges/gauge.ts';
import { trialOf } from '../../../support/gauges/trial.ts';

it('holds on five gauges of each kind', () => {
  const trials = GAUGE_KINDS.flatMap((kind) => Array.from({ length: 5 }, (_, index) => trialOf(88, kind, index)));
  const sum = (of: (trial: (typeof trials)[number]) => number) => trials.reduce((total, trial) => total + of(trial), 0);
  expect(trials.every(({ calibration }) => calibration !== undefined)).toBe(true);
  expect(sum(({ held }) => held) / sum(({ answered }) => answered)).toBeGreaterThan(0.93);
  expect(sum(({ held }) => held) / sum(({ answered }) => answered)).toBeLessThan(0.98);
  expect(sum(({ answered }) => answered) / sum(({ asked }) => asked)).toBeGreaterThan(0.7);
  expect(sum(({ planted }) => planted)).toBeGreaterThan(4);
  expect(sum(({ named }) => named) / sum(({ planted }) => planted)).toBeGreaterThan(0.9);
  expect(sum(({ wronglyNamed }) => wronglyNamed) / sum(({ sound }) => sound)).toBeLessThan(0.01);
  expect(sum(({ aboveStop }) => aboveStop)).toBe(50);
  expect(sum(({ answeredAboveStop }) => answeredAboveStop)).toBe(0);
});
