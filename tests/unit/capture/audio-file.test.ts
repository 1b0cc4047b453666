import { describe, expect, test } from 'vitest';
import { createFileDecoder, type DecodedSound } from '../../../src/capture/audio-file.ts';
import { writeWav } from '../../../src/core/samples/wav.ts';
import { ascii, box, u32, zeros } from './header/bytes.ts';

const file = (bytes: Iterable<number>, type = '') => new File([Uint8Array.from(bytes)], 'take', { type });

const tone = (amplitude: number, length = 4800) => Float32Array.from({ length }, (_, index) => amplitude * Math.sin(index / 9));

/** A decoder that gives these channels at whatever rate it is asked for, and notes the rate. */
function decoderOf(...channels: readonly Float32Array[]) {
  const askedHz: number[] = [];
  const decoder = createFileDecoder(async (_, sampleRate): Promise<DecodedSound> => {
    askedHz.push(sampleRate);
    return { numberOfChannels: channels.length, sampleRate, getChannelData: (index) => channels[index] as Float32Array<ArrayBuffer> };
  });
  return { decoder, askedHz };
}

const refusing = createFileDecoder(() => Promise.reject(new DOMException('Unable to decode audio data', 'EncodingError')));

/** RFC 9639, 8.2: STREAMINFO with this rate and length. */
const flac = (rateHz: number, samples: number) => [
  ...ascii('fLaC'),
  0x80,
  0,
  0,
  34,
  ...zeros(10),
  ...u32((rateHz * 4096) % 2 ** 32),
  ...u32(samples),
  ...zeros(16),
];

describe('WAV, by our own reader', () => {
  test('comes at its own rate, sample by sample, without the browser', async () => {
    const samples = tone(0.5);
    const wav = writeWav({ recording: { samples, sampleRateHz: 22_050 }, format: 'float32' });
    expect(await refusing.decode(file(wav))).toEqual({ kind: 'decoded-file', recording: { samples, sampleRateHz: 22_050 }, notes: [] });
  });

  test('a fault is told with its place', async () => {
    const wav = writeWav({ recording: { samples: tone(0.5), sampleRateHz: 22_050 }, format: 'pcm16' });
    const answer = await refusing.decode(file(wav.subarray(0, 20)));
    expect(answer).toMatchObject({ kind: 'file-failure', why: 'damaged', text: expect.stringContaining('byte 20') });
  });

  test('a rate that nobody records at', async () => {
    const wav = writeWav({ recording: { samples: tone(0.5), sampleRateHz: 4000 }, format: 'pcm16' });
    expect(await refusing.decode(file(wav))).toMatchObject({ why: 'rate-out-of-range', text: expect.stringContaining('4 kHz') });
  });

  describe('holding compressed sound', () => {
    const wav = writeWav({ recording: { samples: tone(0.5), sampleRateHz: 11_025 }, format: 'pcm8' });
    wav[20] = 6; // registered format tag of A-law
    test('the browser may know it', async () => {
      const { decoder, askedHz } = decoderOf(tone(0.5));
      expect(await decoder.decode(file(wav))).toMatchObject({ kind: 'decoded-file', recording: { sampleRateHz: 11_025 } });
      expect(askedHz).toEqual([11_025]);
    });
    test('else its coding is named', async () => {
      expect(await refusing.decode(file(wav))).toMatchObject({ why: 'cannot-decode', text: expect.stringContaining('A-law') });
    });
  });
});

describe('decoded by the browser', () => {
  test('at the rate that the file tells', async () => {
    const { decoder, askedHz } = decoderOf(tone(0.5));
    expect(await decoder.decode(file(flac(96_000, 4800)))).toMatchObject({ recording: { sampleRateHz: 96_000 }, notes: [] });
    expect(askedHz).toEqual([96_000]);
  });

  test('without a rate at 48 kHz, which is said', async () => {
    const { decoder } = decoderOf(tone(0.5));
    expect(await decoder.decode(file([0x1a, 0x45, 0xdf, 0xa3]))).toMatchObject({
      recording: { sampleRateHz: 48_000 },
      notes: ['the file does not tell its own sample rate; read at 48 kHz'],
    });
  });

  test('the strongest channel is used, and said', async () => {
    const loud = tone(0.5);
    const { decoder } = decoderOf(tone(0.1), loud);
    const answer = await decoder.decode(file(flac(48_000, 4800)));
    expect(answer).toEqual({ kind: 'decoded-file', recording: { samples: loud, sampleRateHz: 48_000 }, notes: ['channel 2 of 2 used'] });
  });

  test.each([
    ['ALAC', box('ftyp', ascii('M4A ')).concat(alacIndex())],
    ['AIFF', ascii('FORM\0\0\0\0AIFF')],
    ['CAF', ascii('caff\0\x01')],
    ['WMA', [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11]],
  ] as const)('%s is named, and what works instead', async (name, bytes) => {
    const answer = await refusing.decode(file(bytes));
    expect(answer).toMatchObject({ kind: 'file-failure', why: 'cannot-decode' });
    const text = 'text' in answer ? answer.text : '';
    expect(text).toContain(`It is ${name} sound`);
    expect(text).toContain('AAC');
  });

  test('a letter is not sound; a file that calls itself sound is one that cannot be decoded', async () => {
    expect(await refusing.decode(file(ascii('Dear reader')))).toMatchObject({ why: 'not-sound' });
    expect(await refusing.decode(file(ascii('Dear reader'), 'audio/amr'))).toMatchObject({ why: 'cannot-decode' });
    expect(await refusing.decode(file(flac(48_000, 1)))).toMatchObject({ why: 'cannot-decode' });
  });
});

describe('limits', () => {
  test('an empty file', async () => {
    expect(await refusing.decode(file([]))).toMatchObject({ why: 'empty' });
  });

  test('a large file is refused before it is read', async () => {
    const large = { size: 3e8, type: 'audio/wav', arrayBuffer: () => Promise.reject(new Error('was read')) } as unknown as File;
    const answer = await refusing.decode(large);
    expect(answer).toMatchObject({ why: 'too-long', text: 'It has 300 MB; up to 200 MB are read here. Cut out the plucks and open that.' });
  });

  test('a file that tells a long time is refused before it is decoded', async () => {
    const { decoder, askedHz } = decoderOf(tone(0.5));
    const answer = await decoder.decode(file(flac(48_000, 48_000 * 3600)));
    expect(answer).toMatchObject({
      why: 'too-long',
      text: 'It is 60 minutes long; up to 10 minutes are read here. Cut out the plucks and open that.',
    });
    expect(askedHz).toEqual([]);
  });

  test('one that did not tell is refused afterwards', async () => {
    const { decoder } = decoderOf(new Float32Array(8000 * 601));
    expect(await decoder.decode(file(flac(8000, 0)))).toMatchObject({ why: 'too-long' });
  });

  test.each([4000, 384_000])('a rate of %i Hz', async (rateHz) => {
    const { decoder } = decoderOf(tone(0.5));
    expect(await decoder.decode(file(flac(rateHz, 4800)))).toMatchObject({
      why: 'rate-out-of-range',
      text: expect.stringContaining(`${rateHz} Hz`),
    });
  });

  test('sound of no length', async () => {
    const { decoder } = decoderOf(new Float32Array(0));
    expect(await decoder.decode(file(flac(48_000, 0)))).toMatchObject({ why: 'empty' });
  });

  test('a file that went away', async () => {
    const gone = { size: 10, type: '', arrayBuffer: () => Promise.reject(new DOMException('gone', 'NotReadableError')) } as unknown as File;
    expect(await refusing.decode(gone)).toMatchObject({ why: 'damaged' });
  });
});

/** The index of a sound track in lossless coding (ISO/IEC 14496-12). */
function alacIndex(): number[] {
  const entry = box('alac', zeros(28));
  return box(
    'moov',
    box(
      'trak',
      box('mdia', box('hdlr', zeros(8), ascii('soun'), zeros(13)), box('minf', box('stbl', box('stsd', zeros(4), u32(1), entry)))),
    ),
  );
}
