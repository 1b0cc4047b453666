/** Tones of the room that glide, as of a motor that speeds up: they cannot be taken away in phase, but their path can be foreseen. */

import { spectrumMaker } from '../spectrum/spectrum.ts';

export interface MovingTone {
  /** At the end of the stretch. */
  readonly frequencyHz: number;
  readonly slopeHzPerS: number;
  readonly amplitude: number;
}

const FRAME_S = 0.08;
/** A tone stands this much over the smooth noise in each of three frames. */
const OVER_NOISE = 20;
const MOST_TONES = 16;
const LOWEST_HZ = 20;
/** Slower ones are steady lines, which are found elsewhere. */
const LEAST_SLOPE = 0.02;
const MOST_SLOPE = 1.2;
/** The same tone in three frames: its frequency lies on a line to this many hertz, its amplitude within this factor. */
const ON_A_LINE_HZ = 4;
const SAME_AMPLITUDE = 2.5;

interface Peak {
  readonly frequencyHz: number;
  readonly amplitude: number;
}

/**
 * Tones that glide through the end of a stretch.
 *
 * @param samples  the stretch without its steady lines, Float64Array [n]; shorter than three frames gives none
 * @param noiseAt  power per sample of the smooth noise
 */
export function movingTones(
  samples: Float64Array,
  options: { readonly rateHz: number; readonly noiseAt: (hz: number) => number },
): MovingTone[] {
  const { rateHz, noiseAt } = options;
  const length = Math.round(FRAME_S * rateHz);
  if (samples.length < 3 * length) return [];
  const maker = spectrumMaker({ length, sampleRateHz: rateHz, window: 'hann', padding: 4 });
  const frame = (back: number) => {
    const end = samples.length - back * length;
    return peaksOf(maker.amplitudes(samples.subarray(end - length, end)), maker.binWidthHz, (hz) => maker.noiseAmplitude(noiseAt(hz)));
  };
  const [late, middle, early] = [frame(0), frame(1), frame(2)];
  return late
    .flatMap((peak) => {
      const before = middle.flatMap((second) => {
        const foreseen = 2 * second.frequencyHz - peak.frequencyHz;
        const third = early.find((p) => Math.abs(p.frequencyHz - foreseen) < ON_A_LINE_HZ && isLike(p, peak));
        return third && isLike(second, peak) ? [third] : [];
      });
      const slopes = before.map((third) => (peak.frequencyHz - third.frequencyHz) / (2 * FRAME_S));
      const slopeHzPerS = slopes.find(
        (slope) => Math.abs(slope) > LEAST_SLOPE * peak.frequencyHz && Math.abs(slope) < MOST_SLOPE * peak.frequencyHz,
      );
      if (slopeHzPerS === undefined) return [];
      return [{ frequencyHz: peak.frequencyHz + (slopeHzPerS * FRAME_S) / 2, slopeHzPerS, amplitude: peak.amplitude }];
    })
    .slice(0, MOST_TONES);
}

const isLike = (a: Peak, b: Peak): boolean => a.amplitude < SAME_AMPLITUDE * b.amplitude && b.amplitude < SAME_AMPLITUDE * a.amplitude;

function peaksOf(amplitudes: Float64Array, binWidthHz: number, noiseAmplitude: (hz: number) => number): Peak[] {
  const peaks: Peak[] = [];
  for (let k = Math.ceil(LOWEST_HZ / binWidthHz); k < amplitudes.length - 1; k++) {
    const [below, here, above] = [amplitudes[k - 1]!, amplitudes[k]!, amplitudes[k + 1]!];
    if (!(here > below && here >= above)) continue;
    if (here ** 2 < OVER_NOISE * noiseAmplitude(k * binWidthHz) ** 2) continue;
    const curvature = below - 2 * here + above;
    peaks.push({ frequencyHz: (k + (curvature < 0 ? (0.5 * (below - above)) / curvature : 0)) * binWidthHz, amplitude: here });
  }
  return peaks.toSorted((a, b) => b.amplitude - a.amplitude);
}
