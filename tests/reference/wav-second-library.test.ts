/** Our WAV bytes read by an independent library, and the library's bytes read by us. Source: npm package wavefile 11.0.0. */
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { readWav, writeWav } from '../../src/core/samples/wav.ts';

const tone = Float32Array.from({ length: 502 }, (_, index) => 0.7 * Math.sin(index / 5) + 0.1 * Math.sin(index / 91));
const RATES_HZ = [8000, 11025, 16000, 22050, 44100, 48000, 88200, 96000, 192000];

/** The library's depth codes, the step of one bit, and what it takes for a sample: integers unscaled, 8-bit ones from 0 to 255. */
const depths = [
  { code: '8', format: 'pcm8', scale: 2 ** 7, offset: 128 },
  { code: '16', format: 'pcm16', scale: 2 ** 15, offset: 0 },
  { code: '24', format: 'pcm24', scale: 2 ** 23, offset: 0 },
  { code: '32', format: 'pcm32', scale: 2 ** 31, offset: 0 },
  { code: '32f', format: 'float32', scale: 1, offset: 0 },
  { code: '64', format: 'float64', scale: 1, offset: 0 },
] as const;
const isFloat = (code: string) => code === '32f' || code === '64';

describe.each(depths)('depth $code', ({ code, format, scale, offset }) => {
  const stored = Array.from(tone, (value) => (isFloat(code) ? value : Math.round(value * scale) + offset));

  it.each(RATES_HZ)('is read by us as the library wrote it at %d Hz', (rateHz) => {
    const file = new wavefile.WaveFile();
    file.fromScratch(1, rateHz, code, stored);
    const answer = readWav(file.toBuffer());
    expect(answer).toMatchObject({ kind: 'wav', recording: { sampleRateHz: rateHz }, notes: [] });
    if (answer.kind === 'wav')
      expect(Array.from(answer.recording.samples)).toEqual(stored.map((value) => Math.fround((value - offset) / scale)));
  });

  it('is read by the library as we wrote it', () => {
    const file = new wavefile.WaveFile(writeWav({ recording: { samples: tone, sampleRateHz: 44100 }, format }));
    expect(file.bitDepth).toBe(code);
    expect(file.fmt).toMatchObject({ numChannels: 1, sampleRate: 44100 });
    expect(Array.from(file.getSamples(false, Float64Array))).toEqual(stored);
  });

  it('is read with several channels, the strongest one', () => {
    const file = new wavefile.WaveFile();
    const weak = stored.map((value) => (isFloat(code) ? value / 4 : Math.round((value - offset) / 4) + offset));
    file.fromScratch(4, 48000, code, [weak, weak, stored, weak]);
    const answer = readWav(file.toBuffer());
    expect(answer).toMatchObject({ kind: 'wav', channelCount: 4, channelUsed: 3 });
    if (answer.kind === 'wav')
      expect(Array.from(answer.recording.samples)).toEqual(stored.map((value) => Math.fround((value - offset) / scale)));
  });
});

describe('other containers and codings of the library', () => {
  it('reads RF64', () => {
    const file = new wavefile.WaveFile();
    file.fromScratch(
      1,
      48000,
      '16',
      Array.from(tone, (value) => Math.round(value * 32768)),
      { container: 'RF64' },
    );
    const answer = readWav(file.toBuffer());
    expect(answer).toMatchObject({ kind: 'wav', notes: [] });
    if (answer.kind === 'wav') expect(answer.recording.samples.length).toBe(tone.length);
  });

  it('reads the extensible format that the library writes for 12 bits', () => {
    const file = new wavefile.WaveFile();
    file.fromScratch(
      1,
      48000,
      '12',
      Array.from(tone, (value) => Math.round(value * 2048)),
    );
    expect(file.fmt).toMatchObject({ audioFormat: 0xfffe, validBitsPerSample: 12 });
    expect(readWav(file.toBuffer())).toMatchObject({ kind: 'wav', notes: [] });
  });

  it.each([
    ['toALaw', 6],
    ['toMuLaw', 7],
    ['toIMAADPCM', 17],
  ] as const)('names the compression that %s makes', (method, formatTag) => {
    const file = new wavefile.WaveFile();
    file.fromScratch(
      1,
      8000,
      '16',
      Array.from(tone, (value) => Math.round(value * 32768)),
    );
    file[method]();
    expect(readWav(file.toBuffer())).toMatchObject({ why: 'compressed', formatTag });
  });

  it('reads around a list of tags', () => {
    const file = new wavefile.WaveFile();
    file.fromScratch(
      1,
      48000,
      '16',
      Array.from(tone, (value) => Math.round(value * 32768)),
    );
    file.setTag('ICMT', 'odd');
    expect(readWav(file.toBuffer())).toMatchObject({ kind: 'wav', notes: [] });
  });
});
