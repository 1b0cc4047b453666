/** The sound track of an MP4 family file (ISO/IEC 14496-12), such as a phone's voice memo: its rate, its length, its coding. */

interface Box {
  readonly type: string;
  /** Without its head. */
  readonly content: DataView;
}

/** Of the first track that is sound; empty where there is none. */
export function mp4Header(bytes: Uint8Array): {
  readonly sampleRateHz?: number | undefined;
  readonly durationS?: number | undefined;
  readonly codec?: string | undefined;
} {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (const track of inside(file, ['moov', 'trak', 'mdia'])) {
    const handler = inside(track, ['hdlr'])[0];
    if (handler === undefined || handler.byteLength < 12 || word(handler, 8) !== 'soun') continue;
    const time = timeOf(inside(track, ['mdhd'])[0]);
    const { codec, entryRateHz } = entryOf(inside(track, ['minf', 'stbl', 'stsd'])[0]);
    return { sampleRateHz: rateHz(entryRateHz, time.timescale), durationS: time.durationS, codec };
  }
  return {};
}

/**
 * The sample entry has the rate, but only 16 bits for it, and coders that double the rate of what they store write the lower one; the
 * time scale is by custom the rate itself, but not everywhere.
 */
function rateHz(entryHz: number | undefined, timescaleHz: number | undefined): number | undefined {
  if (entryHz === undefined || entryHz < 8000) return timescaleHz !== undefined && timescaleHz >= 8000 ? timescaleHz : undefined;
  return timescaleHz === 2 * entryHz ? timescaleHz : entryHz;
}

function timeOf(box: DataView | undefined): { readonly timescale?: number; readonly durationS?: number } {
  if (box === undefined || box.byteLength < 20) return {};
  const isLong = box.getUint8(0) === 1; // version 1 has 64-bit times
  if (isLong && box.byteLength < 32) return {};
  const timescale = box.getUint32(isLong ? 20 : 12);
  const duration = isLong ? Number(box.getBigUint64(24)) : box.getUint32(16);
  if (timescale === 0) return {};
  const isTold = duration > 0 && duration < (isLong ? 2 ** 63 : 2 ** 32 - 1); // all bits set: not known, in files written as a stream
  return isTold ? { timescale, durationS: duration / timescale } : { timescale };
}

function entryOf(box: DataView | undefined): { readonly codec?: string; readonly entryRateHz?: number } {
  if (box === undefined || box.byteLength < 16) return {};
  const codec = word(box, 12);
  return box.byteLength < 44 ? { codec } : { codec, entryRateHz: box.getUint16(40) };
}

/** Contents of all boxes at the end of a path of types. */
function inside(view: DataView, path: readonly string[]): readonly DataView[] {
  const [type, ...rest] = path;
  if (type === undefined) return [view];
  return boxes(view)
    .filter((box) => box.type === type)
    .flatMap((box) => inside(box.content, rest));
}

function boxes(view: DataView): readonly Box[] {
  const found: Box[] = [];
  for (let at = 0; at + 8 <= view.byteLength; ) {
    const short = view.getUint32(at);
    const isLong = short === 1 && at + 16 <= view.byteLength;
    const head = isLong ? 16 : 8;
    const size = isLong ? Number(view.getBigUint64(at + 8)) : short === 0 ? view.byteLength - at : short;
    if (size < head) break;
    const end = Math.min(view.byteLength, at + size);
    found.push({ type: word(view, at + 4), content: new DataView(view.buffer, view.byteOffset + at + head, end - at - head) });
    at += size;
  }
  return found;
}

const word = (view: DataView, at: number): string => String.fromCharCode(...new Uint8Array(view.buffer, view.byteOffset + at, 4));
