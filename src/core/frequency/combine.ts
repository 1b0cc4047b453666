/** Several plucks of one span, one frequency: which of them belong together, their mean, and how well plucks repeat. */

/** Expanded uncertainty of a frequency over its standard uncertainty: 95 % of a normal distribution, rounded as the GUM does. */
export const COVERAGE_FACTOR = 2;
