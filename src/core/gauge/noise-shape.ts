/** How the scatter of single readings changes with the force: constant, growing, or between. */

/** Standard deviation of one reading over a force, relative to what it is at the largest one. */
export type NoiseShape = (forceN: number) => number;

export const EVEN_NOISE: NoiseShape = () => 1;

/** Powers of the force that the scatter may grow with; what the data say weighs them. */
const POWERS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5];
/** Near no force the scatter does not vanish: a tenth of the largest load is added before taking the power. */
const FLOOR_IN_LARGEST_LOAD = 0.1;
/** Fewer residuals say nothing on their own growth. */
const FEWEST = 8;

const shapeOf = (power: number, largestN: number): NoiseShape => {
  const floor = FLOOR_IN_LARGEST_LOAD * largestN;
  return (forceN) => ((Math.max(0, forceN) + floor) / (largestN + floor)) ** power;
};

/**
 * Mean of the variances that each power gives, weighed by the normal likelihood of the residuals.
 *
 * @param residuals  of independent readings, with the share of their variance that the fit has left them (1 − leverage)
 */
export function noiseShape(
  residuals: readonly { readonly forceN: number; readonly residual: number; readonly left: number }[],
): NoiseShape {
  const usable = residuals.filter(({ left }) => left > 0.05);
  const largestN = Math.max(...usable.map(({ forceN }) => forceN), 0);
  if (usable.length < FEWEST || !(largestN > 0) || usable.every(({ residual }) => residual === 0)) return EVEN_NOISE;
  const fits = POWERS.map((power) => {
    const shape = shapeOf(power, largestN);
    const variance =
      usable.reduce((sum, { forceN, residual, left }) => sum + residual ** 2 / (left * shape(forceN) ** 2), 0) / usable.length;
    const logLikelihood = usable.reduce((sum, { forceN }) => sum - Math.log(shape(forceN)), 0) - (usable.length / 2) * Math.log(variance);
    return { shape, variance, logLikelihood };
  });
  const most = Math.max(...fits.map(({ logLikelihood }) => logLikelihood));
  const weights = fits.map(({ logLikelihood }) => Math.exp(logLikelihood - most));
  const varianceAt = (forceN: number): number =>
    fits.reduce((sum, { shape, variance }, k) => sum + weights[k]! * variance * shape(forceN) ** 2, 0);
  const atLargest = varianceAt(largestN);
  return (forceN) => Math.sqrt(varianceAt(Math.min(Math.max(forceN, 0), largestN)) / atLargest);
}
