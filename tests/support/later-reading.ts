/** A reading of a belt after it was on the bench: the same plucks judged with the catalogue's values and with the bench's. */

import { belts } from '../../shared/belts.ts';
import { answerOf } from '../../src/core/answer.ts';
import type { BenchFit } from '../../src/core/belt/bench-fit.ts';
import type { BenchValue } from '../../src/core/belt/bench-slices.ts';
import { beltKnowledge, ownBelt } from '../../src/core/belt/catalogue.ts';
import type { Measured } from '../../src/core/math/measured.ts';
import type { Random } from '../../src/core/math/random.ts';
import type { PluckSound, Reading } from '../../src/core/outcome.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import type { TrueBelt } from './bench-belt.ts';
import { heardPluck } from './heard.ts';
import { ritzPartialsHz } from './ritz-beam.ts';

const PARTIALS = 3;
const PLUCKS = 3;
const TERMS = 48;
const DOUBTS = { lengthM: 0.0005, frequency: 0.002 } as const;

export interface LaterReadings {
  readonly catalogue: Reading;
  readonly proved: Reading;
}

/** The span's length and every partial are drawn about the truth. */
export function laterReadings(random: Random, belt: TrueBelt, fit: BenchFit, span: { spanLengthM: number; forceN: number }): LaterReadings {
  const hz = ritzPartialsHz({ ...belt, ...span, fixity: [belt.fixity, belt.fixity] }, PARTIALS, TERMS);
  const sounds = Array.from({ length: PLUCKS }, () => pluckOf(hz.map((one) => one * (1 + DOUBTS.frequency * random.gaussian()))));
  const spanLengthM = { value: span.spanLengthM + DOUBTS.lengthM * random.gaussian(), standardUncertainty: DOUBTS.lengthM };
  const row = belts[0]!;
  const measured = ({ value, standardUncertainty }: BenchValue): Measured => ({ value, standardUncertainty });
  const end = { kind: 'known', value: measured(fit.fixity) } as const;
  const proved = ownBelt({
    linearDensityKgPerM: measured(fit.linearDensityKgPerM),
    densityFrom: 'weighed',
    bendingStiffnessNm2: measured(fit.bendingStiffnessNm2),
    ratedForceN: row.ratedForceN.value,
    toothPitchM: row.toothPitchM,
    provedOnWeights: true,
    catalogue: belts,
  });
  const reading = (setup: SpanSetup): Reading => answerOf({ sounds, setup, sampleRateHz: 48_000 }).reading!;
  return {
    catalogue: reading({ spanLengthM, belt: beltKnowledge(row), ends: UNKNOWN_ENDS }),
    proved: reading({ spanLengthM, belt: proved, ends: [end, end] }),
  };
}

function pluckOf(hz: readonly number[]): PluckSound {
  const sound = heardPluck(hz[0]!, { relativeU: DOUBTS.frequency });
  return {
    ...sound,
    partials: sound.partials.map((partial) => {
      const value = hz[partial.number - 1]!;
      return { ...partial, frequencyHz: { value, standardUncertainty: value * DOUBTS.frequency } };
    }),
  };
}
