/** A span plucked three times in a quiet room, as a file that a page can be given. */

import { writeWav } from '../../src/core/samples/wav.ts';
import { plainTake } from './plain-take.ts';

export interface PluckedSpan {
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  /** Of both ends. */
  readonly fixity: number;
  readonly spanLengthM: number;
  readonly forceN: number;
}

export function writtenPluck({ fixity, ...span }: PluckedSpan, seed = 1) {
  const { recording } = plainTake(
    {
      sampleRateHz: 32_000,
      durationS: 4,
      span: { ...span, fixity: [fixity, fixity] },
      plucks: [0.6, 1.7, 2.8].map((startS) => ({ startS, placeShare: 0.36, heightM: 0.0001, fingerWidthM: 0.004 })),
    },
    seed,
  );
  return { name: 'span.wav', mimeType: 'audio/wav', buffer: Buffer.from(writeWav({ recording, format: 'pcm16' })) };
}
