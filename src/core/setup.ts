/** What a person knows of the span before it is plucked. Every entry may be missing; the answer then says what it cannot tell. */

import type { Measured } from './math/measured.ts';

export interface SpanSetup {
  /** Free belt from tangent point to tangent point, > 0. */
  readonly spanLengthM?: Measured | undefined;
  readonly belt?: BeltKnowledge | undefined;
  /** Fixity of the two ends, in no particular order. */
  readonly ends: readonly [EndFixity, EndFixity];
  /** How the belt's wide face lies: level, it hangs through and rings higher. On edge where it is not told. */
  readonly lie?: 'edge' | 'flat' | undefined;
  /** Largest half of the 95 % interval, relative to the force, that still serves; > 0. Not told: half the target's width, else 20 %. */
  readonly toleranceRelative?: number | undefined;
  /** The force that the belt should have. */
  readonly targetForceN?: ForceRange | undefined;
  /** Told as a frequency, of which `targetForceN` then follows by the same density as every reading: it cancels. */
  readonly targetHz?: FrequencyTarget | undefined;
  /** Bounds the search for the fundamental; never the answer. */
  readonly expectedForceN?: ForceRange | undefined;
}

export interface ForceRange {
  readonly lowN: number;
  readonly highN: number;
}

/** A first partial between two frequencies on a span of this length, whatever the belt weighs. */
export interface FrequencyTarget {
  readonly lowHz: number;
  readonly highHz: number;
  readonly spanLengthM: number;
}

export interface BeltKnowledge {
  /** Moving mass per metre, > 0; read as log-normal with the relative standard uncertainty. */
  readonly linearDensityKgPerM: Measured;
  /** `catalogue`: nobody has weighed this belt. `stated`: typed in by its owner. `weighed`: from a weighing kept with the belt. */
  readonly densityFrom: 'catalogue' | 'stated' | 'weighed';
  readonly bendingStiffnessNm2: BendingStiffness;
  /** Allowable working force of the belt. */
  readonly ratedForceN?: number | undefined;
  readonly toothPitchM?: number | undefined;
  /** EA, where somebody stretched it under weights. */
  readonly axialStiffnessN?: Measured | undefined;
  /** Density and stiffness were fitted to plucks under known forces: then short spans need not be taken on trust in the beam. */
  readonly provedOnWeights?: boolean | undefined;
}

/**
 * EI of the belt in N m². `range`: even in ln EI between the two, 5 % of the weight in tails a factor 3 beyond each side.
 * `known`: measured or stated, log-normal.
 */
export type BendingStiffness =
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
  | { readonly kind: 'known'; readonly value: Measured };

/**
 * Fixity φ of one end: 0 hinged, 1 clamped. `unknown`: a third each hinged, clamped, and anywhere between; where both ends are
 * unknown, half the weight on both alike. `between`: even between the two.
 */
export type EndFixity =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'between'; readonly low: number; readonly high: number }
  | { readonly kind: 'known'; readonly value: Measured };

/** How an end of the span is held, in a person's words. */
export type EndKind = 'unknown' | 'toothed pulley' | 'smooth idler' | 'clamp';

/**
 * Fixity by kind of end, each with its spread: the one place for it. A wrapped belt acts nearly hinged at its tangent point (its lift-off and
 * its moment cancel to first order); teeth hold it somewhat. A clip or clamp gives a little. All judgement: nobody has published any.
 */
export const FIXITY_OF_END: Readonly<Record<EndKind, EndFixity>> = {
  unknown: { kind: 'unknown' },
  'toothed pulley': { kind: 'between', low: 0, high: 0.5 },
  'smooth idler': { kind: 'between', low: 0, high: 0.3 },
  clamp: { kind: 'between', low: 0.7, high: 1 },
};

export const UNKNOWN_ENDS: SpanSetup['ends'] = [{ kind: 'unknown' }, { kind: 'unknown' }];

/** Tolerance where neither a tolerance nor a target is given: the trade's own windows are about this wide. */
export const DEFAULT_TOLERANCE_RELATIVE = 0.2;

/** What is assumed where a value is told without its standard uncertainty. */
export const ASSUMED_UNCERTAINTY = {
  /** A ruler held against two tangent points that nobody can see exactly. */
  spanLengthM: 0.0005,
  /** A metre of belt on a kitchen scale, or a data sheet that somebody checked. */
  linearDensityRelative: 0.02,
  bendingStiffnessRelative: 0.2,
  endFixity: 0.1,
  /** A frequency that another instrument shows. */
  frequencyRelative: 0.005,
} as const;
