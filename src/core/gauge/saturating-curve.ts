/** The law of three contacts and a spring: reading = r0 + R F/(F + Fh). The reading nears r0 + R however hard the belt is pulled. */

import type { Curve } from './curve.ts';

/** @param parameters  r0 (absent through the origin), R, Fh */
export function saturatingCurve(parameters: readonly number[], throughOrigin: boolean): Curve {
  const [r0, R, Fh] = throughOrigin ? [0, parameters[0]!, parameters[1]!] : [parameters[0]!, parameters[1]!, parameters[2]!];
  return {
    kind: 'saturating',
    names: throughOrigin ? ['R', 'Fh'] : ['r0', 'R', 'Fh'],
    parameters,
    knotsN: [],
    reading: (F) => r0 + (R * F) / (F + Fh),
    slope: (F) => (R * Fh) / (F + Fh) ** 2,
    gradient: (F) => [...(throughOrigin ? [] : [1]), F / (F + Fh), (-R * F) / (F + Fh) ** 2],
  };
}
