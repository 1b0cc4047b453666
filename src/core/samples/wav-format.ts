/** What the `fmt ` chunk of a WAV file says about its samples, checked before a single one is read. */

import type { WavFault } from './wav-answer.ts';

/** How one sample is written. `pcm`: integers, 8-bit ones unsigned, all others signed and left-justified in their bytes. */
export interface WavFormat {
  readonly coding: 'pcm' | 'float';
  readonly sampleBytes: number;
  readonly channelCount: number;
  readonly sampleRateHz: number;
}

export const LOWEST_RATE_HZ = 8_000;
export const HIGHEST_RATE_HZ = 192_000;
/** More than any mixing desk has; beyond it the header is damaged. */
const MOST_CHANNELS = 128;

const PCM_TAG = 1;
const FLOAT_TAG = 3;
const EXTENSIBLE_TAG = 0xfffe;
const PLAIN_BYTES = 16;
const EXTENSIBLE_BYTES = 40;
/** Bytes 2 to 15 of a sub-format's identifier, alike for all that stand for a plain format tag. */
const PLAIN_TAG_SUFFIX = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * @param view the whole file
 * @param chunk where the content of the chunk starts, and how many of its bytes lie inside the file
 */
export function wavFormat(view: DataView, chunk: { readonly start: number; readonly size: number }): WavFormat | WavFault {
  const { start, size } = chunk;
  if (size < PLAIN_BYTES) return { kind: 'wav-fault', why: 'format-too-short', atByte: start, formatBytes: size, neededBytes: PLAIN_BYTES };
  const tag = view.getUint16(start, true);
  const channelCount = view.getUint16(start + 2, true);
  const sampleRateHz = view.getUint32(start + 4, true);
  const frameBytes = view.getUint16(start + 12, true);
  const bits = view.getUint16(start + 14, true);
  if (tag === EXTENSIBLE_TAG && size < EXTENSIBLE_BYTES) {
    return { kind: 'wav-fault', why: 'format-too-short', atByte: start, formatBytes: size, neededBytes: EXTENSIBLE_BYTES };
  }
  const coded = tag === EXTENSIBLE_TAG ? extensibleTag(view, start) : tag;
  if (coded !== PCM_TAG && coded !== FLOAT_TAG) return { kind: 'wav-fault', why: 'compressed', atByte: start, formatTag: coded };
  if (channelCount < 1 || channelCount > MOST_CHANNELS) {
    return { kind: 'wav-fault', why: 'channel-count', atByte: start + 2, channelCount };
  }
  if (sampleRateHz < LOWEST_RATE_HZ || sampleRateHz > HIGHEST_RATE_HZ) {
    return { kind: 'wav-fault', why: 'rate-out-of-range', atByte: start + 4, sampleRateHz };
  }
  const coding = coded === PCM_TAG ? 'pcm' : 'float';
  const sampleBytes = Math.ceil(bits / 8);
  const known = coding === 'pcm' ? sampleBytes >= 1 && sampleBytes <= 4 : bits === 32 || bits === 64;
  if (!known) return { kind: 'wav-fault', why: 'sample-size', atByte: start + 14, bits, coding };
  // A guess between the two would be a factor in the frequency, so a file that contradicts itself is refused.
  if (frameBytes !== sampleBytes * channelCount) {
    return { kind: 'wav-fault', why: 'frame-size', atByte: start + 12, frameBytes, neededBytes: sampleBytes * channelCount };
  }
  return { coding, sampleBytes, channelCount, sampleRateHz };
}

/** The plain tag that a sub-format stands for, or the extensible tag itself where it stands for none. */
function extensibleTag(view: DataView, start: number): number {
  const isPlain = PLAIN_TAG_SUFFIX.every((byte, index) => view.getUint8(start + 26 + index) === byte);
  return isPlain ? view.getUint16(start + 24, true) : EXTENSIBLE_TAG;
}
