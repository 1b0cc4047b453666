/** The room before the pluck: how loud its noise is at each frequency, and which steady tones stand in it. */

import { median } from '../math/quantile.ts';
import { spectrumMaker } from '../spectrum/spectrum.ts';
import { type MovingTone, movingTones } from './moving-tones.ts';

/** A line stands this much over the smooth noise around it; the largest of some hundred noise bins reaches about 8. */
const LINE_OVER_NOISE = 14;
/** The noise is smooth over the wider of the two. */
const SMOOTH_HZ = 80;
const SMOOTH_SHARE = 0.2;
const NOISE_STEP_HZ = 10;
const FEWEST_BINS = 3;
/** Median of an exponentially distributed power over its mean. */
const MEDIAN_OF_EXPONENTIAL = Math.LN2;
/** A tenth of the noise of 16-bit samples; keeps digital silence from being infinitely quiet. */
const ROUNDING_POWER = 1e-11;
const HIGHEST_LINE_HZ = 3300;
const LOWEST_LINE_HZ = 15;
const MOST_LINES = 24;
/** Power of a line that is taken to remain after it was subtracted: real tones wander. */
const LINE_REMAINS = 0.03;
/** What loses this much amplitude from the first to the second half of the stretch is the end of a ring, not a steady tone. */
const STEADY_SHARE = 0.75;
/** Lines this many bins of the stretch apart can be told apart. */
const APART_BINS = 4;
const DISTURBS_WITHIN_HZ = 40;

/** A tone that stood in the room before the pluck: re cos(ωt) + im sin(ωt), t from the start of the stretch. */
export interface SteadyLine {
  readonly frequencyHz: number;
  readonly re: number;
  readonly im: number;
}

export interface Background {
  readonly rateHz: number;
  /** Length of the stretch that was heard, s. */
  readonly heardS: number;
  readonly lines: readonly SteadyLine[];
  /** Tones that glide; they stay in the samples. */
  readonly moving: readonly MovingTone[];
  /** Share of the lines' power that is still in samples from which they were taken away. */
  readonly lineRemains: number;
  /** Power per sample of the smooth noise at a frequency: the variance for white noise; > 0. */
  noiseAt(frequencyHz: number): number;
}

/**
 * @param samples  the stretch before the onset, decimated, Float64Array [n]; not modified
 */
export function backgroundOf(samples: Float64Array, rateHz: number): Background {
  const noise = smoothNoise(samples, rateHz);
  const lines = steadyLines(samples, { rateHz, noise });
  const noiseAt = (frequencyHz: number) => interpolated(noise, frequencyHz);
  const rest = withoutLines(samples, { lines, rateHz, startIndex: 0 });
  return {
    rateHz,
    heardS: samples.length / rateHz,
    lines,
    moving: movingTones(rest, { rateHz, noiseAt }),
    lineRemains: LINE_REMAINS,
    noiseAt,
  };
}

/**
 * The samples with the steady lines taken away.
 *
 * @param options.startIndex  index of the first sample, counted from the start of the stretch in which the lines were found
 */
export function withoutLines(
  samples: Float64Array,
  options: { readonly lines: readonly SteadyLine[]; readonly rateHz: number; readonly startIndex: number },
): Float64Array {
  const result = samples.slice();
  for (const { frequencyHz, re, im } of options.lines) {
    const step = (2 * Math.PI * frequencyHz) / options.rateHz;
    const angle = step * options.startIndex;
    eachTurn(
      step,
      result.length,
      (t, c, s) => {
        result[t]! -= re * c + im * s;
      },
      angle,
    );
  }
  return result;
}

interface SmoothNoise {
  readonly stepHz: number;
  /** Float64Array [n], power per sample at k · stepHz. */
  readonly powers: Float64Array;
}

/** Running median of one Hann spectrum of the whole stretch: single lines, and hum with all its harmonics, stay out of it. */
function smoothNoise(samples: Float64Array, rateHz: number): SmoothNoise {
  const maker = spectrumMaker({ length: samples.length, sampleRateHz: rateHz, window: 'hann' });
  const raw = maker.noisePower(samples);
  const powers = Float64Array.from({ length: Math.floor(rateHz / 2 / NOISE_STEP_HZ) + 1 }, (_, i) => {
    const centreHz = i * NOISE_STEP_HZ;
    const halfHz = Math.max(SMOOTH_HZ, SMOOTH_SHARE * centreHz) / 2;
    const from = Math.max(1, Math.min(Math.round((centreHz - halfHz) / maker.binWidthHz), maker.binCount - FEWEST_BINS));
    const to = Math.max(from + FEWEST_BINS, Math.round((centreHz + halfHz) / maker.binWidthHz) + 1);
    return median(raw.subarray(from, to)) / MEDIAN_OF_EXPONENTIAL + ROUNDING_POWER;
  });
  return { stepHz: NOISE_STEP_HZ, powers };
}

function interpolated({ stepHz, powers }: SmoothNoise, frequencyHz: number): number {
  const position = Math.min(frequencyHz / stepHz, powers.length - 1.000001);
  const below = Math.floor(position);
  return powers[below]! + (position - below) * (powers[below + 1]! - powers[below]!);
}

/** Lines found strongest first, each fitted to the stretch and taken away before the next is looked for. */
function steadyLines(samples: Float64Array, options: { readonly rateHz: number; readonly noise: SmoothNoise }): SteadyLine[] {
  const { rateHz, noise } = options;
  const lines: SteadyLine[] = [];
  const maker = spectrumMaker({ length: samples.length, sampleRateHz: rateHz, window: 'hann', padding: 2 });
  const lastBin = Math.min(maker.binCount - 2, Math.floor(Math.min(HIGHEST_LINE_HZ, 0.42 * rateHz) / maker.binWidthHz));
  const noisePowers = Float64Array.from({ length: lastBin + 1 }, (_, k) => interpolated(noise, k * maker.binWidthHz));
  let rest = samples;
  while (lines.length < MOST_LINES) {
    const powers = maker.noisePower(rest);
    let best = { ratio: LINE_OVER_NOISE, bin: -1 };
    for (let k = Math.ceil(LOWEST_LINE_HZ / maker.binWidthHz); k <= lastBin; k++) {
      const ratio = powers[k]! / noisePowers[k]!;
      if (ratio > best.ratio) best = { ratio, bin: k };
    }
    if (best.bin < 0) break;
    const line = fittedLine(rest, { rateHz, startHz: best.bin * maker.binWidthHz });
    rest = withoutLines(rest, { lines: [line], rateHz, startIndex: 0 });
    lines.push(line);
  }
  return lines.filter((line) => {
    // judged without the other lines, or a stronger one near by would beat with it; what lies closer may be the same decaying peak
    const others = lines.filter((other) => {
      const apartHz = Math.abs(other.frequencyHz - line.frequencyHz);
      return apartHz > (APART_BINS * rateHz) / samples.length && apartHz < DISTURBS_WITHIN_HZ;
    });
    return isSteady(line, withoutLines(samples, { lines: others, rateHz, startIndex: 0 }), rateHz);
  });
}

function isSteady(line: SteadyLine, samples: Float64Array, rateHz: number): boolean {
  const half = samples.length >> 1;
  const first = amplitudeAt(samples.subarray(0, half), line.frequencyHz, rateHz);
  const second = amplitudeAt(samples.subarray(half), line.frequencyHz, rateHz);
  return second > STEADY_SHARE * first;
}

function amplitudeAt(samples: Float64Array, frequencyHz: number, rateHz: number): number {
  let re = 0;
  let im = 0;
  eachTurn((2 * Math.PI * frequencyHz) / rateHz, samples.length, (t, c, s) => {
    re += samples[t]! * c;
    im += samples[t]! * s;
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

/** Calls back with cos and sin of `start + step · t` for t from 0: one rotation each instead of two functions, exact to 1e-12 over a second. */
function eachTurn(step: number, count: number, visit: (t: number, cos: number, sin: number) => void, start = 0): void {
  const turnRe = Math.cos(step);
  const turnIm = Math.sin(step);
  let re = Math.cos(start);
  let im = Math.sin(start);
  for (let t = 0; t < count; t++) {
    visit(t, re, im);
    const next = re * turnRe - im * turnIm;
    im = re * turnIm + im * turnRe;
    re = next;
  }
}

/** Least squares of one steady sinusoid: amplitude and phase are linear, the frequency follows by Gauss-Newton steps. */
function fittedLine(samples: Float64Array, options: { readonly rateHz: number; readonly startHz: number }): SteadyLine {
  const { rateHz } = options;
  const largestStep = rateHz / samples.length / 2;
  const middle = (samples.length - 1) / 2;
  let frequencyHz = options.startHz;
  let line = { frequencyHz, re: 0, im: 0 };
  for (let iteration = 0; iteration < 6; iteration++) {
    const step = (2 * Math.PI * frequencyHz) / rateHz;
    let cc = 0;
    let cs = 0;
    let ss = 0;
    let xc = 0;
    let xs = 0;
    eachTurn(step, samples.length, (t, c, s) => {
      cc += c * c;
      cs += c * s;
      ss += s * s;
      xc += samples[t]! * c;
      xs += samples[t]! * s;
    });
    const determinant = cc * ss - cs * cs;
    line = { frequencyHz, re: (xc * ss - xs * cs) / determinant, im: (xs * cc - xc * cs) / determinant };
    let slope = 0;
    let curvature = 0;
    const { re, im } = line;
    eachTurn(step, samples.length, (t, c, s) => {
      const derivative = (t - middle) * (im * c - re * s); // about the middle, where phase and frequency do not mix
      slope += (samples[t]! - re * c - im * s) * derivative;
      curvature += derivative * derivative;
    });
    if (!(curvature > 0)) break;
    const change = ((slope / curvature) * rateHz) / (2 * Math.PI);
    frequencyHz += Math.max(-largestStep, Math.min(largestStep, change));
    if (Math.abs(change) < 1e-4 * largestStep) break;
  }
  return line;
}
