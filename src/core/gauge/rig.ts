/** Rigs that put a known force on a belt: from what hangs to the force in the span, with what is not known of it. */

import type { Measured } from '../math/measured.ts';
import { localGravity, type Place } from './gravity.ts';
import { type Direction, type LoadedReading, NO_SHARED_DOUBT, type SharedForceDoubt } from './loaded-reading.ts';

export type RigKind = 'straight' | 'roller' | 'mid-span';

export interface Rig {
  readonly kind: RigKind;
  readonly scale: Scale;
  readonly place?: Place | undefined;
  /** Vessel, hook, string: what hangs besides each weight and was weighed; with its standard uncertainty. */
  readonly hangerKg?: Measured | undefined;
  /** Belt below the gauge that hangs along (straight hang, roller), and its linear density. */
  readonly beltBelowM?: number | undefined;
  readonly linearDensityKgPerM?: number | undefined;
  /** Friction of the roller as a share of the force, by easing one load from either side. */
  readonly rollerFrictionShare?: number | undefined;
  /** Half the distance of the ends of a belt that is fixed at both, with the weight at its middle. */
  readonly halfDistanceM?: Measured | undefined;
  /** By how much the gauge lengthens the belt's path while it is on: on a mid-span rig the force rises with it. */
  readonly gaugeTakesM?: number | undefined;
}

/** How the weights were weighed. */
export interface Scale {
  /** Smallest step of the display, > 0. */
  readonly stepKg: number;
  /** Standard uncertainty of its slope, relative: what a check with a known weight shows. */
  readonly relativeU: number;
  /** Standard uncertainty of an offset common to all weighings: tare, zero. */
  readonly offsetKg?: number | undefined;
}

export interface SagGeometry {
  /** Half the distance of the ends. */
  readonly halfDistanceM: Measured;
  /** How far the middle hangs under this load. */
  readonly sagM: Measured;
}

/** Air bears a dense weight by 0.015 % and water by 0.12 %; the scale has its share of it. Bounded, relative. */
const BUOYANCY_RELATIVE_U = 0.0005;
export interface RigForce {
  readonly forceN: number;
  /** Of this weight alone. */
  readonly ownUN: number;
  readonly shared: SharedForceDoubt;
}

/** T = m g √(a² + s²)/(2 s): each half of the belt carries half the weight along its own slope. */
export const midSpanFactor = (halfDistanceM: number, sagM: number): number => Math.hypot(halfDistanceM, sagM) / (2 * sagM);

/** What hangs at one load. */
export interface HungLoad {
  /** As the scale showed it, >= 0; the hanger comes on top. */
  readonly massKg: number;
  /** On a mid-span rig: sag at the weight under this load. */
  readonly sagM?: Measured | undefined;
  /** A force that is known without anything hanging, such as a reference wire's. */
  readonly knownN?: Measured | undefined;
}

/**
 * Force in the belt under a weight.
 *
 * @throws RangeError on a mid-span rig without half distance or sag
 */
export function rigForce(rig: Rig, { massKg, sagM, knownN }: HungLoad): RigForce {
  if (knownN) return { forceN: knownN.value, ownUN: knownN.standardUncertainty, shared: NO_SHARED_DOUBT };
  const { kind, scale, hangerKg, beltBelowM = 0, linearDensityKgPerM = 0, rollerFrictionShare = 0, halfDistanceM, gaugeTakesM = 0 } = rig;
  if (kind === 'mid-span' && !(halfDistanceM && sagM)) throw new RangeError('rigForce needs half distance and sag on a mid-span rig');
  const sag = kind === 'mid-span' && halfDistanceM && sagM ? { halfDistanceM, sagM } : undefined;
  const g = localGravity(rig.place);
  const belt = kind === 'mid-span' ? 0 : beltBelowM * linearDensityKgPerM;
  const hung = massKg + (hangerKg?.value ?? 0) + belt;
  const factor = sag ? midSpanFactor(sag.halfDistanceM.value, sag.sagM.value) : 1;
  const rise = sag && gaugeTakesM > 0 ? midSpanInsertionShare(sag, gaugeTakesM) : 0;
  const forceN = hung * g.value * factor * (1 + rise);
  const stepU = scale.stepKg / Math.sqrt(12);
  // Roller friction is even within plus and minus its share; which way it acts is not known of a load that was approached one way.
  const friction = kind === 'roller' ? (rollerFrictionShare / Math.sqrt(3)) * forceN : 0;
  const ownUN = Math.hypot(massKg > 0 ? stepU * g.value * factor : 0, friction, sag ? Math.hypot(sagDoubt(sag), rise / 2) * forceN : 0);
  const offsetKg = Math.hypot(scale.offsetKg ?? 0, hangerKg?.standardUncertainty ?? 0, belt * 0.2);
  return {
    forceN,
    ownUN,
    shared: {
      relative: Math.hypot(scale.relativeU, g.standardUncertainty / g.value, BUOYANCY_RELATIVE_U),
      offsetN: offsetKg * g.value * factor,
    },
  };
}

/** Relative standard uncertainty of the geometry: ln √(a² + s²)/s by a and s. */
function sagDoubt({ halfDistanceM: a, sagM: s }: SagGeometry): number {
  const square = a.value ** 2 + s.value ** 2;
  const byA = a.value / square;
  const byS = s.value / square - 1 / s.value;
  return Math.hypot(byA * a.standardUncertainty, byS * s.standardUncertainty);
}

/** By how much the force rises on a mid-span rig when a gauge takes up a length of belt: the sag shrinks, geometry to first order. */
export function midSpanInsertionShare({ halfDistanceM, sagM }: SagGeometry, lengtheningM: number): number {
  const [a, s] = [halfDistanceM.value, sagM.value];
  const leg = Math.hypot(a, s);
  const shorter = leg - lengtheningM / 2;
  if (!(shorter > a)) return Infinity;
  const rest = Math.sqrt(shorter ** 2 - a ** 2);
  return midSpanFactor(a, rest) / midSpanFactor(a, s) - 1;
}

/** One load eased on from either side of a roller: the mean is the force's reading, half the difference the friction's. */
export interface FrictionBracket {
  readonly eased: readonly { readonly reading: number; readonly from: Direction }[];
  readonly slopePerN: number;
  readonly forceN: number;
}

/** Friction as a share of the force, ± ; undefined where one side is missing. */
export function bracketedFriction({ eased, slopePerN, forceN }: FrictionBracket): number | undefined {
  const mean = (from: Direction): number | undefined => {
    const readings = eased.filter((one) => one.from === from).map(({ reading }) => reading);
    return readings.length > 0 ? readings.reduce((sum, reading) => sum + reading, 0) / readings.length : undefined;
  };
  const [above, below] = [mean('down'), mean('up')];
  return above === undefined || below === undefined ? undefined : Math.abs((above - below) / slopePerN) / 2 / forceN;
}

/** What a run's weights share, taken at the largest of them. */
function sharedDoubtOf(forces: readonly RigForce[]): SharedForceDoubt {
  return forces.reduce<SharedForceDoubt>(
    (most, { shared }) => ({ relative: Math.max(most.relative, shared.relative), offsetN: Math.max(most.offsetN, shared.offsetN) }),
    { relative: 0, offsetN: 0 },
  );
}

/** A reading as it was noted at the rig. */
export interface RigReading extends Omit<LoadedReading, 'forceN' | 'forceUN'>, HungLoad {}

/** Readings under their forces, and what all forces share. */
export function loadedReadings(rig: Rig, readings: readonly RigReading[]): { rows: readonly LoadedReading[]; shared: SharedForceDoubt } {
  const forces = readings.map((reading) => rigForce(rig, reading));
  const rows = readings.map(({ massKg: _mass, sagM: _sag, knownN: _known, ...reading }, i) => ({
    ...reading,
    forceN: forces[i]!.forceN,
    forceUN: forces[i]!.ownUN,
  }));
  return { rows, shared: sharedDoubtOf(forces) };
}
