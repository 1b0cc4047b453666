/** Straight line and quadratic, with or without a reading of their own at no force. */

import type { Curve } from './curve.ts';

/** Powers of the force that a polynomial has. */
export const powersOf = (kind: 'line' | 'quadratic', throughOrigin: boolean): readonly number[] =>
  (kind === 'line' ? [0, 1] : [0, 1, 2]).slice(throughOrigin ? 1 : 0);

export function polynomialCurve(kind: 'line' | 'quadratic', powers: readonly number[], coefficients: readonly number[]): Curve {
  return {
    kind,
    names: powers.map((power) => `b${power}`),
    parameters: coefficients,
    knotsN: [],
    reading: (forceN) => powers.reduce((sum, power, j) => sum + coefficients[j]! * forceN ** power, 0),
    slope: (forceN) => powers.reduce((sum, power, j) => (power === 0 ? sum : sum + power * coefficients[j]! * forceN ** (power - 1)), 0),
    gradient: (forceN) => powers.map((power) => forceN ** power),
  };
}
