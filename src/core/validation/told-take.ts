/** From what stands beside a recording to the setup that its sound is read with, and to what the comparison needs. */

import { type CatalogueBelt, ownBelt } from '../belt/catalogue.ts';
import type { Measured } from '../math/measured.ts';
import { relativeUncertainty } from '../math/measured.ts';
import type { Measurement } from '../outcome.ts';
import { ASSUMED_UNCERTAINTY, FIXITY_OF_END, type SpanSetup } from '../setup.ts';
import type { KnownForceTake } from './known-take.ts';

/** What was known of a take; a type test keeps it equal to the schema of the files. */
export interface ToldTake {
  readonly forceN: number;
  readonly forceUN?: number | undefined;
  readonly spanLengthM: number;
  readonly spanLengthUM?: number | undefined;
  readonly linearDensityKgPerM: number;
  readonly linearDensityUKgPerM?: number | undefined;
  readonly densityFrom?: 'catalogue' | 'stated' | 'weighed' | undefined;
  readonly ends?: readonly [ToldEnd, ToldEnd] | undefined;
  readonly toothPitchM?: number | undefined;
}

type ToldEnd = 'unknown' | 'pulley' | 'idler' | 'clip';

const FIXITY = {
  unknown: FIXITY_OF_END.unknown,
  pulley: FIXITY_OF_END['toothed pulley'],
  idler: FIXITY_OF_END['smooth idler'],
  clip: FIXITY_OF_END.clamp,
} as const;

/** Where the doubt of a weight is not told, relative: a scale's word and local gravity (our judgement). */
const WEIGHT_RELATIVE_U = 0.003;

/** The force itself is not in it: it must not help the sound. */
export function setupOfTold(told: ToldTake, catalogue: readonly CatalogueBelt[]): SpanSetup {
  const { densityFrom = 'stated', toothPitchM } = told;
  const [one, other] = told.ends ?? ['unknown', 'unknown'];
  const known = ownBelt({
    linearDensityKgPerM: densityOf(told),
    densityFrom: densityFrom === 'catalogue' ? 'stated' : densityFrom,
    toothPitchM,
    catalogue,
  });
  return { spanLengthM: spanOf(told), belt: { ...known, densityFrom }, ends: [FIXITY[one], FIXITY[other]] };
}

const spanOf = ({ spanLengthM: value, spanLengthUM }: ToldTake): Measured => ({
  value,
  standardUncertainty: spanLengthUM ?? ASSUMED_UNCERTAINTY.spanLengthM,
});

const densityOf = ({ linearDensityKgPerM: value, linearDensityUKgPerM }: ToldTake): Measured => ({
  value,
  standardUncertainty: linearDensityUKgPerM ?? ASSUMED_UNCERTAINTY.linearDensityRelative * value,
});

export function knownForceTake(name: string, told: ToldTake, { outcome }: Pick<Measurement, 'outcome'>): KnownForceTake {
  const forceN = outcome.kind === 'reading' ? outcome.forceN : undefined;
  return {
    name,
    knownForceN: { value: told.forceN, standardUncertainty: told.forceUN ?? WEIGHT_RELATIVE_U * told.forceN },
    spanLengthM: spanOf(told),
    linearDensityKgPerM: densityOf(told),
    heard:
      outcome.kind === 'reading' && forceN
        ? { forceN, frequencyRelativeU: relativeUncertainty(outcome.frequencyHz), grade: outcome.grade }
        : undefined,
  };
}
