/** Bytes of made-up files, written field by field as the formats' documents say. */

export const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

export const u16 = (value: number): number[] => [(value >> 8) & 0xff, value & 0xff];
export const u32 = (value: number): number[] => [...u16(Math.floor(value / 65_536)), ...u16(value % 65_536)];
export const u64 = (value: number): number[] => [...u32(Math.floor(value / 2 ** 32)), ...u32(value % 2 ** 32)];
export const littleEndian = (bigEndian: number[]): number[] => bigEndian.toReversed();
export const zeros = (count: number): number[] => new Array<number>(count).fill(0);

/** ISO/IEC 14496-12, 4.2: size with its own eight bytes, type, content. */
export const box = (type: string, ...content: number[][]): number[] => {
  const body = content.flat();
  return [...u32(8 + body.length), ...ascii(type), ...body];
};

/** ID3 2.3: ten bytes of head, size with seven bits a byte. */
export const tag = (size: number): number[] => [
  ...ascii('ID3'),
  3,
  0,
  0,
  size >> 21,
  (size >> 14) & 0x7f,
  (size >> 7) & 0x7f,
  size & 0x7f,
  ...zeros(size),
];
