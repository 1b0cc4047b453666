/** The room before the pluck: how loud its noise is at each frequency, and which steady tones stand in it. */

import { median } from '../math/quantile.ts';
import { spectrumMaker } from '../spectrum/spectrum.ts';
import { isTonal, type MovingTone, type MovingTones, movingTones } from './moving-tones.ts';
import { type SteadyLine, steadyLines, withoutLines } from './steady-lines.ts';

/** The noise is smooth over the wider of the two. */
const SMOOTH_HZ = 80;
const SMOOTH_SHARE = 0.2;
const NOISE_STEP_HZ = 10;
const FEWEST_BINS = 3;
/** Median of an exponentially distributed power over its mean. */
const MEDIAN_OF_EXPONENTIAL = Math.LN2;
/** A tenth of the noise of 16-bit samples; keeps digital silence from being infinitely quiet. */
const ROUNDING_POWER = 1e-11;
/** In so short a time a gliding tone does not yet fill the width over which the noise is smooth. */
const END_S = 0.15;
/** Power of a line that is taken to remain after it was subtracted: real tones wander. */
const LINE_REMAINS = 0.03;

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
  const standing = roomOf(samples, rateHz);
  const moving = movingIn(samples, standing);
  // what glides is in the way of what stands: only the part that was freed of it tells the rest
  const { noiseAt, lines } = moving.rest ? roomOf(moving.rest, rateHz) : standing;
  const room = moving.rest ?? samples;
  return {
    rateHz,
    heardS: room.length / rateHz,
    lines: lines.map((line) => startedEarlier(line, (samples.length - room.length) / rateHz)),
    moving: moving.tones,
    lineRemains: LINE_REMAINS,
    noiseAt,
  };
}

interface Room {
  readonly rateHz: number;
  readonly noiseAt: (hz: number) => number;
  readonly lines: readonly SteadyLine[];
}

function roomOf(samples: Float64Array, rateHz: number): Room {
  const noise = smoothNoise(samples, rateHz);
  const noiseAt = (frequencyHz: number) => interpolated(noise, frequencyHz);
  return { rateHz, noiseAt, lines: steadyLines(samples, { rateHz, noiseAt }) };
}

/** What moves in a room; looked for only where steady tones leave something over. */
function movingIn(samples: Float64Array, { rateHz, lines }: Room): MovingTones {
  const noise = smoothNoise(samples.subarray(-Math.round(END_S * rateHz)), rateHz);
  const heard = { rateHz, noiseAt: (hz: number) => interpolated(noise, hz) };
  const rest = withoutLines(samples, { lines, rateHz, startIndex: 0 });
  return isTonal(rest, heard) ? movingTones(samples, heard) : { tones: [], rest: undefined };
}

/** The same line with its phase counted from an earlier moment. */
function startedEarlier({ frequencyHz, re, im }: SteadyLine, byS: number): SteadyLine {
  const [c, s] = [Math.cos(2 * Math.PI * frequencyHz * byS), Math.sin(2 * Math.PI * frequencyHz * byS)];
  return { frequencyHz, re: re * c - im * s, im: re * s + im * c };
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
