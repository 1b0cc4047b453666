/** Windowed, zero-padded amplitude spectra for the eye and for the background; full scale is a sine of amplitude 1. */

import { fftPlan, powerOfTwoFrom } from '../math/fft.ts';
import { type CosineWindow, coherentGain, cosineWindow, energy } from './window.ts';

export interface SpectrumMaker {
  /** Samples that one spectrum takes. */
  readonly length: number;
  readonly binWidthHz: number;
  /** Bins from 0 to half the sample rate. */
  readonly binCount: number;
  /** Amplitudes, Float64Array [binCount], 1 for a full-scale sine in the middle of a bin; `samples` [length], not modified. */
  amplitudes(samples: ArrayLike<number>): Float64Array;
  /** Power per sample of noise, Float64Array [binCount]: |X|² / Σw², its mean is the variance for white noise. */
  noisePower(samples: ArrayLike<number>): Float64Array;
  /** Amplitude at which noise of a power per sample stands in `amplitudes`. */
  noiseAmplitude(powerPerSample: number): number;
}

/**
 * @param options.length   samples under the window
 * @param options.padding  zero-padding: the transform is at least this many times as long; default 1
 */
export function spectrumMaker(options: {
  readonly length: number;
  readonly sampleRateHz: number;
  readonly window: CosineWindow;
  readonly padding?: number | undefined;
}): SpectrumMaker {
  const { length, sampleRateHz } = options;
  const weights = cosineWindow(options.window, length);
  const amplitudeScale = 2 / (length * coherentGain(weights));
  const powerScale = 1 / energy(weights);
  const plan = fftPlan(powerOfTwoFrom(length * (options.padding ?? 1)));
  const binCount = plan.size / 2 + 1;
  const windowed = new Float64Array(length);
  const transform = new Float64Array(2 * plan.size);

  /** |X|² of the windowed samples, times a factor, bin by bin. */
  const power = (samples: ArrayLike<number>, factor: number): Float64Array => {
    if (samples.length !== length) throw new RangeError(`spectrum needs ${length} samples, got ${samples.length}`);
    for (let t = 0; t < length; t++) windowed[t] = samples[t]! * weights[t]!;
    plan.transform(windowed, transform);
    const powers = new Float64Array(binCount);
    for (let k = 0; k < binCount; k++) powers[k] = (transform[2 * k]! ** 2 + transform[2 * k + 1]! ** 2) * factor;
    return powers;
  };

  return {
    length,
    binWidthHz: sampleRateHz / plan.size,
    binCount,
    amplitudes: (samples) => power(samples, amplitudeScale ** 2).map(Math.sqrt),
    noisePower: (samples) => power(samples, powerScale),
    noiseAmplitude: (powerPerSample) => amplitudeScale * Math.sqrt(powerPerSample / powerScale),
  };
}

/** Decibels relative to amplitude 1; −Infinity never occurs: digital silence reads −200. */
export const levelDbfs = (amplitude: number): number => 20 * Math.log10(Math.max(amplitude, 1e-10));
