/** Recordings of one belt at two lengths, for a browser that opens files: three typical plucks each, as `simulated-reading` makes them. */

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { belts } from '../../shared/belts.ts';
import { ownBelt } from '../../src/core/belt/catalogue.ts';
import { setupAt } from '../../src/core/machine/plan.ts';
import { writeWav } from '../../src/core/samples/wav.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { typicalTake } from '../unit/core/machine/simulated-reading.ts';

const SETUP: SpanSetup = {
  belt: ownBelt({ linearDensityKgPerM: { value: 0.0079, standardUncertainty: 0.00004 }, densityFrom: 'stated', catalogue: belts }),
  ends: UNKNOWN_ENDS,
};
/** What a person would type of that belt. */
export const TWO_DENSITY = '7.9 ± 0.08 g/m';

export function recordingAt(spanMm: number, forceN: number): string {
  const path = join(mkdtempSync(join(tmpdir(), 'two-')), `${spanMm}mm.wav`);
  writeFileSync(path, writeWav({ recording: typicalTake(setupAt({ setup: SETUP }, spanMm / 1000), forceN, spanMm), format: 'pcm16' }));
  return path;
}
