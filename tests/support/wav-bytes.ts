/** WAV files built byte by byte, right and wrong ones, for the tests of the reader and for the fixtures. */

export interface WavParts {
  readonly container?: 'RIFF' | 'RF64' | undefined;
  readonly riffSize?: number | undefined;
  /** Content of the `fmt ` chunk; missing: no such chunk. */
  readonly format?: Uint8Array | undefined;
  readonly before?: readonly Uint8Array[] | undefined;
  readonly data?: Uint8Array | undefined;
  /** Told in the header instead of the true size. */
  readonly dataSize?: number | undefined;
  readonly after?: readonly Uint8Array[] | undefined;
}

export const joined = (parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
};

export const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

export const uint32 = (value: number): Uint8Array => new Uint8Array(Uint32Array.of(value).buffer);

/** One chunk, padded to an even size unless told otherwise. */
export const chunk = (id: string, content: Uint8Array, options: { size?: number; padded?: boolean } = {}): Uint8Array =>
  joined([
    ascii(id),
    uint32(options.size ?? content.length),
    content,
    new Uint8Array(content.length % 2 === 1 && options.padded !== false ? 1 : 0),
  ]);

export interface FormatFields {
  readonly tag?: number | undefined;
  readonly channelCount?: number | undefined;
  readonly sampleRateHz?: number | undefined;
  readonly frameBytes?: number | undefined;
  readonly bits?: number | undefined;
  /** Makes the chunk extensible with this tag in its sub-format. */
  readonly subTag?: number | undefined;
}

/** Content of a `fmt ` chunk: 16 bytes, or 40 where it is extensible. One channel, 16 bits, 48 kHz unless told otherwise. */
export function formatContent({ tag, channelCount = 1, sampleRateHz = 48000, frameBytes, bits = 16, subTag }: FormatFields): Uint8Array {
  const view = new DataView(new ArrayBuffer(subTag === undefined ? 16 : 40));
  const frame = frameBytes ?? channelCount * Math.ceil(bits / 8);
  view.setUint16(0, tag ?? (subTag === undefined ? 1 : 0xfffe), true);
  view.setUint16(2, channelCount, true);
  view.setUint32(4, sampleRateHz, true);
  view.setUint32(8, sampleRateHz * frame, true);
  view.setUint16(12, frame, true);
  view.setUint16(14, bits, true);
  const bytes = new Uint8Array(view.buffer);
  if (subTag !== undefined) {
    view.setUint16(16, 22, true);
    view.setUint16(18, bits, true);
    view.setUint16(24, subTag, true);
    bytes.set([0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71], 26);
  }
  return bytes;
}

export function wavBytes(parts: WavParts): Uint8Array<ArrayBuffer> {
  const body = joined([
    ascii('WAVE'),
    ...(parts.before ?? []),
    ...(parts.format ? [chunk('fmt ', parts.format)] : []),
    ...(parts.data ? [chunk('data', parts.data, { size: parts.dataSize ?? parts.data.length })] : []),
    ...(parts.after ?? []),
  ]);
  return joined([ascii(parts.container ?? 'RIFF'), uint32(parts.riffSize ?? body.length), body]);
}

/** Samples of several channels, interleaved, as 24-bit integers. */
export function int24Data(channels: readonly Float32Array[]): Uint8Array {
  const frameCount = channels[0]!.length;
  const bytes = new Uint8Array(frameCount * channels.length * 3);
  let at = 0;
  for (let frame = 0; frame < frameCount; frame++) {
    for (const samples of channels) {
      const value = Math.max(-8388608, Math.min(8388607, Math.round(samples[frame]! * 8388608)));
      bytes.set([value & 0xff, (value >> 8) & 0xff, (value >> 16) & 0xff], at);
      at += 3;
    }
  }
  return bytes;
}

/** Samples as 16-bit integers. */
export const int16Data = (samples: ArrayLike<number>): Uint8Array =>
  new Uint8Array(Int16Array.from(samples, (value) => Math.max(-32768, Math.min(32767, Math.round(value * 32768)))).buffer);
