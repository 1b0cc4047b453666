/** Undoes the glide of a hard pluck by bending time: all partials of a span glide together, so one bend straightens them all. */

import { fftPlan } from '../math/fft.ts';
import { decayWindow, energy } from '../spectrum/window.ts';
import { type PluckSegment, type Stretch, stretchOf } from './segment.ts';

/** Golden section, and how many times the bracket is narrowed by it. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NARROWINGS = 9;
/** The glide at the touch lies between these multiples of the offset that the first fit shows, which has averaged over the ring. */
const BRACKET = { low: 0.6, high: 5 };
const MOST_GLIDE = 0.3;
/** The peak is looked for this far around where it was, relative. */
const AROUND = 0.12;
/** Without it the height ripples as the peak moves from bin to bin, and the search stops at a ripple. */
const PADDING = 4;

export interface Straightened {
  readonly segment: PluckSegment;
  /** Relative amount by which the frequency at the touch lies above the one at small amplitude. */
  readonly glideAtTouch: number;
}

/**
 * The segment on a time scale on which f(t) = f (1 + g exp(−2t/τ)) is constant, θ(t) = t + (g τ/2)(1 − exp(−2t/τ)), with the g that
 * makes the strongest partial's peak highest.
 *
 * @param options.offset       relative offset of the frequency that the first fit shows, > 0
 * @param options.frequencyHz  strongest partial
 * @param options.decayS       its amplitude decay time
 */
export function straightened(
  segment: PluckSegment,
  options: { readonly offset: number; readonly frequencyHz: number; readonly decayS: number; readonly fromS: number },
): Straightened {
  const { offset, decayS } = options;
  const bent = (glide: number) => bend(segment, { glide, decayS });
  const height = (glide: number) => peakHeight(stretchOf(bent(glide), { fromS: options.fromS, modelFloor: 0 }), options);
  let low = BRACKET.low * offset;
  let high = Math.min(MOST_GLIDE, BRACKET.high * offset);
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [height(left), height(right)];
  for (let i = 0; i < NARROWINGS; i++) {
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = height(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = height(right);
    }
  }
  const glideAtTouch = (low + high) / 2;
  return { segment: bent(glideAtTouch), glideAtTouch };
}

function bend(segment: PluckSegment, { glide, decayS }: { glide: number; decayS: number }): PluckSegment {
  const { samples, rateHz } = segment;
  const decay = decayS * rateHz;
  const bendBy = (glide * decay) / 2;
  const straight = new Float64Array(Math.max(0, Math.floor(samples.length - 2)));
  let t = 0;
  for (let u = 0; u < straight.length; u++) {
    // Newton on θ(t) = u from the time before, which lies less than one sample away
    for (let round = 0; round < 3; round++) {
      const e = Math.exp((-2 * t) / decay);
      t -= (t + bendBy * (1 - e) - u) / (1 + glide * e);
    }
    straight[u] = interpolated(samples, t);
  }
  return { ...segment, samples: straight };
}

/** Cubic (Lagrange) interpolation between four neighbours; exact to 60 dB below 1 kHz at 8 kHz. */
function interpolated(samples: Float64Array, t: number): number {
  const i = Math.max(1, Math.min(samples.length - 3, Math.floor(t)));
  const x = t - i;
  const [a, b, c, d] = [samples[i - 1]!, samples[i]!, samples[i + 1]!, samples[i + 2]!];
  return (
    (-a * x * (x - 1) * (x - 2)) / 6 +
    (b * (x + 1) * (x - 1) * (x - 2)) / 2 -
    (c * (x + 1) * x * (x - 2)) / 2 +
    (d * (x + 1) * x * (x - 1)) / 6
  );
}

/** Largest power under the matched filter near the strongest partial. */
function peakHeight({ samples, grid }: Stretch, options: { readonly frequencyHz: number; readonly decayS: number }): number {
  const window = decayWindow({ length: samples.length, decaySamples: options.decayS * grid.rateHz });
  const windowed = samples.map((x, t) => x * window[t]!);
  const plan = fftPlan(PADDING * grid.size);
  const spectrum = plan.transform(windowed);
  const binWidthHz = grid.binWidthHz / PADDING;
  const from = Math.max(1, Math.floor((options.frequencyHz * (1 - AROUND)) / binWidthHz));
  const to = Math.min(plan.size / 2 - 1, Math.ceil((options.frequencyHz * (1 + AROUND / 2)) / binWidthHz));
  const power = (k: number) => spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2;
  let top = from;
  for (let k = from; k <= to; k++) if (power(k) > power(top)) top = k;
  const [a, b, c] = [power(top - 1), power(top), power(top + 1)];
  const curvature = a - 2 * b + c;
  const height = curvature < 0 ? b - (a - c) ** 2 / (8 * curvature) : b;
  return height / energy(windowed); // bending stretches the ring, which would raise its peak by itself
}
