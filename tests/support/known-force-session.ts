/** A simulated session of plucks under hanging weights, as the validation kit leaves it: recordings with their truth beside them. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TakeTruth } from '../../shared/take-truth.ts';
import { writeWav } from '../../src/core/samples/wav.ts';
import { synthesiseTake } from '../../src/core/synthesis/take.ts';

export interface Session {
  readonly spansM: readonly number[];
  readonly forcesN: readonly number[];
  /** Told density over the true one. */
  readonly toldDensity?: number;
  /** Told span minus the true one, m. */
  readonly toldLonger?: number;
}

const BELT = { linearDensityKgPerM: 0.00781, bendingStiffnessNm2: 1.1e-4, fixity: [0.3, 0.45] as const };

export interface SessionTake {
  readonly name: string;
  readonly wav: Uint8Array;
  readonly truth: TakeTruth;
}

export const sessionTakes = ({ spansM, forcesN, toldDensity = 1, toldLonger = 0 }: Session): readonly SessionTake[] =>
  spansM.flatMap((spanLengthM, spanIndex) =>
    forcesN.map((forceN, forceIndex) => {
      const seed = 900 + 10 * spanIndex + forceIndex;
      const recording = synthesiseTake(
        {
          sampleRateHz: 24_000,
          durationS: 2.2,
          span: { ...BELT, forceN, spanLengthM, axialStiffnessN: 6000, decayS: 0.19, dampingGrowth: 0.05 },
          plucks: [
            { startS: 0.7, placeShare: 0.36, heightM: 0.0003, fingerWidthM: 0.01 },
            { startS: 1.4, placeShare: 0.33, heightM: 0.00025, fingerWidthM: 0.011 },
          ],
          listener: { placeShare: 0.31, distanceM: 0.02 },
          peakDbfs: -8,
          scrapeDb: -16,
          background: { pinkDbfs: -58, whiteDbfs: -66 },
        },
        seed,
      );
      return {
        name: `take-${spanIndex + 1}-${forceIndex + 1}`,
        wav: writeWav({ recording, format: 'pcm16' }),
        truth: {
          description: 'Simulated session under weights.',
          forceN,
          forceUN: 0.002 * forceN,
          spanLengthM: spanLengthM + toldLonger,
          spanLengthUM: 0.0003,
          linearDensityKgPerM: BELT.linearDensityKgPerM * toldDensity,
          linearDensityUKgPerM: 0.00004,
          densityFrom: 'weighed',
          source: 'synthesised by core/synthesis',
          licence: 'MIT',
        },
      };
    }),
  );

export function writeSession(folder: string, session: Session): void {
  mkdirSync(folder, { recursive: true });
  for (const { name, wav, truth } of sessionTakes(session)) {
    writeFileSync(join(folder, `${name}.wav`), wav);
    writeFileSync(join(folder, `${name}.json`), `${JSON.stringify(truth, undefined, 2)}\n`);
  }
}
