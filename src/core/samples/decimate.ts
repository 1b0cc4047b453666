/** Brings any sample rate down to 8 to 16 kHz, block by block: a belt says nothing above 3 kHz, and everything later is faster for it. */

/** Lowest rate that is kept, Hz: flat to 2.5 kHz, 1 dB down at 3 kHz. */
const LOWEST_RATE_HZ = 8000;
/** Taps of the low-pass for each output sample; 20 give 60 dB at the folding frequency. */
const TAPS_PER_PHASE = 20;
/** Cut-off of the low-pass as a share of the output rate; leaves room for its slope below the half. */
const CUTOFF_SHARE = 0.43;

export interface Decimator {
  readonly factor: number;
  readonly rateHz: number;
  /**
   * Takes the next samples; gives the output samples that are complete by now. Output sample m stands at the time of input
   * sample m · factor: the delay of the linear-phase filter is taken out.
   */
  push(samples: ArrayLike<number>): Float64Array;
  /** The last output samples, with silence assumed behind the end. */
  finish(): Float64Array;
}

/** @throws RangeError when the rate is not finite and positive */
export function createDecimator(sampleRateHz: number): Decimator {
  if (!(sampleRateHz > 0 && Number.isFinite(sampleRateHz)))
    throw new RangeError(`createDecimator needs a rate > 0 Hz, got ${sampleRateHz}`);
  const factor = Math.max(1, Math.floor(sampleRateHz / LOWEST_RATE_HZ));
  const taps = lowPass(factor);
  const half = (taps.length - 1) / 2;
  let kept = new Float64Array(half); // input from half before the next output's centre on; begins with silence
  let end = half;

  const push = (samples: ArrayLike<number>): Float64Array => {
    if (kept.length < end + samples.length) {
      const larger = new Float64Array(2 * (end + samples.length));
      larger.set(kept.subarray(0, end));
      kept = larger;
    }
    kept.set(samples, end);
    end += samples.length;
    const count = Math.max(0, Math.floor((end - taps.length) / factor) + 1);
    const output = new Float64Array(count);
    for (let m = 0; m < count; m++) {
      const from = m * factor;
      let sum = 0;
      for (let i = 0; i < taps.length; i++) sum += taps[i]! * kept[from + i]!;
      output[m] = sum;
    }
    kept.copyWithin(0, count * factor, end);
    end -= count * factor;
    return output;
  };

  return { factor, rateHz: sampleRateHz / factor, push, finish: () => push(new Float64Array(half)) };
}

/** Windowed-sinc low-pass, odd number of taps, sum 1; a single 1 where nothing is to be decimated. */
function lowPass(factor: number): Float64Array {
  if (factor === 1) return Float64Array.of(1);
  const half = (TAPS_PER_PHASE / 2) * factor;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, i) => {
    const x = (2 * CUTOFF_SHARE * (i - half)) / factor;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    const u = Math.PI * (1 + (i - half) / (half + 1));
    return sinc * (0.42 - 0.5 * Math.cos(u) + 0.08 * Math.cos(2 * u)); // Blackman, symmetric
  });
  const total = taps.reduce((sum, tap) => sum + tap, 0);
  return taps.map((tap) => tap / total);
}
