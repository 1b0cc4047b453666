/** A belt plucked lightly in a quiet room: the take that tests change one thing of. */

import { spanPartialHz } from '../../src/core/synthesis/span.ts';
import { synthesiseTake, type TakeDescription } from '../../src/core/synthesis/take.ts';

type Changes = Omit<Partial<TakeDescription>, 'span'> & { readonly span?: Partial<TakeDescription['span']> | undefined };

/** One pluck at 0.5 s on 150 mm. */
export const PLAIN: TakeDescription = {
  sampleRateHz: 16_000,
  durationS: 1.4,
  span: {
    forceN: 10.3,
    spanLengthM: 0.15,
    linearDensityKgPerM: 0.0078,
    bendingStiffnessNm2: 1.2e-4,
    fixity: [0.45, 0.55],
    axialStiffnessN: 4000,
    decayS: 0.19,
    dampingGrowth: 0.05,
  },
  plucks: [{ startS: 0.5, placeShare: 0.36, heightM: 0.0003, fingerWidthM: 0.01 }],
  listener: { placeShare: 0.31, distanceM: 0.02 },
  peakDbfs: -8,
  scrapeDb: -16,
  background: { pinkDbfs: -58, whiteDbfs: -66 },
};

/** The take with the changes, and the first partial of its span at small amplitude, undamped. */
export function plainTake({ span, ...changes }: Changes = {}, seed = 1) {
  const description: TakeDescription = { ...PLAIN, ...changes, span: { ...PLAIN.span, ...span } };
  return { recording: synthesiseTake(description, seed), firstHz: spanPartialHz(description.span, 1), description };
}
