/** Frequency of a tone by its phase in two windows: slow and plain, and independent of the estimator that it helps to prove. */

/** Complex amplitude at a frequency under a Hann window of `lengthS` that starts at `startS`; phase referred to the window's middle. */
function component(samples: ArrayLike<number>, at: { frequencyHz: number; startS: number; lengthS: number; sampleRateHz: number }) {
  const from = Math.round(at.startS * at.sampleRateHz);
  const count = Math.round(at.lengthS * at.sampleRateHz);
  let [re, im] = [0, 0];
  for (let index = 0; index < count; index++) {
    const weight = (1 - Math.cos((2 * Math.PI * (index + 0.5)) / count)) / count;
    const phase = (2 * Math.PI * at.frequencyHz * (from + index)) / at.sampleRateHz;
    re += weight * samples[from + index]! * Math.cos(phase);
    im -= weight * samples[from + index]! * Math.sin(phase);
  }
  return { amplitude: 2 * Math.hypot(re, im), phase: Math.atan2(im, re) };
}

/**
 * Mean frequency between two windows, from the phase by which the tone runs ahead of `nearHz`; `nearHz` must be closer than half a
 * turn over the gap.
 */
export function toneHz(
  samples: ArrayLike<number>,
  at: { nearHz: number; firstS: number; secondS: number; lengthS: number; sampleRateHz: number },
): number {
  const { nearHz, firstS, secondS, lengthS, sampleRateHz } = at;
  const first = component(samples, { frequencyHz: nearHz, startS: firstS, lengthS, sampleRateHz });
  const second = component(samples, { frequencyHz: nearHz, startS: secondS, lengthS, sampleRateHz });
  const turns = (second.phase - first.phase) / (2 * Math.PI);
  return nearHz + (turns - Math.round(turns)) / (secondS - firstS);
}

/** Amplitude of a tone under a Hann window. */
export const toneAmplitude = (
  samples: ArrayLike<number>,
  at: { frequencyHz: number; startS: number; lengthS: number; sampleRateHz: number },
): number => component(samples, at).amplitude;
