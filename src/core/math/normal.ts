/** The standard normal distribution. */

const NUMERATOR = [
  220.206867912376, 221.213596169931, 112.079291497871, 33.912866078383, 6.37396220353165, 0.700383064443688, 0.0352624965998911,
];
const DENOMINATOR = [
  440.413735824752, 793.826512519948, 637.333633378831, 296.564248779674, 86.7807322029461, 16.064177579207, 1.75566716318264,
  0.0883883476483184,
];
/** Where the rational form hands over to the continued fraction. */
const FAR = 7.07106781186547;

/** Horner's rule as a plain loop: one force asks for it some ten thousand times. */
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!;
  return sum;
}

/**
 * Share of a standard normal distribution below z, absolute error below 1e-14.
 *
 * @see Hart et al., Computer Approximations (1968), no. 5666; continued fraction: Abramowitz & Stegun 26.2.14
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  if (x > 37) return z > 0 ? 1 : 0;
  const bell = Math.exp((-x * x) / 2);
  const tail =
    x < FAR
      ? (bell * polynomial(NUMERATOR, x)) / polynomial(DENOMINATOR, x)
      : bell / Math.sqrt(2 * Math.PI) / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65)))));
  return z > 0 ? 1 - tail : tail;
}
