/** What else the microphone hears in a take of the corpus: noise, mains hum, motors that hold, wander or glide. */

import { pinkNoise } from '../../../src/core/synthesis/noise.ts';
import { createRandom } from '../../../src/core/synthesis/random.ts';
import type { MotorTone } from './plan.ts';

interface Extent {
  readonly seed: number;
  readonly sampleRateHz: number;
  readonly sampleCount: number;
}

/** Power of a sound as the root mean square between two samples. */
export function rootMeanSquare(samples: ArrayLike<number>, from = 0, to = samples.length): number {
  let sum = 0;
  for (let index = Math.max(0, from); index < to; index++) sum += samples[index]! ** 2;
  return Math.sqrt(sum / Math.max(1, to - Math.max(0, from)));
}

/** Adds `sound` with the given root mean square over all of it. */
export function addWithPower(into: Float64Array, sound: Float64Array, power: number): void {
  const own = rootMeanSquare(sound);
  if (own === 0) return;
  const factor = power / own;
  for (let index = 0; index < into.length; index++) into[index]! += factor * (sound[index] ?? 0);
}

export function hiss({ seed, sampleCount }: Extent): Float64Array {
  const random = createRandom(seed, 1);
  const noise = new Float64Array(sampleCount);
  for (let index = 0; index < sampleCount; index++) noise[index] = random.gaussian();
  return noise;
}

/** Held at the rails of full scale. */
export function railed(sound: Float64Array): Float32Array<ArrayBuffer> {
  const out = new Float32Array(sound.length);
  for (let index = 0; index < out.length; index++) out[index] = Math.max(-1, Math.min(1, sound[index]!));
  return out;
}

export const rumble = ({ seed, sampleRateHz, sampleCount }: Extent): Float64Array =>
  pinkNoise(createRandom(seed, 2), sampleCount, sampleRateHz);

const WALK_S = 0.3;

/** A tone with its harmonics, the first of amplitude 1. */
export function motor(tone: MotorTone, { seed, sampleRateHz, sampleCount }: Extent): Float64Array {
  const random = createRandom(seed, 3);
  const harmonics = tone.harmonicsDb.map((levelDb, index) => ({
    number: index + 1,
    gain: 10 ** (levelDb / 20),
    phase: 2 * Math.PI * random.uniform(),
  }));
  const keep = Math.exp(-1 / (WALK_S * sampleRateHz));
  const push = Math.sqrt(1 - keep * keep);
  let walk = random.gaussian();
  let turned = 0;
  const sound = new Float64Array(sampleCount);
  for (let index = 0; index < sampleCount; index++) {
    const hertz = tone.frequencyHz * Math.exp((tone.glidePerS * index) / sampleRateHz) * (1 + tone.wander * walk);
    let sum = 0;
    for (const { number, gain, phase } of harmonics) {
      if (number * hertz < 0.45 * sampleRateHz) sum += gain * Math.sin(number * turned + phase);
    }
    sound[index] = sum;
    turned += (2 * Math.PI * hertz) / sampleRateHz;
    if (tone.wander > 0) walk = keep * walk + push * random.gaussian();
  }
  return sound;
}

/** One-sided power density of a noise about one frequency, per hertz, from its Fourier components within a sixth of it. */
export function densityAt(noise: Float64Array, { frequencyHz, sampleRateHz }: { frequencyHz: number; sampleRateHz: number }): number {
  const probes = 16;
  let power = 0;
  for (let probe = 0; probe < probes; probe++) {
    const hertz = frequencyHz * (1 + (probe / (probes - 1) - 0.5) / 3);
    const [stepCos, stepSin] = [Math.cos((2 * Math.PI * hertz) / sampleRateHz), Math.sin((2 * Math.PI * hertz) / sampleRateHz)];
    let [cos, sin, re, im] = [1, 0, 0, 0];
    for (let index = 0; index < noise.length; index++) {
      re += noise[index]! * cos;
      im += noise[index]! * sin;
      [cos, sin] = [cos * stepCos - sin * stepSin, cos * stepSin + sin * stepCos];
    }
    power += re * re + im * im;
  }
  return (2 * power) / (probes * noise.length * sampleRateHz);
}
