/** The pluck that a plan reckons with: a light one near the middle, as the page asks for, heard from close by in a room that is not loud. */

import { centralSpan, knownSpan } from '../force/known-span.ts';
import { lnSagLift, sagRise } from '../force/sag.ts';
import type { HeardPartial, PluckSound } from '../outcome.ts';
import type { SpanSetup } from '../setup.ts';
import { type Listener, type PartialHeard, type Pluck, partialsHeard } from '../synthesis/pluck.ts';
import { type SimulatedSpan, spanPartialHz } from '../synthesis/span.ts';

export interface TypicalPluck {
  readonly span: SimulatedSpan;
  readonly pluck: Pluck;
  readonly listener: Listener;
}

/** Three plucks make a good reading: so many are planned for. */
export const PLANNED_PLUCKS = 3;
export const PLANNED_RATE_HZ = 48_000;
/** Peak of a pluck from close by: loud, and not cut off. */
export const PLANNED_PEAK_DBFS = -9;

/** Decay of small belts: 18 swings to 1/e, and never longer than this (common practice, no source; the corpus of the tests draws about it). */
const DECAY = { swings: 18, atMostS: 0.16, growth: 0.05 } as const;
/** Near the middle and not in it: there every second partial would be missing. */
const PLACE = { pluck: 0.42, microphone: 0.28 } as const;
const HEIGHT_SHARE = 0.001;
const FINGER = { widthM: 0.01, shareOfSpan: 1 / 8 } as const;
const DISTANCE_M = 0.02;
/** What a deflection of the span stretches; so light a pluck hardly glides. */
const AXIAL_STIFFNESS_N = 6000;
/** Partials fainter than this below the strongest are not counted on: `measure` finds them in a quiet room and loses them in others. */
const FAINTEST_DB = -39;
/** Higher ones say nothing more of a force. */
const HIGHEST_NUMBER = 4;
/** Standard uncertainty of one partial of such a pluck; how the beam and the plucks err is added later and is far larger. */
const RELATIVE_U = { first: 0.0002, others: 0.0005 } as const;
const GLIDE_RELATIVE = 0.0003;
const LEVEL_OVER_ROOM_DB = 45;
/** As `measure` finds it for such plucks: beyond doubt. */
const LEAD = 7;

/** @returns `undefined` where span or belt was not told; ends and stiffness are the middle of what is known of them */
export function typicalPluck(setup: SpanSetup, forceN: number): TypicalPluck | undefined {
  const known = knownSpan(setup);
  if (known === undefined) return undefined;
  const { spanLengthM, linearDensityKgPerM, bendingStiffnessNm2, fixity } = centralSpan(known);
  const still = { forceN, spanLengthM, linearDensityKgPerM, bendingStiffnessNm2, fixity };
  const span = { ...still, axialStiffnessN: AXIAL_STIFFNESS_N, decayS: 1, dampingGrowth: DECAY.growth };
  const decayS = Math.min(DECAY.atMostS, DECAY.swings / spanPartialHz(span, 1));
  return {
    span: { ...span, decayS },
    pluck: {
      placeShare: PLACE.pluck,
      heightM: HEIGHT_SHARE * spanLengthM,
      fingerWidthM: Math.min(FINGER.widthM, FINGER.shareOfSpan * spanLengthM),
    },
    listener: { placeShare: PLACE.microphone, distanceM: DISTANCE_M },
  };
}

/**
 * What a reading of that span would have to go by: so many equal plucks, with the partials that such a pluck lets stand out.
 *
 * @param heard.lowestHz  partials below are lost to this microphone
 * @returns empty where no partial would be heard; `undefined` where span or belt was not told
 */
export function typicalSounds(setup: SpanSetup, forceN: number, heard: { readonly lowestHz: number }): readonly PluckSound[] | undefined {
  const typical = typicalPluck(setup, forceN);
  const known = knownSpan(setup);
  if (typical === undefined || known === undefined) return undefined;
  const rise = setup.lie === 'flat' ? sagRise(known, forceN) : 0;
  const placeHz = (number: number): number => spanPartialHz(typical.span, number) * Math.exp(lnSagLift(rise, number));
  const partials = standingOut(typical)
    .map((partial): HeardPartial => heardPartial(partial, placeHz(partial.number)))
    .filter(({ frequencyHz }) => frequencyHz.value >= heard.lowestHz);
  if (partials.length === 0) return [];
  const firstHz = placeHz(1);
  return Array.from({ length: PLANNED_PLUCKS }, (_, index) => ({
    startS: index,
    frequencyHz: { value: firstHz, standardUncertainty: RELATIVE_U.first * firstHz },
    partials,
    evidence: {
      cyclesToDecay: firstHz * typical.span.decayS,
      levelOverBackgroundDb: LEVEL_OVER_ROOM_DB,
      clippedShare: 0,
      glideRelative: GLIDE_RELATIVE,
      leadOverRival: LEAD,
      foreignHz: [],
      ownShare: 1,
      firstPartialHeard: partials[0]?.number === 1,
      bandwidthHz: PLANNED_RATE_HZ / 2,
    },
  }));
}

function standingOut(typical: TypicalPluck): readonly PartialHeard[] {
  const all = partialsHeard({ ...typical, sampleRateHz: PLANNED_RATE_HZ }).filter(({ number }) => number <= HIGHEST_NUMBER);
  const loudest = Math.max(...all.map(({ amplitude }) => Math.abs(amplitude)));
  return all
    .filter(({ amplitude }) => 20 * Math.log10(Math.abs(amplitude) / loudest) >= FAINTEST_DB)
    .map((partial) => ({
      ...partial,
      amplitude: Math.abs(partial.amplitude) / loudest,
    }));
}

function heardPartial({ number, decayS, amplitude }: PartialHeard, hz: number): HeardPartial {
  return {
    number,
    frequencyHz: { value: hz, standardUncertainty: (number === 1 ? RELATIVE_U.first : RELATIVE_U.others) * hz },
    levelDbfs: PLANNED_PEAK_DBFS + 20 * Math.log10(amplitude),
    decayS,
  };
}
