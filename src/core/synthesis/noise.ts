/** Noise of a room and of a microphone; all of it has a root mean square of 1 until a level is set. */

import { type Coefficients, filtered, firstOrderHighPass, firstOrderLowPass } from './filter.ts';
import { rms } from './level.ts';
import type { Random } from './random.ts';

export function whiteNoise(random: Random, sampleCount: number): Float64Array {
  return Float64Array.from({ length: sampleCount }, () => random.gaussian());
}

/** Power falling by 3 dB an octave from 10 Hz on: white noise through poles and zeros by turns, each pair a factor 4 above the last. */
export function pinkNoise(random: Random, sampleCount: number, sampleRateHz: number): Float64Array {
  let noise = whiteNoise(random, sampleCount);
  for (let poleHz = 10; 2 * poleHz < 0.45 * sampleRateHz; poleHz *= 4) noise = filtered(noise, shelf(poleHz, 2 * poleHz, sampleRateHz));
  const power = rms(noise);
  return noise.map((value) => value / power);
}

/** H(s) = (1 + s/ω_zero) / (1 + s/ω_pole): falls by 6 dB an octave between pole and zero. */
function shelf(poleHz: number, zeroHz: number, sampleRateHz: number): Coefficients {
  const pole = Math.tan((Math.PI * poleHz) / sampleRateHz);
  const zero = Math.tan((Math.PI * zeroHz) / sampleRateHz);
  const norm = pole / (zero * (1 + pole));
  return { b0: norm * (1 + zero), b1: norm * (zero - 1), b2: 0, a1: (pole - 1) / (1 + pole), a2: 0 };
}

/** A finger's scrape: band noise that begins at once and dies with a time constant; peak about 1. */
export function scrape(random: Random, { decayS, sampleRateHz }: { decayS: number; sampleRateHz: number }): Float64Array {
  const sampleCount = Math.ceil(8 * decayS * sampleRateHz);
  const lowPassHz = Math.min(5000, 0.4 * sampleRateHz);
  const band = filtered(
    filtered(whiteNoise(random, sampleCount), firstOrderHighPass(500, sampleRateHz)),
    firstOrderLowPass(lowPassHz, sampleRateHz),
  );
  return band.map((value, index) => 0.5 * value * Math.exp(-index / (decayS * sampleRateHz)));
}
