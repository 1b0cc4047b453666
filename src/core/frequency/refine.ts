/** The span's own partials fitted together, each with its frequency and decay, and from them partial 1 with its uncertainty. */

import { fftPlan } from '../math/fft.ts';
import { inverseOfPositiveDefinite, solvePositiveDefinite } from '../math/linear-solve.ts';
import type { Measured } from '../math/measured.ts';
import { binsAround, fitSinusoids } from '../partials/fit.ts';
import { endsBend, partialRatio, type Series } from '../partials/series.ts';
import type { Stretch } from '../pluck/segment.ts';
import { addSpectrumOf, amplitude, type DampedSinusoid, decayEnergySamples, halfWidthHz } from '../spectrum/damped-sinusoid.ts';
import { ENDS } from './series-score.ts';

/** A partial of the span after the fit. */
export interface FittedPartial {
  readonly number: number;
  /** Undamped, sqrt(f² + (s/2π)²). */
  readonly frequencyHz: Measured;
  readonly sinusoid: DampedSinusoid;
}

/** Model error of the stiff-string series, relative: of partial 1 itself, for each further number, and for each unit of B (m² − 1). */
const MODEL_ERROR = { first: 0.0001, each: 0.0005, stiff: 0.004 };
/** Share of its half-width by which a partial is pulled for each share of its amplitude that is left over; found on rings in rooms. */
const RESIDUAL_PULLS = 0.8;
/** Noise alone seldom leaves more than this many times what is expected of it. */
const NOISE_AT_MOST = 1.5;
const HUBER = 3;
const ROUNDS = 12;

/**
 * @param partials  numbered sinusoids to begin with
 * @param foreign   sinusoids that belong to no partial but lie near one; fitted along, so that they do not pull
 */
export function fitPartials(
  stretch: Stretch,
  partials: readonly { readonly number: number; readonly sinusoid: DampedSinusoid }[],
  foreign: readonly DampedSinusoid[],
): FittedPartial[] {
  const { grid, noise } = stretch;
  const start = [...partials.map(({ sinusoid }) => sinusoid), ...foreign];
  const places = start.map((s) => ({ frequencyHz: s.frequencyHz, withinHz: Math.max(9, 2.5 * halfWidthHz(s)) }));
  const spectrum = fftPlan(grid.size).transform(stretch.samples);
  const fit = fitSinusoids({ grid, spectrum, noise }, start, binsAround(grid, places));
  for (const sinusoid of fit.sinusoids) addSpectrumOf(sinusoid, { grid, spectrum, factor: -1 });
  return partials.map(({ number }, index) => {
    const sinusoid = fit.sinusoids[index]!;
    const { misfit, unlike } = residualAround(stretch, { residual: spectrum, sinusoid, place: places[index]! });
    const halfWidth = halfWidthHz(sinusoid);
    const undampedHz = Math.hypot(sinusoid.frequencyHz, halfWidth);
    const uHz = Math.hypot(fit.frequencyU[index]!, (fit.decayU[index]! / (2 * Math.PI)) * (halfWidth / undampedHz));
    return {
      number,
      sinusoid,
      frequencyHz: { value: undampedHz, standardUncertainty: Math.hypot(uHz * Math.sqrt(misfit), RESIDUAL_PULLS * halfWidth * unlike) },
    };
  });
}

/**
 * What is left around a partial: over what the noise explains, at least 1, which decides which partials to believe; and beyond the noise
 * as a share of the partial's own, in amplitude. A room, or another that rings as near, makes a partial unlike a damped sinusoid in its own
 * width, and pulls it by about that share of the width: averaging over the bins does not help against that.
 */
function residualAround(
  { grid, noise }: Stretch,
  at: { readonly residual: Float64Array; readonly sinusoid: DampedSinusoid; readonly place: { frequencyHz: number; withinHz: number } },
): { misfit: number; unlike: number } {
  const { residual, sinusoid } = at;
  const bins = binsAround(grid, [at.place]);
  let [relative, left, expected] = [0, 0, 0];
  for (const k of bins) {
    const power = residual[2 * k]! ** 2 + residual[2 * k + 1]! ** 2;
    relative += power / (noise[k]! * grid.length);
    left += power;
    expected += noise[k]! * grid.length;
  }
  const whole = (amplitude(sinusoid) ** 2 / 4) * decayEnergySamples({ ...sinusoid, rateHz: grid.rateHz, length: grid.length }) * grid.size;
  const unlike = whole > 0 ? Math.sqrt(Math.max(0, left - NOISE_AT_MOST * expected) / whole) : 0;
  return { misfit: Math.max(1, relative / Math.max(1, bins.length)), unlike };
}

export interface FirstPartial {
  readonly firstHz: Measured;
  readonly inharmonicity: Measured;
}

/**
 * Partial 1 and the inharmonicity coefficient from all partials: weighted least squares of ln f_m = ln f_1 + ln m + ½ ln((1 + B m²)/(1 + B)),
 * robust against a partial that does not belong (Huber). Fitting the partials freely and combining them afterwards is nearly efficient
 * and, unlike one rigid fit, survives partials that lie a little flat.
 *
 * @param prior  what is known of B before; its uncertainty bounds how much it says
 */
export function firstPartialOf(
  partials: readonly Pick<FittedPartial, 'number' | 'frequencyHz'>[],
  start: Series,
  prior: Measured,
): FirstPartial {
  let lnFirst = Math.log(start.firstHz);
  let b = Math.max(0, start.inharmonicity);
  let covariance: Float64Array | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const normal = new Float64Array(4);
    const right = new Float64Array(2);
    for (const { number: m, frequencyHz } of partials) {
      const bend = endsBend(m, b);
      const modelError = MODEL_ERROR.first + MODEL_ERROR.each * (m - 1) + MODEL_ERROR.stiff * b * (m ** 2 - 1) + ENDS.spread * bend;
      const sigma = Math.hypot(frequencyHz.standardUncertainty / frequencyHz.value, modelError);
      const residual = Math.log(frequencyHz.value) - lnFirst - Math.log(partialRatio(m, b)) + ENDS.mean * bend;
      const slope = 0.5 * (m ** 2 / (1 + b * m ** 2) - 1 / (1 + b));
      const weight = Math.min(1, HUBER / Math.max(1e-12, Math.abs(residual) / sigma)) / sigma ** 2;
      normal[0]! += weight;
      normal[1]! += weight * slope;
      normal[2]! += weight * slope;
      normal[3]! += weight * slope ** 2;
      right[0]! += weight * residual;
      right[1]! += weight * slope * residual;
    }
    normal[3]! += 1 / prior.standardUncertainty ** 2;
    right[1]! += (prior.value - b) / prior.standardUncertainty ** 2;
    const step = solvePositiveDefinite(normal, right);
    covariance = inverseOfPositiveDefinite(normal, 2);
    if (!step || !covariance) break;
    lnFirst += Math.max(-0.1, Math.min(0.1, step[0]!));
    b = Math.max(0, b + Math.max(-0.1, Math.min(0.1, step[1]!)));
  }
  const firstHz = Math.exp(lnFirst);
  return {
    firstHz: { value: firstHz, standardUncertainty: firstHz * Math.sqrt(covariance?.[0] ?? Number.POSITIVE_INFINITY) },
    inharmonicity: { value: b, standardUncertainty: Math.sqrt(covariance?.[3] ?? Number.POSITIVE_INFINITY) },
  };
}
