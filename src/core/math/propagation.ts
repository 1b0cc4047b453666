/** The law of propagation of uncertainty (GUM, JCGM 100:2008, 5.1) with effective degrees of freedom (G.4) and expanded uncertainty (G.6.4). */

import type { Measured } from './measured.ts';
import { coverageFactor } from './student-t.ts';

export interface InputDoubt extends Measured {
  readonly name: string;
  /** ν of the uncertainty; where it is missing the uncertainty is taken as known. */
  readonly degreesOfFreedom?: number | undefined;
}

export interface Contribution {
  readonly name: string;
  /** c_i, change of the result with the input. */
  readonly sensitivity: number;
  /** |c_i| u(x_i). */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

export interface Propagated extends Measured {
  readonly contributions: readonly Contribution[];
  readonly degreesOfFreedom: number;
}

/**
 * Combined standard uncertainty of a result of independent inputs. Each sensitivity is the slope over plus and minus the input's own
 * standard uncertainty (GUM 5.1.3, note 2).
 *
 * @param model  result from the values, in the order of the inputs
 */
export function propagated(inputs: readonly InputDoubt[], model: (values: readonly number[]) => number): Propagated {
  const values = inputs.map(({ value }) => value);
  const contributions = inputs.map(({ name, value, standardUncertainty: u, degreesOfFreedom = Infinity }, i): Contribution => {
    const at = (x: number): number => model(values.with(i, x));
    const sensitivity = u > 0 ? (at(value + u) - at(value - u)) / (2 * u) : 0;
    return { name, sensitivity, standardUncertainty: Math.abs(sensitivity) * u, degreesOfFreedom };
  });
  return {
    value: model(values),
    standardUncertainty: Math.hypot(...contributions.map((line) => line.standardUncertainty)),
    contributions,
    degreesOfFreedom: effectiveDegreesOfFreedom(contributions),
  };
}

/**
 * Welch-Satterthwaite's formula (GUM G.2b) over independent groups: what is correlated is summed with its correlations first and stands here
 * as one.
 *
 * @returns Infinity where no group has few degrees of freedom
 */
export function effectiveDegreesOfFreedom(
  groups: readonly { readonly standardUncertainty: number; readonly degreesOfFreedom: number }[],
): number {
  const combined = Math.hypot(...groups.map(({ standardUncertainty }) => standardUncertainty));
  const fourths = groups.reduce((sum, { standardUncertainty: u, degreesOfFreedom: ν }) => sum + u ** 4 / ν, 0);
  return fourths > 0 ? combined ** 4 / fourths : Infinity;
}

/** From here on Student's t is the normal distribution to six digits. */
const MANY = 1e6;

/** t_p(ν), ν cut to a whole number as the GUM does (G.4.1, note 1). @param degreesOfFreedom  > 0, may be Infinity */
export const coverageFactorOf = (degreesOfFreedom: number, coverage: number): number =>
  coverageFactor({ degreesOfFreedom: Math.max(1, Math.floor(Math.min(degreesOfFreedom, MANY))), coverage });

/** U_p = t_p(ν_eff) u_c. */
export const expandedUncertainty = (
  result: { readonly standardUncertainty: number; readonly degreesOfFreedom: number },
  coverage: number,
): number => coverageFactorOf(result.degreesOfFreedom, coverage) * result.standardUncertainty;

/**
 * Whether an interval by the law of propagation is as good as one by propagation of distributions: both ends agree within half of the last
 * digit of the standard uncertainty written with one significant digit (JCGM 101:2008, 7.9.2 and 8.1).
 */
export function firstOrderHolds(
  linear: Measured & { readonly expanded: number },
  distribution: { readonly low: number; readonly high: number },
): boolean {
  const within = 0.5 * 10 ** Math.floor(Math.log10(linear.standardUncertainty));
  const { value, expanded } = linear;
  return Math.abs(value - expanded - distribution.low) <= within && Math.abs(value + expanded - distribution.high) <= within;
}
