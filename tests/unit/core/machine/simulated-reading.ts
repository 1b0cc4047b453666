/** A take of typical plucks, synthesised and measured: what the plan is held against. */

import { PLANNED_PEAK_DBFS, PLANNED_PLUCKS, typicalPluck } from '../../../../src/core/machine/typical-pluck.ts';
import { measure } from '../../../../src/core/measure.ts';
import type { Reading } from '../../../../src/core/outcome.ts';
import type { Recording } from '../../../../src/core/samples/recording.ts';
import type { SpanSetup } from '../../../../src/core/setup.ts';
import { synthesiseTake } from '../../../../src/core/synthesis/take.ts';

/** Enough for four partials of the shortest span, and quickly made. */
const SAMPLE_RATE_HZ = 16_000;

/** Three plucks at slightly different places of a span that is what is known of it in the middle. */
export function typicalTake(setup: SpanSetup, forceN: number, seed: number): Recording {
  const { span, pluck, listener } = typicalPluck(setup, forceN)!;
  const plucks = Array.from({ length: PLANNED_PLUCKS }, (_, i) => ({
    ...pluck,
    startS: 0.9 + 0.8 * i,
    placeShare: pluck.placeShare - 0.02 * (i - 1),
  }));
  const description = { span, listener, plucks, sampleRateHz: SAMPLE_RATE_HZ, durationS: 3.4, peakDbfs: PLANNED_PEAK_DBFS, scrapeDb: -16 };
  return synthesiseTake({ ...description, background: { pinkDbfs: -48, whiteDbfs: -54 } }, seed);
}

export function simulatedReading(setup: SpanSetup, forceN: number, seed: number): Reading | undefined {
  const { outcome } = measure(typicalTake(setup, forceN, seed), setup);
  return outcome.kind === 'reading' ? outcome : undefined;
}
