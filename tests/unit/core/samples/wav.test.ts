import { describe, expect, it } from 'vitest';
import { readWav, writeWav } from '../../../../src/core/samples/wav.ts';
import type { WavFaultFigures, WavSound } from '../../../../src/core/samples/wav-answer.ts';
import { ascii, chunk, formatContent, int16Data, int24Data, joined, uint32, wavBytes } from '../../../support/wav-bytes.ts';

const tone = Float32Array.from({ length: 300 }, (_, index) => 0.5 * Math.sin(index / 7));
const data = int16Data(tone);
const format = formatContent({});

function sound(bytes: Uint8Array): WavSound {
  const answer = readWav(bytes);
  if (answer.kind !== 'wav') throw new Error(`refused: ${JSON.stringify(answer)}`);
  return answer;
}

function expectTone(answer: WavSound, within = 1 / 65536) {
  expect(answer.recording.samples.length).toBe(tone.length);
  answer.recording.samples.forEach((value, index) => {
    expect(Math.abs(value - tone[index]!)).toBeLessThanOrEqual(within);
  });
}

describe('readWav', () => {
  it('reads plain samples and says nothing more', () => {
    const answer = sound(wavBytes({ format, data }));
    expectTone(answer);
    expect(answer).toMatchObject({ channelCount: 1, channelUsed: 1, notes: [] });
    expect(answer.recording.sampleRateHz).toBe(48000);
  });

  it('reads from the middle of a larger buffer', () => {
    const bytes = wavBytes({ format, data });
    expectTone(sound(joined([new Uint8Array(7), bytes]).subarray(7)));
  });

  it('passes over chunks before and after, of odd size too, padded or not', () => {
    const odd = ascii('abc');
    for (const padded of [true, false]) {
      const before = [chunk('LIST', odd, { padded }), chunk('xyzw', ascii('ab'))];
      expectTone(sound(wavBytes({ before, format, data, after: [chunk('LIST', ascii('after'))] })));
    }
    expectTone(sound(wavBytes({ format, before: [chunk('junk', odd, { padded: false })], data })));
  });

  it('reads a format that stands behind the samples', () => {
    expectTone(sound(wavBytes({ data, after: [chunk('LIST', ascii('odd')), chunk('fmt ', format)] })));
  });

  it.each([0, 1, 0xffffffff])('does not believe the RIFF size %d', (riffSize) => {
    expectTone(sound(wavBytes({ riffSize, format, data })));
  });

  it.each([0, 0xffffffff, 0x7ffff000])('reads to the end where the length was left open as %d', (dataSize) => {
    const answer = sound(wavBytes({ format, data, dataSize }));
    expectTone(answer);
    expect(answer.notes).toEqual([{ id: 'length-not-told', foundS: 300 / 48000 }]);
  });

  it('reads what is there of a file that ends early, and says how much', () => {
    const bytes = wavBytes({ format, data });
    const answer = sound(bytes.subarray(0, bytes.length - 301));
    expect(answer.recording.samples.length).toBe(149);
    expect(answer.notes).toEqual([{ id: 'ends-early', foundS: 149 / 48000, promisedS: 300 / 48000 }]);
  });

  it('takes an empty data chunk with proper chunks behind it as empty', () => {
    expect(readWav(wavBytes({ format, data: new Uint8Array(0), after: [chunk('LIST', ascii('odd'))] }))).toMatchObject({
      why: 'no-samples',
    });
  });

  it('takes the size of a long file from its ds64 chunk', () => {
    const sizes = joined([uint32(0), uint32(0), uint32(data.length), uint32(0), uint32(tone.length), uint32(0), uint32(0)]);
    const bytes = wavBytes({
      container: 'RF64',
      before: [chunk('ds64', sizes)],
      format,
      data,
      dataSize: 0xffffffff,
      after: [chunk('LIST', ascii('tail'))],
    });
    const answer = sound(bytes);
    expectTone(answer);
    expect(answer.notes).toEqual([]);
  });

  it('uses the channel with most energy about its mean', () => {
    const offset = tone.map(() => 0.9);
    const channels = [offset, tone.map((value) => 0.1 * value), tone];
    const bytes = wavBytes({ format: formatContent({ channelCount: 3, bits: 24, subTag: 1 }), data: int24Data(channels) });
    const answer = sound(bytes);
    expectTone(answer, 2 ** -24);
    expect(answer).toMatchObject({ channelCount: 3, channelUsed: 3, notes: [{ id: 'channel-used', channelUsed: 3, channelCount: 3 }] });
  });

  it('reads 12 bits as they stand in two bytes, left-justified', () => {
    const twelve = int16Data(tone.map((value) => Math.round(value * 2048) / 2048));
    expectTone(sound(wavBytes({ format: formatContent({ bits: 12 }), data: twelve })), 1 / 4096);
  });

  it('reads a few samples that are not numbers as silence, and refuses many', () => {
    const floats = Float32Array.from(tone);
    floats.set([Number.NaN, Number.POSITIVE_INFINITY, 1e30], 10);
    const bytes = (samples: Float32Array) =>
      wavBytes({ format: formatContent({ tag: 3, bits: 32 }), data: new Uint8Array(samples.slice().buffer) });
    const answer = sound(bytes(floats));
    expect([...answer.recording.samples.subarray(10, 13)]).toEqual([0, 0, 0]);
    expect(answer.notes).toEqual([{ id: 'not-numbers', count: 3 }]);
    floats.fill(Number.NaN, 100, 200);
    expect(readWav(bytes(floats))).toMatchObject({ why: 'not-numbers', share: 103 / 300 });
  });

  it('keeps floats a little beyond full scale, and brings down those on another scale', () => {
    const bytes = (factor: number) =>
      wavBytes({ format: formatContent({ tag: 3, bits: 32 }), data: new Uint8Array(tone.map((value) => factor * value).buffer) });
    expect(Math.max(...sound(bytes(4)).recording.samples)).toBeGreaterThan(1.9);
    const scaled = sound(bytes(32768));
    expect(scaled.notes[0]).toMatchObject({ id: 'scaled-down' });
    expect(Math.max(...scaled.recording.samples.map(Math.abs))).toBe(1);
  });

  const faulty: readonly (readonly [string, Uint8Array, WavFaultFigures & { atByte?: number }])[] = [
    ['no bytes', new Uint8Array(0), { why: 'empty-file' }],
    ['text', ascii('Dear reader, this is no sound.'), { why: 'not-wav', atByte: 0 }],
    ['RIFF of another kind', joined([ascii('RIFF'), uint32(4), ascii('AVI ')]), { why: 'not-wav' }],
    ['a file cut in its first word', ascii('RI'), { why: 'header-ends', atByte: 2 }],
    ['a file cut behind WAVE', wavBytes({}), { why: 'header-ends', atByte: 12 }],
    ['a file cut in its format', wavBytes({ format }).subarray(0, 30), { why: 'header-ends', atByte: 30 }],
    ['a file cut in the name of its data', wavBytes({ format, data }).subarray(0, 39), { why: 'header-ends', atByte: 39 }],
    ['no format', wavBytes({ data }), { why: 'no-format' }],
    ['no data', wavBytes({ format }), { why: 'no-data', atByte: 36 }],
    ['no samples', wavBytes({ format, data: new Uint8Array(0) }), { why: 'no-samples' }],
    ['less than one frame', wavBytes({ format, data: new Uint8Array(1) }), { why: 'no-samples' }],
    ['a short format', wavBytes({ format: format.subarray(0, 14), data }), { why: 'format-too-short', formatBytes: 14, neededBytes: 16 }],
    [
      'an extensible format that is not long enough',
      wavBytes({ format: formatContent({ tag: 0xfffe }), data }),
      { why: 'format-too-short', formatBytes: 16, neededBytes: 40 },
    ],
    ['MPEG layer 3', wavBytes({ format: formatContent({ tag: 85 }), data }), { why: 'compressed', formatTag: 85, atByte: 20 }],
    ['mu-law in an extensible format', wavBytes({ format: formatContent({ subTag: 7 }), data }), { why: 'compressed', formatTag: 7 }],
    ['0 channels', wavBytes({ format: formatContent({ channelCount: 0 }), data }), { why: 'channel-count', channelCount: 0, atByte: 22 }],
    ['65535 channels', wavBytes({ format: formatContent({ channelCount: 65535 }), data }), { why: 'channel-count', channelCount: 65535 }],
    ['1 Hz', wavBytes({ format: formatContent({ sampleRateHz: 1 }), data }), { why: 'rate-out-of-range', sampleRateHz: 1, atByte: 24 }],
    ['4 GHz', wavBytes({ format: formatContent({ sampleRateHz: 4e9 }), data }), { why: 'rate-out-of-range', sampleRateHz: 4e9 }],
    ['0 bits', wavBytes({ format: formatContent({ bits: 0 }), data }), { why: 'sample-size', bits: 0, coding: 'pcm' }],
    ['40 bits', wavBytes({ format: formatContent({ bits: 40 }), data }), { why: 'sample-size', bits: 40, coding: 'pcm' }],
    ['16-bit floats', wavBytes({ format: formatContent({ tag: 3 }), data }), { why: 'sample-size', bits: 16, coding: 'float' }],
    [
      'a frame size that contradicts the rest',
      wavBytes({ format: formatContent({ frameBytes: 4 }), data }),
      { why: 'frame-size', frameBytes: 4, neededBytes: 2, atByte: 32 },
    ],
  ];
  it.each(faulty)('says what is wrong with %s', (_, bytes, expected) => {
    expect(readWav(bytes)).toMatchObject({ kind: 'wav-fault', ...expected });
  });
});

describe('writeWav', () => {
  it.each([
    ['pcm8', 2 ** -8],
    ['pcm16', 2 ** -16],
    ['pcm24', 2 ** -24],
    ['pcm32', 2 ** -32],
    ['float32', 0],
    ['float64', 0],
  ] as const)('comes back from %s within half a step', (sampleFormat, within) => {
    const answer = sound(writeWav({ recording: { samples: tone, sampleRateHz: 22050 }, format: sampleFormat }));
    expectTone(answer, within);
    expect(answer.recording.sampleRateHz).toBe(22050);
  });

  it('holds integers at their rails and keeps chunks even', () => {
    const samples = Float32Array.of(2, -2, Number.NaN);
    const bytes = writeWav({ recording: { samples, sampleRateHz: 8000 }, format: 'pcm8' });
    expect(bytes.length % 2).toBe(0);
    expect([...sound(bytes).recording.samples]).toEqual([127 / 128, -1, 0]);
  });
});
