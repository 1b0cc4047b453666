/** A closed belt: its length round all wheels, and the centre distance that a length leaves two pulleys. */

import { risingRoot } from '../math/root.ts';
import { type BeltSection, cordRadiusM, type FreeSpan, freeSpans, type Overlap, pitchDiameterM, type Wheel } from './geometry.ts';

export interface BeltLoop {
  readonly kind: 'loop';
  /** In the order of the wheels as the belt passes them, teeth inside, against the clock. */
  readonly wheels: readonly Wheel[];
  readonly spans: readonly FreeSpan[];
  /** Angle over which the belt lies on each wheel, rad. */
  readonly wrapsRad: readonly number[];
  /** Along the cord. */
  readonly lengthM: number;
}

/** The belt does not go once round: wheels in another order, or on the wrong side of it. */
export interface NoLoop {
  readonly kind: 'no-loop';
}

const FULL_TURN = 2 * Math.PI;

/**
 * @param wheels  at least two, in the order in which the belt meets them; either way round
 */
export function beltLoop(wheels: readonly Wheel[], belt: BeltSection): BeltLoop | Overlap | NoLoop {
  let overlap: Overlap | undefined;
  for (const ordered of [wheels, wheels.toReversed()]) {
    const spans = freeSpans(ordered, belt, { closed: true });
    if ('kind' in spans) {
      overlap ??= ordered === wheels ? spans : undefined;
      continue;
    }
    const directions = spans.map(({ start, end }) => Math.atan2(end.yM - start.yM, end.xM - start.xM));
    const radii = ordered.map((wheel) => cordRadiusM(wheel, belt));
    const turns = radii.map((radiusM, i) => {
      const turn = directions[i]! - directions.at(i - 1)!;
      const left = ((turn % FULL_TURN) + FULL_TURN) % FULL_TURN;
      return radiusM >= 0 ? left : -((FULL_TURN - left) % FULL_TURN);
    });
    const total = turns.reduce((sum, turn) => sum + turn, 0);
    if (Math.abs(total - FULL_TURN) > 1e-6) continue;
    const wrapsRad = turns.map(Math.abs);
    const lengthM =
      spans.reduce((sum, span) => sum + span.lengthM, 0) + wrapsRad.reduce((sum, wrap, i) => sum + wrap * Math.abs(radii[i]!), 0);
    return { kind: 'loop', wheels: ordered, spans, wrapsRad, lengthM };
  }
  return overlap ?? { kind: 'no-loop' };
}

/** Two pulleys and a plain loop round both: what most handbooks reckon with. */
export interface TwoPulleys {
  readonly teeth: readonly [number, number];
  readonly toothPitchM: number;
}

/** L = 2 sqrt(C² − (R − r)²) + π (R + r) + 2 (R − r) asin((R − r)/C), exact. @param centreM  above the difference of the pitch radii */
export function loopLengthM({ teeth, toothPitchM }: TwoPulleys, centreM: number): number {
  const [one, other] = teeth.map((count) => pitchDiameterM(count, toothPitchM) / 2) as [number, number];
  const difference = Math.abs(one - other);
  if (!(centreM > difference)) throw new RangeError(`loopLengthM needs a centre distance above ${difference} m, got ${centreM}`);
  return 2 * Math.sqrt(centreM ** 2 - difference ** 2) + Math.PI * (one + other) + 2 * difference * Math.asin(difference / centreM);
}

/** Free span between two pulleys at a centre distance: t = sqrt(C² − ((D − d)/2)²); undefined where they overlap. */
export function spanOfCentreM({ teeth, toothPitchM }: TwoPulleys, centreM: number): number | undefined {
  const [one, other] = teeth.map((count) => pitchDiameterM(count, toothPitchM) / 2) as [number, number];
  return centreM > Math.abs(one - other) ? Math.sqrt(centreM ** 2 - (one - other) ** 2) : undefined;
}

/** Centre distance that a loop of so many teeth leaves two pulleys; undefined where it is too short for them. */
export function centreOfLoopM(pulleys: TwoPulleys, loopTeeth: number): number | undefined {
  const lengthM = loopTeeth * pulleys.toothPitchM;
  const [one, other] = pulleys.teeth.map((count) => pitchDiameterM(count, pulleys.toothPitchM) / 2) as [number, number];
  const closest = Math.abs(one - other) * (1 + 1e-9) + 1e-9;
  const high = lengthM / 2;
  const value = (centreM: number): number => loopLengthM(pulleys, centreM) - lengthM;
  if (!(high > closest) || value(closest) > 0) return undefined;
  const centreM = risingRoot({ value, low: closest, high, tolerance: 1e-12 });
  return centreM > one + other ? centreM : undefined; // the toothed rims would meet
}
