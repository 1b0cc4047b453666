/** Bytes of a WAV file to a recording and back; page and command line read their files here. Any bytes give an answer, none an exception. */

import type { Recording } from './recording.ts';
import type { WavFault, WavNote, WavSound } from './wav-answer.ts';
import { channelSamples, strongestChannel } from './wav-channels.ts';
import { startsAsWav, type WavChunk, wavChunks } from './wav-chunks.ts';
import { wavFormat } from './wav-format.ts';
import { sampleWriter } from './wav-samples.ts';

/** A few damaged samples are clicks; a larger share means that the bytes are not what the header says. */
const MOST_DAMAGED_SHARE = 0.01;

/**
 * One channel of a WAV file: integers of 8 to 32 bits or floats of 32 or 64, 8 to 192 kHz, plain, extensible or RF64.
 *
 * Of several channels the one with most energy about its mean is taken. A data size that is 0, open or larger than the file is
 * read to the end of the file; the RIFF size and the byte rate are not looked at. Samples that are not numbers are read as 0 and
 * noted, or the file is refused where they are more than 1 %.
 *
 * @param bytes not modified; what is allocated is one Float32 for each frame that is really there
 */
export function readWav(bytes: Uint8Array): WavSound | WavFault {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length === 0) return { kind: 'wav-fault', why: 'empty-file', atByte: 0 };
  if (!startsAsWav(view)) return headerFault(bytes);
  const { format: formatChunk, data, isOpenEnded, isCutOff, end } = wavChunks(view);
  if (!data && isCutOff) return { kind: 'wav-fault', why: 'header-ends', atByte: bytes.length };
  if (!formatChunk) return { kind: 'wav-fault', why: 'no-format', atByte: end };
  const format = wavFormat(view, formatChunk);
  if ('kind' in format) return format;
  if (!data) return { kind: 'wav-fault', why: 'no-data', atByte: end };
  const frameBytes = format.sampleBytes * format.channelCount;
  const frameCount = Math.floor(data.size / frameBytes);
  if (frameCount === 0) return { kind: 'wav-fault', why: 'no-samples', atByte: data.start };

  const frames = { view, format, start: data.start, frameCount };
  const channel = format.channelCount === 1 ? 0 : strongestChannel(frames);
  const read = channelSamples(frames, channel);
  const share = read.damagedCount / frameCount;
  if (share > MOST_DAMAGED_SHARE) return { kind: 'wav-fault', why: 'not-numbers', atByte: data.start, share };
  const { channelCount, sampleRateHz } = format;
  const notes: WavNote[] = [];
  if (channelCount > 1) notes.push({ id: 'channel-used', channelUsed: channel + 1, channelCount });
  const lengthNote = noteOnLength(data, { isOpenEnded, foundS: frameCount / sampleRateHz, bytesPerS: frameBytes * sampleRateHz });
  if (lengthNote) notes.push(lengthNote);
  if (read.damagedCount > 0) notes.push({ id: 'not-numbers', count: read.damagedCount });
  if (read.scaledFromPeak !== undefined) notes.push({ id: 'scaled-down', peak: read.scaledFromPeak });
  return { kind: 'wav', recording: { samples: read.samples, sampleRateHz }, channelCount, channelUsed: channel + 1, notes };
}

/** A file that breaks off within its first twelve bytes is told from one that never was a WAV. */
function headerFault(bytes: Uint8Array): WavFault {
  const start = String.fromCharCode(...bytes.subarray(0, 4));
  const isCutOff = bytes.length < 12 && ['RIFF', 'RF64', 'BW64'].some((id) => id.startsWith(start));
  return { kind: 'wav-fault', why: isCutOff ? 'header-ends' : 'not-wav', atByte: isCutOff ? bytes.length : 0 };
}

function noteOnLength(
  data: WavChunk,
  found: { readonly isOpenEnded: boolean; readonly foundS: number; readonly bytesPerS: number },
): WavNote | undefined {
  if (found.isOpenEnded) return { id: 'length-not-told', foundS: found.foundS };
  if (data.declared > data.size) return { id: 'ends-early', foundS: found.foundS, promisedS: data.declared / found.bytesPerS };
  return undefined;
}

export type WavSampleFormat = 'pcm8' | 'pcm16' | 'pcm24' | 'pcm32' | 'float32' | 'float64';

/** A recording as the bytes of a WAV file with one channel. Integers are rounded, and held at their rails beyond full scale. */
export function writeWav({
  recording,
  format,
}: {
  readonly recording: Recording;
  readonly format: WavSampleFormat;
}): Uint8Array<ArrayBuffer> {
  const coding = format.startsWith('float') ? 'float' : 'pcm';
  const sampleBytes = Number(format.replace(/\D/g, '')) / 8;
  const dataBytes = recording.samples.length * sampleBytes;
  const bytes = new Uint8Array(44 + dataBytes + (dataBytes % 2));
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) =>
    bytes.set(
      Array.from(word, (letter) => letter.charCodeAt(0)),
      at,
    );
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, coding === 'pcm' ? 1 : 3, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, recording.sampleRateHz, true);
  view.setUint32(28, recording.sampleRateHz * sampleBytes, true);
  view.setUint16(32, sampleBytes, true);
  view.setUint16(34, 8 * sampleBytes, true);
  text(36, 'data');
  view.setUint32(40, dataBytes, true);
  const write = sampleWriter(view, { coding, sampleBytes });
  recording.samples.forEach((value, index) => {
    write(44 + index * sampleBytes, value);
  });
  return bytes;
}
