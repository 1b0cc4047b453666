/** Files through the real decoder: made here byte by byte, or recorded by the browser itself. */
import { describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { createFileDecoder } from '../../../src/capture/audio-file.ts';
import { writeWav } from '../../../src/core/samples/wav.ts';
import type { DecodedFile } from '../../../src/ports.ts';
import { ascii, zeros } from '../../unit/capture/header/bytes.ts';
import { flacOf } from './flac-bytes.ts';

const decoder = createFileDecoder();
const file = (bytes: Iterable<number>, name: string, type = '') => new File([Uint8Array.from(bytes)], name, { type });

/** 16-bit sine, so that lossless files must give it back sample for sample. */
const sine = ({ frequencyHz, sampleRateHz, seconds = 1 }: { frequencyHz: number; sampleRateHz: number; seconds?: number }) =>
  Float32Array.from(
    { length: Math.round(seconds * sampleRateHz) },
    (_, index) => (Math.round(16_000 * Math.sin((2 * Math.PI * frequencyHz * index) / sampleRateHz)) + 0) / 32_768, // + 0: no negative zeros
  );

async function decoded(from: File): Promise<DecodedFile> {
  const answer = await decoder.decode(from);
  if (answer.kind === 'file-failure') throw new Error(`${answer.why}: ${answer.text}`);
  return answer;
}

/** From upward zero crossings in the middle of the sound: plain, and nobody's estimator. */
function frequencyHz({ recording: { samples, sampleRateHz } }: DecodedFile): number {
  const crossings: number[] = [];
  for (let index = Math.floor(samples.length * 0.3); index < samples.length * 0.7; index++) {
    const [before, after] = [samples[index]!, samples[index + 1]!];
    if (before < 0 && after >= 0) crossings.push(index + before / (before - after));
  }
  return ((crossings.length - 1) * sampleRateHz) / (crossings.at(-1)! - crossings[0]!);
}

/** The decoder may scale the two signs by one step apart: every sample within half a step of 16 bits is the same sample. */
function expectSameSamples(got: Float32Array, expected: Float32Array) {
  expect(got).toHaveLength(expected.length);
  expect(expected.reduce((worst, sample, index) => Math.max(worst, Math.abs(sample - got[index]!)), 0)).toBeLessThan(0.5 / 32_768);
}

describe.each([8000, 22_050, 44_100, 48_000, 96_000, 192_000])('at %i Hz', (sampleRateHz) => {
  const samples = sine({ frequencyHz: 330, sampleRateHz, seconds: 0.25 });

  test('WAV comes sample for sample', async () => {
    const bytes = writeWav({ recording: { samples, sampleRateHz }, format: 'pcm16' });
    expect((await decoded(file(bytes, 'take.wav'))).recording).toEqual({ samples, sampleRateHz });
  });

  test('FLAC comes sample for sample: nothing was resampled', async () => {
    const answer = await decoded(file(flacOf([samples], sampleRateHz), 'take.flac'));
    expect(answer.recording.sampleRateHz).toBe(sampleRateHz);
    expectSameSamples(answer.recording.samples, samples);
    expect(answer.notes).toEqual([]);
  });
});

test('the strongest of two channels', async () => {
  const loud = sine({ frequencyHz: 330, sampleRateHz: 44_100, seconds: 0.1 });
  const answer = await decoded(file(flacOf([loud.map(() => 0), loud], 44_100), 'take.flac'));
  expectSameSamples(answer.recording.samples, loud);
  expect(answer.notes).toEqual(['channel 2 of 2 used']);
});

test('MP3 at the rate of its frames', async () => {
  const frame = [0xff, 0xfb, 0x90, 0xc4, ...zeros(413)]; // ISO/IEC 11172-3: 128 kbit/s, 44.1 kHz, one channel, silent
  const answer = await decoded(file(Array.from({ length: 50 }, () => frame).flat(), 'take.mp3'));
  expect(answer.recording.sampleRateHz).toBe(44_100);
  expect(Math.abs(answer.recording.samples.length - 50 * 1152)).toBeLessThanOrEqual(2 * 1152); // a decoder may drop its own delay
});

describe('recorded by the browser', () => {
  /** A sine through the browser's own encoder. */
  async function recorded(mimeType: string): Promise<File> {
    await userEvent.click(document.body); // without a gesture the browser makes no sound
    const context = new AudioContext();
    const oscillator = new OscillatorNode(context, { frequency: 330 });
    const destination = context.createMediaStreamDestination();
    oscillator.connect(destination);
    oscillator.start();
    const recorder = new MediaRecorder(destination.stream, { mimeType });
    const parts: Blob[] = [];
    recorder.ondataavailable = ({ data }) => parts.push(data);
    const stopped = new Promise((resolve) => {
      recorder.onstop = resolve;
    });
    recorder.start();
    await new Promise((resolve) => setTimeout(resolve, 1200));
    recorder.stop();
    await stopped;
    await context.close();
    return new File(parts, 'take', { type: mimeType });
  }

  test('Opus in WebM, whose rate is not told', async () => {
    const answer = await decoded(await recorded('audio/webm;codecs=opus'));
    expect(answer.recording.sampleRateHz).toBe(48_000);
    expect(answer.notes).toContain('the file does not tell its own sample rate; read at 48 kHz');
    expect(Math.abs(frequencyHz(answer) - 330)).toBeLessThan(0.5); // jitter of the zero crossings in lossy sound
  });

  test('an MP4, at the rate of its sound track', async () => {
    const answer = await decoded(await recorded('audio/mp4'));
    expect(answer.notes).not.toContain('the file does not tell its own sample rate; read at 48 kHz');
    expect(Math.abs(frequencyHz(answer) - 330)).toBeLessThan(0.5);
  });
});

describe('what does not decode', () => {
  test.each([
    ['a damaged FLAC', flacOf([sine({ frequencyHz: 330, sampleRateHz: 48_000, seconds: 0.1 })], 48_000).subarray(0, 43), 'cannot-decode'],
    ['an AIFF', ascii('FORM\0\0\0\x1aAIFFCOMM\0\0\0\x12'), 'cannot-decode'],
    ['a letter', ascii('Dear reader, this is a letter.'), 'not-sound'],
    ['a WAV that ends in its header', ascii('RIFF\0\0\0\0WAVEfmt '), 'damaged'],
    ['nothing', [], 'empty'],
  ] as const)('%s', async (_, bytes, why) => {
    expect(await decoder.decode(file(bytes, 'take'))).toMatchObject({ kind: 'file-failure', why });
  });
});

test('A-law in a WAV goes through the browser, at the rate of its header', async () => {
  const sampleRateHz = 8000;
  const bytes = writeWav({ recording: { samples: new Float32Array(4000), sampleRateHz }, format: 'pcm8' });
  bytes[20] = 6; // registered format tag
  const data = bytes.subarray(44);
  // ITU-T G.711: A-law 0xaa is the largest positive value, 0x2a the largest negative one; ten periods of 400 samples each
  data.set(data.map((_, index) => (Math.floor(index / 200) % 2 === 0 ? 0xaa : 0x2a)));
  const { recording } = await decoded(file(bytes, 'take.wav'));
  expect(recording.sampleRateHz).toBe(sampleRateHz);
  expect(recording.samples[100]).toBeGreaterThan(0.9);
  expect(recording.samples[300]).toBeLessThan(-0.9);
});
