/** Plucks and spans for tests that begin after the sound was analysed: clean ones, with whatever shall be wrong put in. */

import type { PluckSound, SoundEvidence } from '../../src/core/outcome.ts';
import { type BeltKnowledge, type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';

const CLEAN: SoundEvidence = {
  cyclesToDecay: 22,
  levelOverBackgroundDb: 45,
  clippedShare: 0,
  glideRelative: 0.002,
  leadOverRival: 9,
  foreignHz: [],
  ownShare: 0.97,
  firstPartialHeard: true,
  bandwidthHz: 24_000,
};

/** A pluck heard at `frequencyHz`, known to 0.1 % unless told otherwise. */
export function heardPluck(
  frequencyHz: number,
  {
    relativeU = 0.001,
    partialNumbers = [1, 2, 3],
    ...evidence
  }: Partial<SoundEvidence> & { relativeU?: number; partialNumbers?: number[] } = {},
): PluckSound {
  const measured = (value: number) => ({ value, standardUncertainty: value * relativeU });
  return {
    startS: 0.5,
    frequencyHz: measured(frequencyHz),
    partials: partialNumbers.map((number) => ({ number, frequencyHz: measured(number * frequencyHz), levelDbfs: -20, decayS: 0.2 })),
    evidence: { ...CLEAN, ...evidence },
  };
}

/** 2 mm pitch, 6 mm wide: the density weighed to 2 %, the stiffness a range. */
export const WEIGHED_BELT: BeltKnowledge = {
  linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.000156 },
  densityFrom: 'weighed',
  bendingStiffnessNm2: { kind: 'range', low: 5e-5, high: 3e-4 },
  ratedForceN: 26,
  toothPitchM: 0.002,
};

/** The same from the catalogue, nobody having weighed it. */
export const CATALOGUE_BELT: BeltKnowledge = {
  ...WEIGHED_BELT,
  linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00078 },
  densityFrom: 'catalogue',
};

/** A span measured to half a millimetre, its ends not known. */
export const spanOf = (spanLengthM: number, belt: BeltKnowledge = WEIGHED_BELT, more: Partial<SpanSetup> = {}): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 },
  belt,
  ends: UNKNOWN_ENDS,
  ...more,
});
