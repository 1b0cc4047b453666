/** Samples of a WAV file as numbers and back; full scale is 1 on this side whatever the file holds. */

import type { WavFormat } from './wav-format.ts';

type SampleCoding = Pick<WavFormat, 'coding' | 'sampleBytes'>;

/** Beyond this a float is damage, not sound: integers of 32 bits written as floats still lie below it. */
const LARGEST_SENSIBLE = 2 ** 32;

/** Reads the sample at a byte; full scale = 1. What is no sensible number comes as NaN. */
export function sampleReader(view: DataView, { coding, sampleBytes }: SampleCoding): (at: number) => number {
  if (coding === 'float') {
    const read = sampleBytes === 4 ? (at: number) => view.getFloat32(at, true) : (at: number) => view.getFloat64(at, true);
    return (at) => {
      const value = read(at);
      return Math.abs(value) < LARGEST_SENSIBLE ? value : Number.NaN;
    };
  }
  switch (sampleBytes) {
    case 1:
      return (at) => (view.getUint8(at) - 128) / 2 ** 7;
    case 2:
      return (at) => view.getInt16(at, true) / 2 ** 15;
    case 3:
      return (at) => (view.getUint8(at) | (view.getUint8(at + 1) << 8) | (view.getInt8(at + 2) << 16)) / 2 ** 23;
    default:
      return (at) => view.getInt32(at, true) / 2 ** 31;
  }
}

/** Writes a sample at a byte. Integers are rounded and held at their rails, and what is not a number is written as 0. */
export function sampleWriter(view: DataView, { coding, sampleBytes }: SampleCoding): (at: number, value: number) => void {
  if (coding === 'float') {
    return sampleBytes === 4 ? (at, value) => view.setFloat32(at, value, true) : (at, value) => view.setFloat64(at, value, true);
  }
  const fullScale = 2 ** (8 * sampleBytes - 1);
  const toInteger = (value: number) => Math.max(-fullScale, Math.min(fullScale - 1, Math.round(value * fullScale))) || 0;
  switch (sampleBytes) {
    case 1:
      return (at, value) => view.setUint8(at, toInteger(value) + 128);
    case 2:
      return (at, value) => view.setInt16(at, toInteger(value), true);
    case 3:
      return (at, value) => {
        const integer = toInteger(value);
        view.setUint16(at, integer & 0xffff, true);
        view.setInt8(at + 2, integer >> 16);
      };
    default:
      return (at, value) => view.setInt32(at, toInteger(value), true);
  }
}
