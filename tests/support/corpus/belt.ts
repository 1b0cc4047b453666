/** The belts and spans of the corpus, drawn over the range of real use, and what their owner tells of them. */

import { belts } from '../../../shared/belts.ts';
import { ownBelt, stiffnessLike } from '../../../src/core/belt/catalogue.ts';
import { ASSUMED_UNCERTAINTY, type SpanSetup, UNKNOWN_ENDS } from '../../../src/core/setup.ts';
import type { Random } from '../../../src/core/synthesis/random.ts';
import { partialHz } from '../../../src/core/vibration/beam.ts';
import { happens, logBetween, oneOf } from './chance.ts';
import type { BeamBelt } from './mode-shapes.ts';

export interface DrawnBelt extends BeamBelt {
  readonly toothPitchM: number;
  readonly fundamentalHz: number;
}

/** What a kind asks of its belts. */
export interface BeltWish {
  readonly spanLengthM?: readonly [number, number] | undefined;
  readonly forceN?: readonly [number, number] | undefined;
  readonly fundamentalHz?: readonly [number, number] | undefined;
  /** sqrt(EI/T)/L. */
  readonly stiffness?: readonly [number, number] | undefined;
  readonly mostFixity?: number | undefined;
}

/** A belt bears this much for its mass, N per kg/m: 26 N at 7.8 g/m is what a handbook allows a 6 mm belt. */
const MOST_FORCE_PER_DENSITY = 4200;

export function drawBelt(random: Random, wish: BeltWish = {}): DrawnBelt {
  const { spanLengthM: lengths = [0.04, 0.6], forceN: forces = [1, 60], fundamentalHz: pitch = [25, 650], stiffness = [0, 0.12] } = wish;
  for (;;) {
    const toothPitchM = oneOf(random, [0.002, 0.003]);
    const linearDensityKgPerM = toothPitchM === 0.002 ? logBetween(random, 0.005, 0.016) : logBetween(random, 0.009, 0.03);
    const { low, high } = stiffnessLike({ linearDensityKgPerM, toothPitchM, catalogue: belts });
    const [endA, endB] = drawEnds(random);
    const most = wish.mostFixity ?? 1;
    const belt = {
      forceN: logBetween(random, forces[0], forces[1]),
      spanLengthM: logBetween(random, lengths[0], lengths[1]),
      linearDensityKgPerM,
      bendingStiffnessNm2: logBetween(random, low, high),
      fixity: [Math.min(most, endA), Math.min(most, endB)] as const,
    };
    if (belt.forceN > MOST_FORCE_PER_DENSITY * linearDensityKgPerM) continue;
    const bent = Math.sqrt(belt.bendingStiffnessNm2 / belt.forceN) / belt.spanLengthM;
    if (bent < stiffness[0] || bent > stiffness[1]) continue;
    const fundamentalHz = partialHz({ ...belt, number: 1 });
    if (fundamentalHz >= pitch[0] && fundamentalHz <= pitch[1]) return { ...belt, toothPitchM, fundamentalHz };
  }
}

/** Each end a third hinged, a third clamped, a third anywhere between; in half of the spans both ends are alike, as the program takes ends to be. */
function drawEnds(random: Random): readonly [number, number] {
  const [kind, one, other] = [random.uniform(), random.uniform(), random.uniform()];
  const end = (share: number, between: number): number => [0, 1, between][Math.min(2, Math.floor(3 * share))]!;
  const first = end(kind, one);
  const rest = (3 * kind) % 1;
  return rest < 0.5 ? [first, first] : [first, end(2 * rest - 1, other)];
}

/** A ruler's reading, a weighing, and of every second belt its stiffness; of the ends nothing. */
export function toldSetup(random: Random, belt: DrawnBelt): SpanSetup {
  const { spanLengthM, linearDensityKgPerM, bendingStiffnessNm2, toothPitchM } = belt;
  const density = linearDensityKgPerM * Math.exp(ASSUMED_UNCERTAINTY.linearDensityRelative * random.gaussian());
  const stiffness = bendingStiffnessNm2 * Math.exp(ASSUMED_UNCERTAINTY.bendingStiffnessRelative * random.gaussian());
  const measured = (value: number, relative: number) => ({ value, standardUncertainty: value * relative });
  return {
    spanLengthM: {
      value: spanLengthM + ASSUMED_UNCERTAINTY.spanLengthM * random.gaussian(),
      standardUncertainty: ASSUMED_UNCERTAINTY.spanLengthM,
    },
    belt: ownBelt({
      linearDensityKgPerM: measured(density, ASSUMED_UNCERTAINTY.linearDensityRelative),
      densityFrom: 'stated',
      bendingStiffnessNm2: happens(random, 0.5) ? measured(stiffness, ASSUMED_UNCERTAINTY.bendingStiffnessRelative) : undefined,
      toothPitchM,
      catalogue: belts,
    }),
    ends: UNKNOWN_ENDS,
  };
}
