/** A belt plucked at two positions as its partials would be heard: drawn from the beam, with errors of ruler, scale, plucks and of the beam itself. */

import { belts } from '../../shared/belts.ts';
import type { Take } from '../../src/core/answer.ts';
import { ownBelt } from '../../src/core/belt/catalogue.ts';
import type { Random } from '../../src/core/math/random.ts';
import type { HeardPartial, PluckSound } from '../../src/core/outcome.ts';
import { ASSUMED_UNCERTAINTY, type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { partialHz } from '../../src/core/vibration/beam.ts';
import { type DrawnBelt, drawBelt } from './corpus/belt.ts';

export interface TwoTakes {
  readonly takes: readonly [Take, Take];
  /** Of the first position. */
  readonly forceN: number;
}

const PLUCKS = 3;
const PARTIALS = [1, 2, 3, 4];
/** How plucks of one span repeat, and how far partial n of a real belt lies from the beam for each of its number: as the program believes. */
const REPEAT_RELATIVE = 0.004;
const MODEL_RELATIVE_EACH = 0.0025;
const WITHIN_RELATIVE = 0.0003;

/**
 * @param at.spansM        true lengths, up to the ruler's error
 * @param at.forceFactor   force at the second position over that at the first
 */
export function drawTwoTakes(random: Random, at: { readonly spansM: readonly [number, number]; readonly forceFactor: number }): TwoTakes {
  const [first, second] = at.spansM;
  const belt = drawBelt(random, { spanLengthM: [first, first * (1 + 1e-9)] });
  const told = toldBelt(random, belt);
  const take = (spanLengthM: number, forceN: number): Take => ({
    sounds: heard(random, { ...belt, spanLengthM, forceN }),
    sampleRateHz: 48_000,
    setup: { belt: told, ends: UNKNOWN_ENDS, spanLengthM: ruled(random, spanLengthM) },
  });
  return { takes: [take(first, belt.forceN), take(second, belt.forceN * at.forceFactor)], forceN: belt.forceN };
}

/** Weighed once; of stiffness and ends nothing is known. */
function toldBelt(random: Random, belt: DrawnBelt): SpanSetup['belt'] {
  const u = ASSUMED_UNCERTAINTY.linearDensityRelative;
  const value = belt.linearDensityKgPerM * Math.exp(u * random.gaussian());
  return ownBelt({
    linearDensityKgPerM: { value, standardUncertainty: u * value },
    densityFrom: 'weighed',
    toothPitchM: belt.toothPitchM,
    catalogue: belts,
  });
}

const ruled = (random: Random, spanLengthM: number): SpanSetup['spanLengthM'] => ({
  value: spanLengthM + ASSUMED_UNCERTAINTY.spanLengthM * random.gaussian(),
  standardUncertainty: ASSUMED_UNCERTAINTY.spanLengthM,
});

function heard(random: Random, belt: Omit<DrawnBelt, 'fundamentalHz' | 'toothPitchM'>): readonly PluckSound[] {
  const places = PARTIALS.map((number) => partialHz({ ...belt, number }) * Math.exp(MODEL_RELATIVE_EACH * number * random.gaussian()));
  return Array.from({ length: PLUCKS }, (_, index): PluckSound => {
    const shift = Math.exp(REPEAT_RELATIVE * random.gaussian());
    const partials = PARTIALS.map((number, i): HeardPartial => {
      const value = places[i]! * shift * Math.exp(WITHIN_RELATIVE * random.gaussian());
      const standardUncertainty = WITHIN_RELATIVE * value;
      return { number, frequencyHz: { value, standardUncertainty }, levelDbfs: -9 - 10 * i, decayS: 0.15 / number };
    });
    return {
      startS: index,
      frequencyHz: partials[0]!.frequencyHz,
      partials,
      evidence: {
        cyclesToDecay: 15,
        levelOverBackgroundDb: 40,
        clippedShare: 0,
        glideRelative: 0.0005,
        leadOverRival: 7,
        foreignHz: [],
        ownShare: 1,
        firstPartialHeard: true,
        bandwidthHz: 24_000,
      },
    };
  });
}
