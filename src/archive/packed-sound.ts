/** Sound as it is stored: 16 bits of its own peak, differences from sample to sample, packed by the browser's own deflate where it has one. */

import { z } from '../../shared/schema.ts';
import type { SoundClip } from '../ports.ts';

export const packedClipSchema = z.strictObject({
  sampleRateHz: z.number().positive(),
  startS: z.number(),
  /** Full scale of the stored samples. */
  peak: z.number().positive(),
  frames: z.int().positive().max(100_000_000),
  isPacked: z.boolean(),
  data: z.instanceof(Uint8Array),
});
export type PackedClip = z.infer<typeof packedClipSchema>;

const LARGEST = 32_767;

/** Rounded to 1/32767 of its own peak, which lies 98 dB under it: nothing else is lost. */
export async function packedClip({ samples, sampleRateHz, startS }: SoundClip): Promise<PackedClip> {
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0) || 1;
  const plain = planes(samples, peak);
  const packed = await through(plain, globalThis.CompressionStream && new CompressionStream('deflate-raw'));
  const rest = { sampleRateHz, startS, peak, frames: samples.length };
  return packed ? { ...rest, isPacked: true, data: packed } : { ...rest, isPacked: false, data: plain };
}

/** Undefined where the bytes are not those of so many samples. */
export async function unpackedClip({ sampleRateHz, startS, peak, frames, isPacked, data }: PackedClip): Promise<SoundClip | undefined> {
  const own = new Uint8Array(data);
  const plain = isPacked ? await through(own, globalThis.DecompressionStream && new DecompressionStream('deflate-raw')) : own;
  if (plain?.length !== 2 * frames) return undefined;
  const samples = new Float32Array(frames);
  let level = 0;
  for (let index = 0; index < frames; index += 1) {
    level = int16(level + plain[index]! + 256 * plain[frames + index]!);
    samples[index] = (level / LARGEST) * peak;
  }
  return { samples, sampleRateHz, startS };
}

/** Low bytes of the differences first, then the high ones, which are nearly all alike and pack well. */
function planes(samples: Float32Array, peak: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(2 * samples.length);
  let before = 0;
  for (let index = 0; index < samples.length; index += 1) {
    const level = Math.round((samples[index]! / peak) * LARGEST);
    const difference = (level - before) & 0xffff;
    bytes[index] = difference & 0xff;
    bytes[samples.length + index] = difference >> 8;
    before = level;
  }
  return bytes;
}

const int16 = (value: number): number => ((value & 0xffff) ^ 0x8000) - 0x8000;

/** Undefined where the browser has no such stream, or the bytes are damaged. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream | undefined,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (!stream) return undefined;
  try {
    return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
  } catch {
    return undefined;
  }
}
