/** A belt on the bench as nobody's fit made it: true values, partials by Ritz's method, and what scale, ruler and ear make of them. */

import type { BenchData, BenchPrior } from '../../src/core/belt/bench-data.ts';
import type { Random } from '../../src/core/math/random.ts';
import { ritzPartialsHz } from './ritz-beam.ts';

export interface TrueBelt {
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  /** Of both ends. */
  readonly fixity: number;
}

/** Standard uncertainties of what is read. */
export interface BenchDoubts {
  readonly lengthM: number;
  /** Each weight by itself, relative. */
  readonly force: number;
  /** All weights alike, relative. */
  readonly forceScale: number;
  /** Each partial, relative. */
  readonly frequency: number;
  /** Departure of partial n from the beam for each of its number, alike in all takes. */
  readonly modelEach: number;
}

export interface BenchPlan {
  readonly spansM: readonly number[];
  readonly forcesN: readonly number[];
  readonly partials: number;
}

/** The usual belt as its row in the catalogue has it. */
export const BENCH_PRIOR: BenchPrior = {
  linearDensityKgPerM: { value: 0.0078, standardUncertainty: 0.00078 },
  bendingStiffnessNm2: { low: 5e-5, high: 3e-4 },
};

export const USUAL_DOUBTS: BenchDoubts = { lengthM: 0.0005, force: 0.003, forceScale: 0.001, frequency: 0.002, modelEach: 0.00075 };

/** Two spans, four weights, three partials. */
export const FULL_PLAN: BenchPlan = { spansM: [0.06, 0.24], forcesN: [3, 6, 12, 24], partials: 3 };

/** Polynomials: at the longest span and largest force the third partial has settled to 1e-13. */
const TERMS = 48;

/** Density about the catalogue's, stiffness and ends anywhere in their ranges. */
export function drawTrueBelt(random: Random): TrueBelt {
  const { linearDensityKgPerM: density, bendingStiffnessNm2: stiffness } = BENCH_PRIOR;
  return {
    linearDensityKgPerM: density.value * Math.exp((density.standardUncertainty / density.value) * random.gaussian()),
    bendingStiffnessNm2: stiffness.low * (stiffness.high / stiffness.low) ** random.uniform(),
    fixity: random.uniform(),
  };
}

/** Partials of each span under each force, Hz: what is so before anybody reads it. */
export const truePartials = (belt: TrueBelt, plan: BenchPlan): readonly (readonly (readonly number[])[])[] =>
  plan.spansM.map((spanLengthM) =>
    plan.forcesN.map((forceN) =>
      ritzPartialsHz({ ...belt, forceN, spanLengthM, fixity: [belt.fixity, belt.fixity] }, plan.partials, TERMS),
    ),
  );

/** What the bench reads of the belt. */
export function readBench(
  random: Random,
  belt: TrueBelt,
  plan: BenchPlan = FULL_PLAN,
  doubts: BenchDoubts = USUAL_DOUBTS,
  hz = truePartials(belt, plan),
): BenchData {
  const off = (relative: number): number => 1 + relative * random.gaussian();
  const scale = off(doubts.forceScale);
  const departure = Array.from({ length: plan.partials }, (_, k) => off(doubts.modelEach * (k + 1)));
  const told = (value: number, relative: number) => ({ value, standardUncertainty: value * relative });
  return {
    spans: plan.spansM.map((spanM) => ({
      lengthM: { value: spanM + doubts.lengthM * random.gaussian(), standardUncertainty: doubts.lengthM },
    })),
    loads: plan.forcesN.map((forceN) => ({ forceN: told(forceN * scale * off(doubts.force), doubts.force) })),
    takes: plan.spansM.flatMap((_, span) =>
      plan.forcesN.map((_, load) => ({
        span,
        load,
        sharedRelativeU: 0,
        partials: hz[span]![load]!.map((one, k) => ({
          number: k + 1,
          frequencyHz: told(one * departure[k]! * off(doubts.frequency), doubts.frequency),
        })),
      })),
    ),
    forceScaleRelativeU: doubts.forceScale,
    prior: BENCH_PRIOR,
  };
}
