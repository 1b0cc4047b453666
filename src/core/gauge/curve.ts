/** A curve from force to reading: what a fit finds, and what a conversion turns round. */

export type CurveKind = 'line' | 'quadratic' | 'saturating' | 'spline';

export interface Curve {
  readonly kind: CurveKind;
  /** Names and values in the order of the fit's coefficients. */
  readonly names: readonly string[];
  readonly parameters: readonly number[];
  /** Forces at which a spline is held; of the other kinds none. */
  readonly knotsN: readonly number[];
  readonly reading: (forceN: number) => number;
  /** d reading / d force, divisions per newton. */
  readonly slope: (forceN: number) => number;
  /** d reading / d parameter, in the order of the parameters. */
  readonly gradient: (forceN: number) => readonly number[];
}

export interface Range {
  readonly lowN: number;
  readonly highN: number;
}

const STEPS = 200;

/** +1 where the reading rises all the way, −1 where it falls, 0 where it turns back or stands still. */
export function directionOf(curve: Curve, { lowN, highN }: Range): number {
  const whole = Math.sign(curve.reading(highN) - curve.reading(lowN));
  if (whole === 0) return 0;
  let before = curve.reading(lowN);
  for (let step = 1; step <= STEPS; step++) {
    const now = curve.reading(lowN + ((highN - lowN) * step) / STEPS);
    if (!((now - before) * whole > 0)) return 0;
    before = now;
  }
  return whole;
}
