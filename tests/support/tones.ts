/** Sounds whose truth is plain to see: damped sinusoids and white noise as sampled functions, nothing of the synthesis in them. */

import type { Recording } from '../../src/core/samples/recording.ts';
import { createRandom } from '../../src/core/synthesis/random.ts';

/** a exp(−t/τ) cos(2π f (t − start) + phase) from its start on; without `decayS` it never dies, without `startS` it begins at 0. */
export interface Tone {
  readonly frequencyHz: number;
  readonly amplitude: number;
  readonly decayS?: number | undefined;
  readonly phase?: number | undefined;
  readonly startS?: number | undefined;
}

export interface Extent {
  readonly rateHz: number;
  readonly count: number;
}

/** Float64Array [count]: the sum of the tones, with white noise of a standard deviation. */
export function tones(list: readonly Tone[], extent: Extent & { readonly noise?: number | undefined; readonly seed?: number | undefined }) {
  const { rateHz, count, noise = 0, seed = 1 } = extent;
  const random = createRandom(seed);
  const samples = Float64Array.from({ length: count }, () => (noise > 0 ? noise * random.gaussian() : 0));
  for (const { frequencyHz, amplitude, decayS = Number.POSITIVE_INFINITY, phase = 0, startS = 0 } of list) {
    for (let t = Math.ceil(startS * rateHz); t < count; t++) {
      const s = t / rateHz - startS;
      samples[t]! += amplitude * Math.exp(-s / decayS) * Math.cos(2 * Math.PI * frequencyHz * s + phase);
    }
  }
  return samples;
}

/** X_k = Σ x_t exp(−2πi k t / size), summed as it stands. */
export function directSum(samples: ArrayLike<number>, k: number, size: number): { readonly re: number; readonly im: number } {
  let [re, im] = [0, 0];
  for (let t = 0; t < samples.length; t++) {
    const angle = (2 * Math.PI * ((k * t) % size)) / size; // k t stays exact, so the angle does too
    re += samples[t]! * Math.cos(angle);
    im -= samples[t]! * Math.sin(angle);
  }
  return { re, im };
}

/** Partials of a hinged stiff string, f_m = m f_1 sqrt((1 + B m²)/(1 + B)), that fall in amplitude and in decay time. */
export const stiffPartials = (options: {
  readonly firstHz: number;
  readonly inharmonicity: number;
  readonly numbers: readonly number[];
  readonly amplitude: number;
  readonly decayS: number;
  readonly startS?: number | undefined;
}): Tone[] =>
  options.numbers.map((m) => ({
    frequencyHz: m * options.firstHz * Math.sqrt((1 + options.inharmonicity * m * m) / (1 + options.inharmonicity)),
    amplitude: options.amplitude / m,
    decayS: options.decayS / (0.9 + 0.1 * m),
    phase: 0.7 * m,
    startS: options.startS,
  }));

export const recordingOf = (samples: ArrayLike<number>, sampleRateHz: number): Recording => ({
  samples: Float32Array.from(samples),
  sampleRateHz,
});

/** Root mean square. */
export const rmsOf = (samples: ArrayLike<number>): number => {
  let sum = 0;
  for (let t = 0; t < samples.length; t++) sum += samples[t]! ** 2;
  return Math.sqrt(sum / samples.length);
};

/** Mean and standard deviation (n − 1). */
export function spread(values: readonly number[]): { readonly mean: number; readonly sd: number } {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return { mean, sd: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1)) };
}
