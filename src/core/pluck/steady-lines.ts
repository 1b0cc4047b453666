/** Steady tones of the room: found strongest first, each fitted in frequency, amplitude and phase, so that it can be taken away from what follows. */

import { spectrumMaker } from '../spectrum/spectrum.ts';

/** A line stands this much over the smooth noise around it; the largest of some hundred noise bins reaches about 8. */
const LINE_OVER_NOISE = 14;
const HIGHEST_LINE_HZ = 3300;
const LOWEST_LINE_HZ = 15;
const MOST_LINES = 24;
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

/**
 * Lines found strongest first, each fitted to the stretch and taken away before the next is looked for.
 *
 * @param noiseAt  power per sample of the smooth noise at a frequency
 */
export function steadyLines(
  samples: Float64Array,
  options: { readonly rateHz: number; readonly noiseAt: (hz: number) => number },
): SteadyLine[] {
  const { rateHz, noiseAt } = options;
  const lines: SteadyLine[] = [];
  const maker = spectrumMaker({ length: samples.length, sampleRateHz: rateHz, window: 'hann', padding: 2 });
  const lastBin = Math.min(maker.binCount - 2, Math.floor(Math.min(HIGHEST_LINE_HZ, 0.42 * rateHz) / maker.binWidthHz));
  const noisePowers = Float64Array.from({ length: lastBin + 1 }, (_, k) => noiseAt(k * maker.binWidthHz));
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
