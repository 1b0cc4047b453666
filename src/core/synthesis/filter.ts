/** First- and second-order filters, as microphones and mouths are made of. */

/** y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] − a1 y[n-1] − a2 y[n-2]. */
export interface Coefficients {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

export function filtered(samples: Float64Array, { b0, b1, b2, a1, a2 }: Coefficients): Float64Array {
  const out = new Float64Array(samples.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let index = 0; index < samples.length; index++) {
    const x = samples[index]!;
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    out[index] = y;
    [x2, x1, y2, y1] = [x1, x, y1, y];
  }
  return out;
}

/** H(s) = s / (s + ω), made discrete by the bilinear transform, −3 dB at the corner. */
export function firstOrderHighPass(cornerHz: number, sampleRateHz: number): Coefficients {
  const k = Math.tan((Math.PI * cornerHz) / sampleRateHz);
  return { b0: 1 / (1 + k), b1: -1 / (1 + k), b2: 0, a1: (k - 1) / (1 + k), a2: 0 };
}

/** H(s) = s² / (s² + √2 ω s + ω²), maximally flat, −3 dB at the corner. */
export function secondOrderHighPass(cornerHz: number, sampleRateHz: number): Coefficients {
  const k = Math.tan((Math.PI * cornerHz) / sampleRateHz);
  const norm = 1 / (1 + Math.SQRT2 * k + k * k);
  return { b0: norm, b1: -2 * norm, b2: norm, a1: 2 * (k * k - 1) * norm, a2: (1 - Math.SQRT2 * k + k * k) * norm };
}

/** H(s) = ω / (s + ω), made discrete by the bilinear transform. */
export function firstOrderLowPass(cornerHz: number, sampleRateHz: number): Coefficients {
  const k = Math.tan((Math.PI * cornerHz) / sampleRateHz);
  return { b0: k / (1 + k), b1: k / (1 + k), b2: 0, a1: (k - 1) / (1 + k), a2: 0 };
}

/** A pole pair: passes a band about a centre, gain 1 there. */
export function resonator(centreHz: number, bandwidthHz: number, sampleRateHz: number): Coefficients {
  const k = Math.tan((Math.PI * centreHz) / sampleRateHz);
  const kByQ = (k * bandwidthHz) / centreHz;
  const norm = 1 / (1 + kByQ + k * k);
  return { b0: kByQ * norm, b1: 0, b2: -kByQ * norm, a1: 2 * (k * k - 1) * norm, a2: (1 - kByQ + k * k) * norm };
}
