/** Student's t distribution: how far a mean of few values may lie from the truth. */

/** ln Γ(x), x > 0, relative error below 1e-13: Stirling's series after shifting x above 10 (Abramowitz & Stegun 6.1.40). */
export function lnGamma(x: number): number {
  let shift = 0;
  let y = x;
  for (; y < 10; y++) shift -= Math.log(y);
  const z = 1 / (y * y);
  const series = (1 / 12 - z * (1 / 360 - z * (1 / 1260 - z * (1 / 1680 - z / 1188)))) / y;
  return shift + (y - 0.5) * Math.log(y) - y + Math.log(2 * Math.PI) / 2 + series;
}

/** Regularised incomplete beta function I_x(a, b), by the continued fraction of Abramowitz & Stegun 26.5.8. */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  let numerator = 1;
  let denominator = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = denominator;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let change = 1;
    for (const d of [even, odd]) {
      denominator = 1 / (1 + d * denominator);
      numerator = 1 + d / numerator;
      change = numerator * denominator;
      fraction *= change;
    }
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return front * fraction;
}

/** Share of Student's t distribution within −t..t. @param degreesOfFreedom  > 0, need not be whole */
export function studentCoverage(t: number, degreesOfFreedom: number): number {
  return 1 - incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5);
}

/**
 * Coverage factor t_p(ν): the share `coverage` of Student's t distribution lies within plus and minus it.
 *
 * @param options.degreesOfFreedom  ν >= 1, need not be whole (as Welch-Satterthwaite gives it)
 * @param options.coverage          0 < p < 1
 * @throws RangeError outside these ranges
 * @see GUM (JCGM 100:2008), G.3 and table G.2
 */
export function coverageFactor(options: { readonly degreesOfFreedom: number; readonly coverage: number }): number {
  const { degreesOfFreedom, coverage } = options;
  if (!(degreesOfFreedom >= 1 && degreesOfFreedom < Infinity)) {
    throw new RangeError(`coverageFactor needs finite degreesOfFreedom of 1 or more, got ${degreesOfFreedom}`);
  }
  if (!(coverage > 0 && coverage < 1)) throw new RangeError(`coverageFactor needs a coverage between 0 and 1, got ${coverage}`);
  let low = 0;
  let high = 1;
  while (studentCoverage(high, degreesOfFreedom) < coverage) high *= 2;
  while (true) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (studentCoverage(middle, degreesOfFreedom) < coverage) low = middle;
    else high = middle;
  }
}
