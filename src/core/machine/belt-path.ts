/** The whole way of a belt in plan, span by span and arc by arc, so that it can be drawn to scale. */

import { type BeltSection, cordRadiusM, type FreeSpan, freeSpans, type Overlap, type Point, type Wheel } from './geometry.ts';
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

export function beltPath(belt: LaidBelt, section: BeltSection): BeltPath | Overlap {
  return belt.clockwise
    ? turnedBack(counterclockwisePath(belt.wheels.toReversed(), belt.closed, section), belt.wheels.length)
    : counterclockwisePath(belt.wheels, belt.closed, section);
}

/** The sense in which the belt lies on its wheels for less: nobody winds a belt nearly once round each of them. */
export function withUsualSense(belt: LaidBelt, section: BeltSection): LaidBelt {
  const wrap = (clockwise: boolean): number => {
    const path = beltPath({ ...belt, clockwise }, section);
    return path.kind === 'path' ? path.arcs.reduce((sum, { wrapRad }) => sum + wrapRad, 0) : Number.POSITIVE_INFINITY;
  };
  return { ...belt, clockwise: wrap(true) < wrap(false) };
}

function counterclockwisePath(wheels: readonly Wheel[], closed: boolean, section: BeltSection): BeltPath | Overlap {
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

/** The same path with the wheels counted from the other end. */
function turnedBack(path: BeltPath | Overlap, count: number): BeltPath | Overlap {
  const other = (index: number): number => count - 1 - index;
  if (path.kind === 'overlap') return { ...path, from: other(path.to), to: other(path.from) };
  const spans = path.spans.map(({ from, to, start, end, lengthM }) => ({
    from: other(to),
    to: other(from),
    start: end,
    end: start,
    lengthM,
  }));
  return { ...path, spans, arcs: path.arcs.map((arc) => ({ ...arc, wheel: other(arc.wheel) })) };
}
