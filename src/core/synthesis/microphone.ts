/** What a microphone does to sound: it loses what is low, and cuts off what is loud. */

import { filtered, firstOrderHighPass, secondOrderHighPass } from './filter.ts';

export interface MicrophoneCorner {
  readonly cornerHz: number;
  /** 4 is two of the second order in a row, as where a wind filter follows a small capsule. */
  readonly order: 1 | 2 | 4;
}

export function throughCorner(sound: Float64Array, { cornerHz, order }: MicrophoneCorner, sampleRateHz: number): Float64Array {
  if (order === 1) return filtered(sound, firstOrderHighPass(cornerHz, sampleRateHz));
  const once = filtered(sound, secondOrderHighPass(cornerHz, sampleRateHz));
  return order === 2 ? once : filtered(once, secondOrderHighPass(cornerHz, sampleRateHz));
}

/** Float32Array [sampleCount] held at the rails of full scale. */
export const atRails = (sound: Float64Array): Float32Array<ArrayBuffer> =>
  Float32Array.from(sound, (value) => Math.max(-1, Math.min(1, value)));
