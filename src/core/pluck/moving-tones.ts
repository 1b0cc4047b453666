/**
 * Tones of the room that glide, as of a motor that speeds up: time is bent until they stand still, which they and their harmonics do
 * together. They cannot be taken away from what follows in phase, but their path can be foreseen.
 */

import { spectrumMaker } from '../spectrum/spectrum.ts';
import { steadyLines } from './steady-lines.ts';

export interface MovingTone {
  /** At the end of the stretch. */
  readonly frequencyHz: number;
  readonly slopeHzPerS: number;
  /** re cos(θ) + im sin(θ) with θ = 2π f (exp(s t) − 1)/s, s the relative slope and t from the end of the stretch. */
  readonly re: number;
  readonly im: number;
}

export interface MovingTones {
  readonly tones: readonly MovingTone[];
  /** The last part of the stretch, in which they were found, without them; undefined where there are none. */
  readonly rest: Float64Array | undefined;
}

/** The end of the stretch tells where they go. */
const LOOK_S = 0.3;
const LOOK_AT_LEAST_S = 0.15;
/** Relative slopes that are tried, per second. Slower ones are steady lines, which are found elsewhere. */
const LEAST_SLOPE = 0.02;
const MOST_SLOPE = 0.8;
const ROUGH_LOOK_S = 0.2;
const ROUGH_STEP = 0.04;
const FINE_STEP = 0.01;
const FINEST_STEP = 0.0025;
/** What stands this much over the smooth noise is more than noise. */
const OVER_NOISE = 10;
/** And what is this much below the strongest says nothing of the motor that moves. */
const OF_STRONGEST = 1e-3;
/** By so much less the sound has to be spread on a bent time scale: relative, and in natural units. */
const LESS_SPREAD = { share: 0.04, least: 10 };
/** Motors that glide at different paces. */
const MOST_MOTORS = 3;
/** For so long after the stretch a tone is foreseen in phase. */
const FORESEEN_S = 0.2;
const LOWEST_HZ = 20;
const HIGHEST_HZ = 3300;

/**
 * @param samples  the stretch, Float64Array [n]; not modified; too short a one gives none
 * @param noiseAt  power per sample of the smooth noise
 */
export function movingTones(samples: Float64Array, options: Heard): MovingTones {
  const { rateHz, noiseAt } = options;
  if (samples.length < LOOK_AT_LEAST_S * rateHz) return { tones: [], rest: undefined };
  let rest: Float64Array = samples.slice(-Math.round(LOOK_S * rateHz));
  const tones: MovingTone[] = [];
  for (let motor = 0; motor < MOST_MOTORS; motor++) {
    const slope = commonSlope(rest, options);
    if (slope === undefined) break;
    const bent = steadied(rest, slope, rateHz);
    const lines = steadyLines(bent, { rateHz, noiseAt });
    if (lines.length === 0) break;
    const spanS = bent.length / rateHz;
    const found = lines.map(({ frequencyHz, re, im }) => {
      const [c, s] = [Math.cos(2 * Math.PI * frequencyHz * spanS), Math.sin(2 * Math.PI * frequencyHz * spanS)];
      return { frequencyHz, slopeHzPerS: slope * frequencyHz, re: re * c + im * s, im: im * c - re * s };
    });
    rest = withoutMoving(rest, { tones: found, rateHz, startS: -rest.length / rateHz });
    tones.push(...found);
  }
  if (tones.length === 0) return { tones, rest: undefined };
  return { tones: tones.toSorted((a, b) => b.re ** 2 + b.im ** 2 - a.re ** 2 - a.im ** 2), rest };
}

/**
 * The samples without the tones.
 *
 * @param options.startS  time of the first sample, counted from the end of the stretch in which they were found
 */
export function withoutMoving(
  samples: Float64Array,
  options: { readonly tones: readonly MovingTone[]; readonly rateHz: number; readonly startS: number },
): Float64Array {
  const rest = samples.slice();
  for (const { frequencyHz, slopeHzPerS, re, im } of options.tones) {
    const slope = slopeHzPerS / frequencyHz;
    for (let t = 0; t < rest.length; t++) {
      const timeS = options.startS + t / options.rateHz;
      const sure = timeS > 0 ? 1 / (1 + (timeS / FORESEEN_S) ** 4) : 1;
      const angle = 2 * Math.PI * frequencyHz * bentTimeS(timeS, slope);
      rest[t]! -= sure * (re * Math.cos(angle) + im * Math.sin(angle));
    }
  }
  return rest;
}

/** Time on a scale that runs with a tone f exp(s t): (exp(s t) − 1)/s, 0 at the end of the stretch. */
const bentTimeS = (timeS: number, slope: number): number => Math.expm1(slope * timeS) / slope;

/** The samples on that scale, where a tone of this relative slope stands still at the frequency that it has at the end. */
function steadied(samples: Float64Array, slope: number, rateHz: number): Float64Array {
  const last = samples.length - 3;
  const count = Math.floor(-bentTimeS(-samples.length / rateHz, slope) * rateHz) - 4;
  return Float64Array.from({ length: Math.max(0, count) }, (_, u) => {
    const timeS = Math.log1p((slope * (u - count)) / rateHz) / slope;
    const at = Math.max(1, Math.min(last, samples.length + timeS * rateHz));
    const i = Math.floor(at);
    const x = at - i;
    const [a, b, c, d] = [samples[i - 1]!, samples[i]!, samples[i + 1]!, samples[i + 2]!];
    // cubic through four neighbours (Lagrange), Horner's way
    const [p, q] = [(d - a) / 6 + (b - c) / 2, (a + c) / 2 - b];
    return b + x * (c - a / 3 - b / 2 - d / 6 + x * (q + x * p));
  });
}

/**
 * The relative slope at which the sound above the noise is spread over the fewest bins; undefined where it is best left as it is. The
 * last part alone is blurred little by a slope that is not quite right, so that a few tries find where to look closer.
 */
function commonSlope(samples: Float64Array, options: Heard) {
  const { rateHz } = options;
  const spread = (heard: Float64Array, slope: number) =>
    spreadOf(Math.abs(slope) < LEAST_SLOPE / 2 ? heard : steadied(heard, slope, rateHz), options);
  const asHeard = spread(samples, 0);
  if (asHeard < LESS_SPREAD.least) return undefined;
  const end = samples.slice(-Math.round(ROUGH_LOOK_S * rateHz));
  const roughly = leastAmong(-MOST_SLOPE, MOST_SLOPE, ROUGH_STEP, (slope) => spread(end, slope));
  const closer = leastAmong(roughly - ROUGH_STEP, roughly + ROUGH_STEP, FINE_STEP, (slope) => spread(samples, slope));
  const slope = leastAmong(closer - FINE_STEP, closer + FINE_STEP, FINEST_STEP, (x) => spread(samples, x));
  if (Math.abs(slope) < LEAST_SLOPE) return undefined;
  const gain = asHeard - spread(samples, slope);
  return gain > LESS_SPREAD.share * asHeard && gain > LESS_SPREAD.least ? slope : undefined;
}

/** Where on a grid a function is least. */
function leastAmong(from: number, to: number, step: number, of: (x: number) => number): number {
  let best = { x: from, value: Number.POSITIVE_INFINITY };
  for (let i = 0; i <= Math.round((to - from) / step); i++) {
    const x = from + i * step;
    const value = of(x);
    if (value < best.value) best = { x, value };
  }
  return best.x;
}

interface Heard {
  readonly rateHz: number;
  readonly noiseAt: (hz: number) => number;
}

/** Powers over the noise in the band where motors sound. */
function overNoise(samples: Float64Array, { rateHz, noiseAt }: Heard): Float64Array {
  const maker = spectrumMaker({ length: samples.length, sampleRateHz: rateHz, window: 'hann' });
  const from = Math.ceil(LOWEST_HZ / maker.binWidthHz);
  const to = Math.min(maker.binCount, Math.ceil(HIGHEST_HZ / maker.binWidthHz));
  return maker.noisePower(samples).map((power, k) => (k < from || k >= to ? 0 : power / noiseAt(k * maker.binWidthHz)));
}

const largestOf = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, value), 0);

/** Sum over the bins of the natural logarithm of what stands over the noise: a tone that moves fills more bins than one that stands. */
function spreadOf(samples: Float64Array, heard: Heard): number {
  const ratios = overNoise(samples, heard);
  const least = Math.max(OVER_NOISE, OF_STRONGEST * largestOf(ratios));
  return ratios.reduce((sum, ratio) => (ratio > least ? sum + Math.log(ratio / least) : sum), 0);
}

/** Whether so much stands over the noise that something may move. */
export const isTonal = (samples: Float64Array, heard: Heard): boolean =>
  spreadOf(samples.subarray(-Math.round(LOOK_S * heard.rateHz)), heard) >= LESS_SPREAD.least;
