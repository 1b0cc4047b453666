/** A value with its standard uncertainty: the form in which every number travels through the program. */

/** Value and uncertainty share the unit that the name of the holder ends in, such as `frequencyHz: Measured`. */
export interface Measured {
  readonly value: number;
  /** Standard uncertainty u (one standard deviation, GUM 2.3.1), >= 0, same unit as `value`. */
  readonly standardUncertainty: number;
}

/** Relative standard uncertainty u / |value|, dimensionless. */
export const relativeUncertainty = (measured: Measured): number => measured.standardUncertainty / Math.abs(measured.value);

/** A value that is multiplied by a constant without uncertainty, such as a change of unit. */
export const scaled = (measured: Measured, factor: number): Measured => ({
  value: measured.value * factor,
  standardUncertainty: measured.standardUncertainty * Math.abs(factor),
});
