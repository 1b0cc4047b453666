/** What a person told about one take, in SI, and the setup that follows from it: values told beat the belt's, gaps are filled as documented. */

import { beltKnowledge, type CatalogueBelt, ownBelt } from '../core/belt/catalogue.ts';
import type { Measured } from '../core/math/measured.ts';
import { ASSUMED_UNCERTAINTY, type BeltKnowledge, type EndFixity, type ForceRange, type SpanSetup, UNKNOWN_ENDS } from '../core/setup.ts';

/** A value with its standard uncertainty where that was told; either may come from the command line and the other from a table. */
export interface Told {
  readonly value?: number | undefined;
  readonly standardUncertainty?: number | undefined;
}

/** Both ends, the same twice where one number was told for both. */
export type ToldEnds = readonly [ToldEnd, ToldEnd];

/** Held as ends of its kind are, or by a number. */
export type ToldEnd = Told | Exclude<EndFixity, { readonly kind: 'known' }>;

export interface ToldTake {
  readonly belt?: CatalogueBelt | undefined;
  readonly spanLengthM?: Told | undefined;
  readonly linearDensityKgPerM?: Told | undefined;
  readonly bendingStiffnessNm2?: Told | undefined;
  readonly fixity?: ToldEnds | undefined;
  readonly toleranceRelative?: number | undefined;
  readonly expectedForceN?: ForceRange | undefined;
  readonly lie?: SpanSetup['lie'];
}

/** A told value with the uncertainty that is assumed where none was told; undefined where there is no value. */
export function measured(told: Told | undefined, assumed: (value: number) => number): Measured | undefined {
  if (told?.value === undefined) return undefined;
  return { value: told.value, standardUncertainty: told.standardUncertainty ?? assumed(told.value) };
}

/** What is told of its own beats the catalogue's; the rest of the belt stays. Without any density there is no belt. */
function beltTold(take: ToldTake, catalogue: readonly CatalogueBelt[]): BeltKnowledge | undefined {
  const density = measured(take.linearDensityKgPerM, (value) => ASSUMED_UNCERTAINTY.linearDensityRelative * value);
  const stiffness = measured(take.bendingStiffnessNm2, (value) => ASSUMED_UNCERTAINTY.bendingStiffnessRelative * value);
  if (!take.belt) return density && ownBelt({ linearDensityKgPerM: density, bendingStiffnessNm2: stiffness, catalogue });
  const known = beltKnowledge(take.belt);
  return {
    ...known,
    ...(density ? { linearDensityKgPerM: density, densityFrom: 'stated' as const } : {}),
    ...(stiffness ? { bendingStiffnessNm2: { kind: 'known' as const, value: stiffness } } : {}),
  };
}

/** Told fixity as two ends; unknown where no value was told. */
function endsTold(fixity: ToldEnds | undefined): SpanSetup['ends'] {
  const [first, second] = fixity?.map(endTold) ?? [];
  return first && second ? [first, second] : UNKNOWN_ENDS;
}

function endTold(end: ToldEnd): EndFixity | undefined {
  if ('kind' in end) return end;
  const value = measured(end, () => ASSUMED_UNCERTAINTY.endFixity);
  return value && { kind: 'known', value };
}

export function setupTold(take: ToldTake, catalogue: readonly CatalogueBelt[]): SpanSetup {
  return {
    spanLengthM: measured(take.spanLengthM, () => ASSUMED_UNCERTAINTY.spanLengthM),
    belt: beltTold(take, catalogue),
    ends: endsTold(take.fixity),
    toleranceRelative: take.toleranceRelative,
    expectedForceN: take.expectedForceN,
    lie: take.lie,
  };
}
