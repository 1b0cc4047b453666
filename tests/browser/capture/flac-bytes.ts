/** FLAC files for the decoder's tests, after RFC 9639: verbatim subframes only, so nothing is predicted and nothing is left to chance. */

const BLOCK_FRAMES = 1024;

class Bits {
  readonly bytes: number[] = [];
  #pending = 0;
  #count = 0;
  put(value: number, width: number): this {
    for (let bit = width - 1; bit >= 0; bit--) {
      this.#pending = (this.#pending << 1) | (Math.floor(value / 2 ** bit) & 1);
      if (++this.#count === 8) {
        this.bytes.push(this.#pending);
        this.#pending = 0;
        this.#count = 0;
      }
    }
    return this;
  }
}

/** Remainder of a cyclic code without reflection; section 9.1.8 (x⁸+x²+x+1) and 9.3 (x¹⁶+x¹⁵+x²+1). */
function remainder(bytes: readonly number[], width: 8 | 16): number {
  const top = 2 ** (width - 1);
  const polynomial = width === 8 ? 0x07 : 0x8005;
  let rest = 0;
  for (const byte of bytes) {
    rest ^= byte << (width - 8);
    for (let bit = 0; bit < 8; bit++) rest = ((rest & top ? (rest << 1) ^ polynomial : rest << 1) >>> 0) & (2 * top - 1);
  }
  return rest;
}

/** 16 bits, one or two channels of equal length; full scale = 1. */
export function flacOf(channels: readonly Float32Array[], sampleRateHz: number): Uint8Array<ArrayBuffer> {
  const length = channels[0]!.length;
  const streamInfo = new Bits().put(BLOCK_FRAMES, 16).put(BLOCK_FRAMES, 16).put(0, 24).put(0, 24); // 8.2
  streamInfo
    .put(sampleRateHz, 20)
    .put(channels.length - 1, 3)
    .put(15, 5)
    .put(length, 36);
  for (let byte = 0; byte < 16; byte++) streamInfo.put(0, 8); // no MD5
  const bytes = [0x66, 0x4c, 0x61, 0x43, 0x80, 0, 0, 34, ...streamInfo.bytes];
  for (let start = 0, number = 0; start < length; start += BLOCK_FRAMES, number++) {
    const frames = Math.min(BLOCK_FRAMES, length - start);
    // 9.1: sync, fixed block size, size in 16 bits at the end, rate from the stream's head, channels, 16 bits, coded number
    const frame = new Bits().put(0xfff8, 16).put(0b0111, 4).put(0, 4);
    frame
      .put(channels.length - 1, 4)
      .put(0b100, 3)
      .put(0, 1);
    if (number < 128) frame.put(number, 8);
    else frame.put(0xc0 | (number >> 6), 8).put(0x80 | (number & 0x3f), 8);
    frame.put(frames - 1, 16);
    frame.put(remainder(frame.bytes, 8), 8);
    for (const samples of channels) {
      frame.put(0b00000010, 8); // 9.2.1: verbatim
      for (const sample of samples.subarray(start, start + frames)) frame.put(Math.round(sample * 32_768) & 0xffff, 16);
    }
    frame.put(remainder(frame.bytes, 16), 16);
    for (const byte of frame.bytes) bytes.push(byte);
  }
  return Uint8Array.from(bytes);
}
