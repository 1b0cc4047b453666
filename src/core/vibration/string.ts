/** The ideal string: the law that every other law of a span must meet when the belt does not resist bending. */

export interface StringSpan {
  /** Tangent point to tangent point, > 0. */
  readonly spanLengthM: number;
  /** Moving mass per metre, > 0. */
  readonly linearDensityKgPerM: number;
}

/**
 * Force in a free span from the frequency of its first partial.
 *
 * T = 4 μ L² f² — ideal string: no bending stiffness, ends fixed at the tangent points.
 *
 * @param span.fundamentalHz  first partial, > 0
 * @returns force in newtons, > 0
 * @throws RangeError when an argument is not finite and positive
 * @example 113.2 Hz on 0.15 m at 0.0084 kg/m gives 9.69 N
 * @see Rayleigh, The Theory of Sound, vol. I, ch. VI
 */
export function forceOfString(span: StringSpan & { readonly fundamentalHz: number }): number {
  const { fundamentalHz: f, spanLengthM: L, linearDensityKgPerM: μ } = span;
  requirePositive('forceOfString', { fundamentalHz: f, spanLengthM: L, linearDensityKgPerM: μ });
  return 4 * μ * L * L * f * f;
}

/**
 * First partial of a free span under a force, the inverse of `forceOfString`: f = sqrt(T/μ) / (2 L).
 *
 * @param span.forceN  static force, > 0
 * @throws RangeError when an argument is not finite and positive
 */
export function fundamentalOfString(span: StringSpan & { readonly forceN: number }): number {
  const { forceN: T, spanLengthM: L, linearDensityKgPerM: μ } = span;
  requirePositive('fundamentalOfString', { forceN: T, spanLengthM: L, linearDensityKgPerM: μ });
  return Math.sqrt(T / μ) / (2 * L);
}

/** Throws a RangeError that names the function, the argument and its value. */
export function requirePositive(who: string, values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${who} needs a finite ${name} above 0, got ${value}`);
  }
}
