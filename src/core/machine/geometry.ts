/** The path of a belt over its wheels: where it leaves each of them, and how long each free span is between two tangent points. */

/** What the belt runs over or is held in; the coordinates are those of a plan view, y upwards. */
export type Wheel = { readonly xM: number; readonly yM: number } & WheelKind;

export type WheelKind =
  /** Meshes with the teeth; its pitch circle follows from them. */
  | { readonly kind: 'pulley'; readonly teeth: number }
  /** Smooth, with the belt's teeth or its back on it. */
  | { readonly kind: 'idler'; readonly diameterM: number; readonly touches: 'teeth' | 'back' }
  /** Holds the belt: a point of its pitch line. */
  | { readonly kind: 'clamp' };

/** The belt in section; the cord is the line whose length stays. */
export interface BeltSection {
  readonly toothPitchM: number;
  /** From the tips of the teeth to the cord. */
  readonly cordOverTipsM: number;
  /** From the cord to the back. */
  readonly backOverCordM: number;
}

export interface Point {
  readonly xM: number;
  readonly yM: number;
}

export interface FreeSpan {
  /** Indexes of the wheels. */
  readonly from: number;
  readonly to: number;
  readonly start: Point;
  readonly end: Point;
  readonly lengthM: number;
}

/** Two wheels stand so close that no line touches both in the way asked for. */
export interface Overlap {
  readonly kind: 'overlap';
  readonly from: number;
  readonly to: number;
}

/** d = z p / π: the circle on which the cord lies. */
export const pitchDiameterM = (teeth: number, toothPitchM: number): number => (teeth * toothPitchM) / Math.PI;

/**
 * Radius of the cord about a wheel's axis, with the side as its sign: above 0 where the teeth lie against it, below 0 where the back does
 * (there the belt turns the other way), 0 of a clamp.
 */
export function cordRadiusM(wheel: Wheel, belt: BeltSection): number {
  switch (wheel.kind) {
    case 'pulley':
      return pitchDiameterM(wheel.teeth, belt.toothPitchM) / 2;
    case 'idler':
      return wheel.touches === 'teeth' ? wheel.diameterM / 2 + belt.cordOverTipsM : -(wheel.diameterM / 2 + belt.backOverCordM);
    case 'clamp':
      return 0;
  }
}

/**
 * Free belt between two wheels that the belt passes one after the other, teeth inside, round against the clock: s = sqrt(C² − (r1 − r2)²) with
 * signed radii, so that wheels on the same side give the outer tangent and wheels on opposite sides the inner one.
 *
 * The tangent points lie at r n from the axes, where n is the direction in which (B − A) · n = r1 − r2.
 */
export function tangentSpan(
  a: Point & { readonly radiusM: number },
  b: Point & { readonly radiusM: number },
): Omit<FreeSpan, 'from' | 'to'> | undefined {
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const centreM = Math.hypot(dx, dy);
  const offsetM = a.radiusM - b.radiusM;
  if (!(centreM > Math.abs(offsetM))) return undefined;
  const lengthM = Math.sqrt((centreM - offsetM) * (centreM + offsetM));
  const [cos, sin] = [offsetM / centreM, lengthM / centreM];
  const n = { x: (dx * cos + dy * sin) / centreM, y: (dy * cos - dx * sin) / centreM };
  const at = ({ xM, yM, radiusM }: typeof a): Point => ({ xM: xM + radiusM * n.x, yM: yM + radiusM * n.y });
  return { start: at(a), end: at(b), lengthM };
}

/** Spans of an open path, wheel to wheel in the order given. @returns the first two wheels that leave no room for a span, where there are such */
export function freeSpans(wheels: readonly Wheel[], belt: BeltSection, { closed = false } = {}): readonly FreeSpan[] | Overlap {
  const round = wheels.map((wheel) => ({ xM: wheel.xM, yM: wheel.yM, radiusM: cordRadiusM(wheel, belt) }));
  const spans: FreeSpan[] = [];
  const count = closed ? wheels.length : wheels.length - 1;
  for (let from = 0; from < count; from++) {
    const to = (from + 1) % wheels.length;
    const span = tangentSpan(round[from]!, round[to]!);
    if (span === undefined) return { kind: 'overlap', from, to };
    spans.push({ from, to, ...span });
  }
  return spans;
}
