/** Where the format and the samples lie in a WAV file, also in one whose sizes are missing or wrong. */

/** `size`: bytes that lie inside the file; `declared`: what the header says, which recorders that stream leave open. */
export interface WavChunk {
  readonly start: number;
  readonly size: number;
  readonly declared: number;
}

export interface WavChunks {
  readonly format?: WavChunk | undefined;
  readonly data?: WavChunk | undefined;
  /** The header leaves open how long the sound is: it runs to the end of the file. */
  readonly isOpenEnded: boolean;
  /** The file ends inside a chunk, or inside the name and size of one. */
  readonly isCutOff: boolean;
  /** Where the walk ended. */
  readonly end: number;
}

const HEADER_BYTES = 12;
const CHUNK_HEADER_BYTES = 8;
/** Sizes that recorders write before they know better: all ones, or the largest signed number less a header. */
const OPEN_SIZE = 0x7fff0000;
const TWO_TO_32 = 2 ** 32;
const COMMON_IDS = new Set('fmt |data|LIST|fact|bext|JUNK|junk|cue |smpl|id3 |PEAK|iXML|ds64|PAD '.split('|'));

const PRINTABLE = /^[ -~]{4}$/;

const idAt = (view: DataView, at: number): string =>
  at + 4 > view.byteLength ? '' : String.fromCharCode(...[0, 1, 2, 3].map((offset) => view.getUint8(at + offset)));

/** Whether the bytes start as a WAV: `RIFF`, or `RF64` and `BW64` for long ones. The size that follows is not believed. */
export const startsAsWav = (view: DataView): boolean => ['RIFF', 'RF64', 'BW64'].includes(idAt(view, 0)) && idAt(view, 8) === 'WAVE';

/** Walks the chunks until format and samples are found. Each step takes at least eight bytes further. */
export function wavChunks(view: DataView): WavChunks {
  const fileBytes = view.byteLength;
  let format: WavChunk | undefined;
  let longDataBytes: number | undefined;
  let at = HEADER_BYTES;
  while (at + CHUNK_HEADER_BYTES <= fileBytes) {
    const id = idAt(view, at);
    const start = at + CHUNK_HEADER_BYTES;
    const declared = view.getUint32(at + 4, true);
    const chunk = { start, size: Math.min(declared, fileBytes - start), declared };
    if (id === 'ds64' && chunk.size >= 16) longDataBytes = view.getUint32(start + 8, true) + TWO_TO_32 * view.getUint32(start + 12, true);
    if (id === 'fmt ') format ??= chunk;
    if (id === 'data') {
      const data = dataChunk(view, chunk, longDataBytes);
      // A format after the samples is against the rules, but it tells all the same.
      if (!data.isOpenEnded) format ??= formatAfter(view, data.chunk);
      return { format, data: data.chunk, isOpenEnded: data.isOpenEnded, isCutOff: false, end: data.chunk.start };
    }
    at = nextChunk(view, start, declared);
  }
  // A missing pad byte at the very end harms nobody.
  const isCutOff = at < fileBytes || at > fileBytes + 1 || fileBytes === HEADER_BYTES;
  return { format, isOpenEnded: false, isCutOff, end: Math.min(at, fileBytes) };
}

function dataChunk(view: DataView, chunk: WavChunk, longDataBytes: number | undefined): { chunk: WavChunk; isOpenEnded: boolean } {
  const rest = view.byteLength - chunk.start;
  const declared = chunk.declared === TWO_TO_32 - 1 && longDataBytes !== undefined ? longDataBytes : chunk.declared;
  const isOpenEnded = declared === 0 ? rest > 0 && !areChunks(view, chunk.start) : declared >= OPEN_SIZE && declared > rest;
  return { chunk: { start: chunk.start, size: isOpenEnded ? rest : Math.min(declared, rest), declared }, isOpenEnded };
}

/** Whether everything from here to the end of the file is a clean row of chunks, as after a `data` chunk that is truly empty. */
function areChunks(view: DataView, from: number): boolean {
  let at = from;
  while (at + CHUNK_HEADER_BYTES <= view.byteLength) {
    if (!PRINTABLE.test(idAt(view, at))) return false;
    const size = view.getUint32(at + 4, true);
    at += CHUNK_HEADER_BYTES + size + (size % 2);
  }
  return at === view.byteLength || at === view.byteLength + 1;
}

function formatAfter(view: DataView, data: WavChunk): WavChunk | undefined {
  let at = nextChunk(view, data.start, data.size);
  while (at + CHUNK_HEADER_BYTES <= view.byteLength) {
    const start = at + CHUNK_HEADER_BYTES;
    const declared = view.getUint32(at + 4, true);
    if (idAt(view, at) === 'fmt ') return { start, size: Math.min(declared, view.byteLength - start), declared };
    at = nextChunk(view, start, declared);
  }
  return undefined;
}

/** Chunks of odd size are padded by one byte; some writers forget it, which shows in where the next name stands. */
function nextChunk(view: DataView, start: number, size: number): number {
  const end = start + size;
  if (size % 2 === 0 || end >= view.byteLength || COMMON_IDS.has(idAt(view, end + 1))) return end + (size % 2);
  const isUnpadded = COMMON_IDS.has(idAt(view, end)) || (view.getUint8(end) !== 0 && PRINTABLE.test(idAt(view, end)));
  return isUnpadded ? end : end + 1;
}
