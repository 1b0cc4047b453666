/** Several files as one, so that a browser can hand over a folder: a ZIP archive whose files are stored as they are. */

export interface ArchivedFile {
  /** Name below the folder, without a leading slash. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value >>> 0;
});

/** CRC-32 as in ISO 3309 and PNG. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC_TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** Names are UTF-8. */
const UTF8_FLAG = 0x0800;
const VERSION = 20;
const STORED = 0;
const LOCAL = { signature: 0x04034b50, bytes: 30 };
const CENTRAL = { signature: 0x02014b50, bytes: 46 };
const END = { signature: 0x06054b50, bytes: 22 };

/** Date and time in the two halves that the format has, to two seconds, from 1980 on. */
function dosTime(date: Date): { readonly time: number; readonly day: number } {
  return {
    time: (date.getHours() << 11) | (date.getMinutes() << 5) | (date.getSeconds() >> 1),
    day: (Math.max(0, date.getFullYear() - 1980) << 9) | ((date.getMonth() + 1) << 5) | date.getDate(),
  };
}

/**
 * @param files  fewer than 65,535, together below 4 GB
 * @see PKWARE's APPNOTE, 4.3 (layout from memory)
 */
export function zipOf(files: readonly ArchivedFile[], made: Date): Uint8Array<ArrayBuffer> {
  const encoder = new TextEncoder();
  const named = files.map(({ name, bytes }) => ({ name: encoder.encode(name), bytes, crc: crc32(bytes) }));
  const size = named.reduce((sum, { name, bytes }) => sum + LOCAL.bytes + CENTRAL.bytes + 2 * name.length + bytes.length, END.bytes);
  const out = new Uint8Array(size);
  const view = new DataView(out.buffer);
  const { time, day } = dosTime(made);
  let at = 0;
  const u16 = (value: number) => {
    view.setUint16(at, value, true);
    at += 2;
  };
  const u32 = (value: number) => {
    view.setUint32(at, value, true);
    at += 4;
  };
  const put = (bytes: Uint8Array) => {
    out.set(bytes, at);
    at += bytes.length;
  };
  const common = ({ name, bytes, crc }: (typeof named)[number]) => {
    for (const value of [VERSION, UTF8_FLAG, STORED, time, day]) u16(value);
    for (const value of [crc, bytes.length, bytes.length]) u32(value);
    u16(name.length);
    u16(0);
  };
  const offsets = named.map((file) => {
    const offset = at;
    u32(LOCAL.signature);
    common(file);
    put(file.name);
    put(file.bytes);
    return offset;
  });
  const directory = at;
  for (const [index, file] of named.entries()) {
    u32(CENTRAL.signature);
    u16(VERSION);
    common(file);
    for (const value of [0, 0, 0]) u16(value);
    u32(0);
    u32(offsets[index]!);
    put(file.name);
  }
  const directoryBytes = at - directory;
  u32(END.signature);
  for (const value of [0, 0, named.length, named.length]) u16(value);
  u32(directoryBytes);
  u32(directory);
  u16(0);
  return out;
}
