/** A span of which only the second partial rings, since something rests on its middle: by the sound alone it may as well be the first of a tighter one. */

import { writeWav } from '../../src/core/samples/wav.ts';
import { spanPartialHz } from '../../src/core/synthesis/span.ts';
import { synthesiseTake } from '../../src/core/synthesis/take.ts';

export const OCTAVE_SPAN = {
  forceN: 8,
  spanLengthM: 0.25,
  linearDensityKgPerM: 0.00782,
  bendingStiffnessNm2: 1.2e-4,
  fixity: [0.3, 0.3] as const,
  axialStiffnessN: 6000,
  decayS: 0.2,
  dampingGrowth: 0.15,
};

export const octaveTruth = {
  frequencyHz: spanPartialHz(OCTAVE_SPAN, 1),
  forceN: OCTAVE_SPAN.forceN,
  spanLengthM: OCTAVE_SPAN.spanLengthM,
  linearDensityKgPerM: OCTAVE_SPAN.linearDensityKgPerM,
};

/** @param startsS  of the plucks, each at a quarter of the span with something on its middle */
export function octaveTake(startsS: readonly number[]): Uint8Array<ArrayBuffer> {
  const recording = synthesiseTake(
    {
      sampleRateHz: 48_000,
      durationS: startsS.at(-1)! + 1.6,
      span: OCTAVE_SPAN,
      plucks: startsS.map((startS) => ({ startS, placeShare: 0.25, heightM: 0.0003, fingerWidthM: 0.012, touchedMiddle: true })),
      listener: { placeShare: 0.27, distanceM: 0.03 },
      peakDbfs: -10,
      scrapeDb: -18,
      background: { pinkDbfs: -56, whiteDbfs: -62 },
    },
    7,
  );
  return writeWav({ recording, format: 'pcm16' });
}
