import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soundHeader } from '../../../../src/capture/header/sound-header.ts';
import { writeWav } from '../../../../src/core/samples/wav.ts';
import { ascii, box, littleEndian, tag, u16, u32, u64, zeros } from './bytes.ts';

const header = (...parts: number[][]) => soundHeader(Uint8Array.from(parts.flat()));

describe('FLAC', () => {
  // RFC 9639, appendix D.1 (example 1): 44.1 kHz, 2 channels, 16 bits, 1 sample
  const EXAMPLE_1 = [
    0x66, 0x4c, 0x61, 0x43, 0x80, 0x00, 0x00, 0x22, 0x10, 0x00, 0x10, 0x00, 0x00, 0x00, 0x0f, 0x00, 0x00, 0x0f, 0x0a, 0xc4, 0x42, 0xf0,
    0x00, 0x00, 0x00, 0x01, 0x3e, 0x84, 0xb4, 0x18, 0x07, 0xdc, 0x69, 0x03, 0x07, 0x58, 0x6a, 0x3d, 0xad, 0x1a, 0x2e, 0x0f,
  ];
  test('the worked example of its standard', () => {
    expect(header(EXAMPLE_1)).toEqual({ container: 'flac', sampleRateHz: 44_100, durationS: 1 / 44_100 });
  });
  test('behind a tag', () => {
    expect(header(tag(300), EXAMPLE_1)).toMatchObject({ container: 'flac', sampleRateHz: 44_100 });
  });
  test('cut off, it tells no rate', () => {
    expect(header(EXAMPLE_1.slice(0, 30))).toEqual({ container: 'flac' });
  });
});

describe('MP3', () => {
  // ISO/IEC 11172-3, 2.4.1.3 and 2.4.2.3: sync, MPEG-1 layer III without check, 128 kbit/s, 44.1 kHz, no padding: 417 bytes a frame
  const frame = (content: number[] = []) => [0xff, 0xfb, 0x90, 0x64, ...content, ...zeros(417 - 4 - content.length)];
  test('rate of the first frame, length from the bit rate', () => {
    const { durationS, ...rest } = header(...Array.from({ length: 100 }, () => frame()));
    expect(rest).toEqual({ container: 'mp3', sampleRateHz: 44_100 });
    // 100 frames of 1152 samples; a frame without padding is a little shorter than 128 kbit/s, by less than a byte in 417
    expect(Math.abs(durationS! / ((100 * 1152) / 44_100) - 1)).toBeLessThan(1 / 417);
  });
  test('behind a tag and some padding', () => {
    expect(header(tag(2000), zeros(50), frame(), frame())).toMatchObject({ container: 'mp3', sampleRateHz: 44_100 });
  });
  test('frames counted by the encoder go before the bit rate', () => {
    const count = [...zeros(32), ...ascii('Xing'), ...u32(1), ...u32(1000)];
    expect(header(frame(count), frame()).durationS).toBeCloseTo((1000 * 1152) / 44_100, 9);
  });
  test('MPEG-2 has half the rates', () => {
    // ISO/IEC 13818-3, 2.4.2.3: 64 kbit/s, 22.05 kHz: 72 · 64000 / 22050 = 208 bytes
    const half = [0xff, 0xf3, 0x80, 0xc4, ...zeros(204)];
    expect(header(half, half)).toMatchObject({ container: 'mp3', sampleRateHz: 22_050 });
  });
  test('one frame alone may be chance', () => {
    expect(header(frame(), zeros(500)).container).toBe('unknown');
  });
});

describe('MP4 and its kin', () => {
  interface Track {
    readonly handler?: string;
    readonly codec?: string;
    readonly entryHz?: number;
    readonly timescale?: number;
    readonly duration?: number;
    readonly isLong?: boolean;
  }
  /** ISO/IEC 14496-12, 8.4.2 (mdhd), 8.4.3 (hdlr), 8.5.2 (stsd), 12.2.3 (audio sample entry). */
  const track = ({ handler = 'soun', codec = 'mp4a', entryHz = 44_100, timescale = 44_100, duration = 88_200, isLong = false }: Track) =>
    box(
      'trak',
      box('tkhd', zeros(84)),
      box(
        'mdia',
        isLong
          ? box('mdhd', [1, 0, 0, 0], zeros(16), u32(timescale), u64(duration), zeros(4))
          : box('mdhd', zeros(12), u32(timescale), u32(duration), zeros(4)),
        box('hdlr', zeros(8), ascii(handler), zeros(13)),
        box(
          'minf',
          box(
            'stbl',
            box('stsd', zeros(4), u32(1), box(codec, zeros(6), u16(1), zeros(8), u16(2), u16(16), zeros(4), u16(entryHz % 65_536), u16(0))),
          ),
        ),
      ),
    );
  const file = (...tracks: number[][]) =>
    header(box('ftyp', ascii('M4A '), zeros(4)), box('mdat', zeros(1000)), box('moov', box('mvhd', zeros(100)), ...tracks));

  test('a voice memo: rate, length, coding, with the index behind the sound', () => {
    expect(file(track({}))).toEqual({ container: 'mp4', sampleRateHz: 44_100, durationS: 2, codec: 'mp4a' });
  });
  test('the sound track of a film, long times', () => {
    const film = track({ handler: 'vide', codec: 'avc1', timescale: 600, duration: 1200 });
    expect(file(film, track({ entryHz: 48_000, timescale: 48_000, duration: 144_000, isLong: true }))).toEqual({
      container: 'mp4',
      sampleRateHz: 48_000,
      durationS: 3,
      codec: 'mp4a',
    });
  });
  test('a time scale that is no rate', () => {
    expect(file(track({ entryHz: 32_000, timescale: 1000, duration: 2500 }))).toMatchObject({ sampleRateHz: 32_000, durationS: 2.5 });
  });
  test('a coder that doubles the rate it stores', () => {
    expect(file(track({ entryHz: 22_050, timescale: 44_100 }))).toMatchObject({ sampleRateHz: 44_100 });
  });
  test('a rate too high for its 16 bits stands in the time scale', () => {
    expect(file(track({ codec: 'fLaC', entryHz: 0, timescale: 96_000, duration: 96_000 }))).toMatchObject({
      sampleRateHz: 96_000,
      durationS: 1,
    });
  });
  test('a length that is not known is not told', () => {
    expect(file(track({ duration: 0 })).durationS).toBeUndefined();
    expect(file(track({ duration: 2 ** 32 - 1 })).durationS).toBeUndefined();
  });
  test('lossless sound of a phone is named', () => {
    expect(file(track({ codec: 'alac' })).codec).toBe('alac');
  });
  test('no sound in it, or cut off', () => {
    expect(file(track({ handler: 'vide' }))).toEqual({ container: 'mp4' });
    expect(header(box('ftyp', ascii('M4A ')))).toEqual({ container: 'mp4' });
  });
});

describe('Ogg', () => {
  /** RFC 3533, section 6: page of one packet. */
  const page = (packet: number[], granule = 0) => [
    ...ascii('OggS'),
    0,
    2,
    ...littleEndian(u64(granule)),
    ...zeros(12),
    1,
    packet.length,
    ...packet,
  ];
  test('Opus decodes at 48 kHz whatever was put in (RFC 7845, 5.1)', () => {
    const head = [...ascii('OpusHead'), 1, 1, ...littleEndian(u16(312)), ...littleEndian(u32(16_000)), 0, 0, 0];
    expect(header(page(head), page([0], 96_000))).toEqual({ container: 'ogg', codec: 'Opus', sampleRateHz: 48_000, durationS: 2 });
  });
  test('Vorbis tells its rate (Vorbis I, 4.2.2)', () => {
    const head = [1, ...ascii('vorbis'), ...zeros(4), 2, ...littleEndian(u32(32_000)), ...zeros(14)];
    expect(header(page(head), page([0], 16_000))).toEqual({ container: 'ogg', codec: 'Vorbis', sampleRateHz: 32_000, durationS: 0.5 });
  });
  test('FLAC in Ogg (RFC 9639, 10.1)', () => {
    const head = [
      0x7f,
      ...ascii('FLAC'),
      1,
      0,
      0,
      1,
      ...ascii('fLaC'),
      0,
      0,
      0,
      34,
      ...zeros(10),
      ...u32((96_000 << 12) >>> 0),
      ...zeros(20),
    ];
    expect(header(page(head))).toMatchObject({ container: 'ogg', codec: 'FLAC', sampleRateHz: 96_000 });
  });
  test('speech coding is named', () => {
    expect(header(page(ascii('Speex   ')))).toMatchObject({ container: 'ogg', codec: 'Speex' });
  });
});

test.each([
  ['aiff', [...ascii('FORM'), ...u32(100), ...ascii('AIFF')]],
  ['caf', [...ascii('caff'), 0, 1, 0, 0]],
  ['asf', [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11, 0xa6, 0xd9]],
  ['webm', [0x1a, 0x45, 0xdf, 0xa3, 1, 0, 0, 0]],
  ['aac', [0xff, 0xf1, 0x50, 0x80]],
  ['unknown', ascii('Dear reader, this is a letter.')],
  ['unknown', []],
] as const)('%s by its first bytes', (container, bytes) => {
  expect(header([...bytes])).toEqual({ container });
});

test('WAV with its rate', () => {
  const bytes = writeWav({ recording: { samples: new Float32Array(10), sampleRateHz: 22_050 }, format: 'pcm16' });
  expect(soundHeader(bytes)).toEqual({ container: 'wav', sampleRateHz: 22_050 });
});

test('any bytes behind any known beginning give an answer', () => {
  const starts = ['', 'RIFF', 'fLaC', 'OggS', '\0\0\0\x18ftyp', 'ID3\x03\0\0\0\0\0\0', '\0\0\0\x08ftyp\0\0\0\x20moov\0\0\0\x18trak'];
  fc.assert(
    fc.property(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 300 }), (start, rest) => {
      expect(header(ascii(start), [...rest])).toHaveProperty('container');
    }),
    { numRuns: 2000 },
  );
});
