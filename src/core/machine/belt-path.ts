/** The whole way of a belt in plan, span by span and arc by arc, so that it can be drawn to scale. */

import { type BeltSection, cordRadiusM, type FreeSpan, freeSpans, type Overlap, type Point } from './geometry.ts';
import type { LaidBelt } from './layouts.ts';

export interface BeltArc {
  readonly wheel: number;
  readonly from: Point;
  readonly to: Point;
  readonly radiusM: number;
  /** Against the clock in plan, y upwards. */
  readonly counterclockwise: boolean;
  /** Angle that the belt lies on the wheel, rad, 0 to 2π. */
  readonly wrapRad: number;
}

export interface BeltPath {
  readonly kind: 'path';
  readonly spans: readonly FreeSpan[];
  readonly arcs: readonly BeltArc[];
  /** Along the cord, m. */
  readonly lengthM: number;
}

const FULL_TURN = 2 * Math.PI;

export function beltPath({ wheels, closed }: LaidBelt, section: BeltSection): BeltPath | Overlap {
  const spans = freeSpans(wheels, section, { closed });
  if ('kind' in spans) return spans;
  const arcs = wheels.flatMap((wheel, index): BeltArc[] => {
    const radiusM = cordRadiusM(wheel, section);
    const before = spans.find(({ to }) => to === index);
    const after = spans.find(({ from }) => from === index);
    if (radiusM === 0 || !before || !after) return [];
    const angle = ({ xM, yM }: Point) => Math.atan2(yM - wheel.yM, xM - wheel.xM);
    const turn = (angle(after.start) - angle(before.end)) * Math.sign(radiusM);
    const wrapRad = ((turn % FULL_TURN) + FULL_TURN) % FULL_TURN;
    return [{ wheel: index, from: before.end, to: after.start, radiusM: Math.abs(radiusM), counterclockwise: radiusM > 0, wrapRad }];
  });
  const lengthM = spans.reduce((sum, span) => sum + span.lengthM, 0) + arcs.reduce((sum, arc) => sum + arc.wrapRad * arc.radiusM, 0);
  return { kind: 'path', spans, arcs, lengthM };
}
