/** What a sound file says of itself before it is decoded: the browser's decoder hides a file's own sample rate, so it is read here. */

import { flacHeader } from './flac.ts';
import { afterTag, mp3Header } from './mp3.ts';
import { mp4Header } from './mp4.ts';
import { oggHeader } from './ogg.ts';

export type Container = 'wav' | 'flac' | 'mp3' | 'mp4' | 'ogg' | 'webm' | 'aac' | 'aiff' | 'caf' | 'asf' | 'unknown';

export interface SoundHeader {
  readonly container: Container;
  /** Missing where the file does not tell or nobody here can read it. */
  readonly sampleRateHz?: number | undefined;
  /** As the file tells it; may be wrong where the file is. */
  readonly durationS?: number | undefined;
  /** Coding inside the container, by the name it has there, such as `mp4a` or `alac`. */
  readonly codec?: string | undefined;
}

/** Any bytes give an answer. `bytes` is not modified. */
export function soundHeader(bytes: Uint8Array): SoundHeader {
  const body = bytes.subarray(afterTag(bytes));
  const says = (at: number, text: string) => [...text].every((letter, index) => body[at + index] === letter.charCodeAt(0));
  if (['RIFF', 'RF64', 'BW64'].some((id) => says(0, id))) return { container: 'wav', sampleRateHz: wavRateHz(body) };
  if (says(0, 'fLaC')) return { container: 'flac', ...flacHeader(body) };
  if (says(0, 'OggS')) return { container: 'ogg', ...oggHeader(body) };
  if (says(4, 'ftyp')) return { container: 'mp4', ...mp4Header(body) };
  if (says(0, '\x1aE\xdf\xa3')) return { container: 'webm' };
  if (says(0, 'FORM')) return { container: 'aiff' };
  if (says(0, 'caff')) return { container: 'caf' };
  if (says(0, '\x30\x26\xb2\x75\x8e\x66\xcf\x11')) return { container: 'asf' };
  if (body[0] === 0xff && ((body[1] ?? 0) & 0xf6) === 0xf0) return { container: 'aac' };
  const mp3 = mp3Header(bytes);
  return mp3 === undefined ? { container: 'unknown' } : { container: 'mp3', ...mp3 };
}

/** Of the usual header, whose format stands first; needed only where the coding is not ours to read. */
function wavRateHz(bytes: Uint8Array): number | undefined {
  if (bytes.length < 28 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'fmt ') return undefined;
  return viewOf(bytes).getUint32(24, true);
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
