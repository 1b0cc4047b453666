/** The first frame of an MPEG layer III stream, behind the tag that usually stands before it. */

/** Index 1 to 14 of the frame header's bit rate, kbit/s (ISO/IEC 11172-3, 2.4.2.3; ISO/IEC 13818-3, 2.4.2.3). */
const KBIT_PER_S_MPEG1 = [32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const KBIT_PER_S_MPEG2 = [8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
const RATES_HZ = [44_100, 48_000, 32_000];

/** Padding may stand between tag and first frame; more than this is no sound file. */
const SEARCH_BYTES = 65_536;

/** Where the file begins behind an ID3 tag, whose size is written with seven bits a byte; 0 where there is none. */
export function afterTag(bytes: Uint8Array): number {
  if (bytes.length < 10 || String.fromCharCode(...bytes.subarray(0, 3)) !== 'ID3') return 0;
  const size = bytes.subarray(6, 10).reduce((total, seven) => total * 128 + (seven & 0x7f), 0);
  return 10 + size;
}

/** Undefined where no two frames follow each other: one alone may be chance. */
export function mp3Header(bytes: Uint8Array): { readonly sampleRateHz: number; readonly durationS: number } | undefined {
  const from = afterTag(bytes);
  for (let at = from; at < Math.min(bytes.length, from + SEARCH_BYTES); at++) {
    const frame = frameAt(bytes, at);
    if (frame === undefined) continue;
    const next = frameAt(bytes, at + frame.byteLength);
    if (next === undefined || next.sampleRateHz !== frame.sampleRateHz) continue;
    const frames = countedFrames(bytes, at, frame);
    const durationS =
      frames === undefined ? ((bytes.length - at) * 8) / frame.bitsPerS : (frames * frame.samplesPerFrame) / frame.sampleRateHz;
    return { sampleRateHz: frame.sampleRateHz, durationS };
  }
  return undefined;
}

interface Frame {
  readonly sampleRateHz: number;
  readonly bitsPerS: number;
  readonly samplesPerFrame: number;
  readonly byteLength: number;
  readonly sideBytes: number;
}

function frameAt(bytes: Uint8Array, at: number): Frame | undefined {
  const [sync, kind, rates, mode] = bytes.subarray(at, at + 4);
  if (sync !== 0xff || kind === undefined || rates === undefined || mode === undefined) return undefined;
  const version = (kind >> 3) & 3; // 3 MPEG-1, 2 MPEG-2, 0 MPEG-2.5
  if ((kind & 0xe6) !== 0xe2 || version === 1) return undefined; // 11 bits of sync, layer III
  const isFirst = version === 3;
  const kbitPerS = (isFirst ? KBIT_PER_S_MPEG1 : KBIT_PER_S_MPEG2)[(rates >> 4) - 1];
  const fullRateHz = RATES_HZ[(rates >> 2) & 3];
  if (kbitPerS === undefined || fullRateHz === undefined) return undefined;
  const sampleRateHz = fullRateHz / (isFirst ? 1 : version === 2 ? 2 : 4);
  const samplesPerFrame = isFirst ? 1152 : 576;
  const byteLength = Math.floor(((samplesPerFrame / 8) * kbitPerS * 1000) / sampleRateHz) + ((rates >> 1) & 1);
  const isMono = mode >> 6 === 3;
  const sideBytes = isFirst ? (isMono ? 17 : 32) : isMono ? 9 : 17;
  return { sampleRateHz, bitsPerS: kbitPerS * 1000, samplesPerFrame, byteLength, sideBytes };
}

/** Encoders that vary the bit rate count the frames in the first one, behind its side information. */
function countedFrames(bytes: Uint8Array, at: number, { sideBytes }: Frame): number | undefined {
  const mark = at + 4 + sideBytes;
  const name = String.fromCharCode(...bytes.subarray(mark, mark + 4));
  const hasCount = (bytes[mark + 7] ?? 0) & 1;
  if ((name !== 'Xing' && name !== 'Info') || !hasCount || bytes.length < mark + 12) return undefined;
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(mark + 8);
}
