/** The first and the last page of an Ogg file (RFC 3533): which coding it holds, at what rate, how long. */

import { flacHeader } from './flac.ts';

const PAGE_HEAD = 27;

/** Opus always decodes at this rate, whatever was put in (RFC 7845, section 5.1). */
const OPUS_RATE_HZ = 48_000;

/** A page is at most 65,307 bytes long, so the last one begins within this. */
const LAST_PAGE_WITHIN = 65_536;

export function oggHeader(bytes: Uint8Array): {
  readonly sampleRateHz?: number | undefined;
  readonly durationS?: number | undefined;
  readonly codec?: string | undefined;
} {
  const packet = bytes.subarray(PAGE_HEAD + (bytes[PAGE_HEAD - 1] ?? 0));
  const stream = streamOf(packet);
  const frames = lastGranule(bytes);
  return stream.sampleRateHz === undefined || frames === undefined ? stream : { ...stream, durationS: frames / stream.sampleRateHz };
}

function streamOf(packet: Uint8Array): { readonly sampleRateHz?: number | undefined; readonly codec?: string } {
  const says = (text: string) => String.fromCharCode(...packet.subarray(0, text.length)) === text;
  if (says('OpusHead')) return { codec: 'Opus', sampleRateHz: OPUS_RATE_HZ };
  if (says('\x7fFLAC')) return { codec: 'FLAC', sampleRateHz: flacHeader(packet.subarray(9)).sampleRateHz }; // RFC 9639, section 10.1
  if (says('Speex   ')) return { codec: 'Speex' };
  if (!says('\x01vorbis') || packet.length < 16) return {};
  const sampleRateHz = new DataView(packet.buffer, packet.byteOffset).getUint32(12, true); // Vorbis I specification, 4.2.2
  return sampleRateHz === 0 ? { codec: 'Vorbis' } : { codec: 'Vorbis', sampleRateHz };
}

/** Position at the end of the file, in frames; undefined where the last page does not tell. */
function lastGranule(bytes: Uint8Array): number | undefined {
  for (let at = bytes.length - PAGE_HEAD; at >= Math.max(0, bytes.length - LAST_PAGE_WITHIN); at--) {
    if (bytes[at] !== 0x4f || String.fromCharCode(...bytes.subarray(at, at + 4)) !== 'OggS') continue;
    const granule = Number(new DataView(bytes.buffer, bytes.byteOffset).getBigInt64(at + 6, true));
    return granule > 0 ? granule : undefined;
  }
  return undefined;
}
