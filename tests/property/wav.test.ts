/** Any bytes give an answer, and whatever comes out of a file is finite and no more than the file holds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWav, writeWav } from '../../src/core/samples/wav.ts';
import { wavFaultText, wavNoteText } from '../../src/words/wav-en.ts';
import { chunk, formatContent, wavBytes } from '../support/wav-bytes.ts';

const samples = fc.float32Array({ min: -1, max: 1, noNaN: true, minLength: 1, maxLength: 200 });
const formats = fc.constantFrom('pcm8', 'pcm16', 'pcm24', 'pcm32', 'float32', 'float64');

/** A file that is right but for a few bytes, and may end early. */
const damagedFiles = fc
  .record({
    file: fc.oneof(
      fc
        .record({ samples, format: formats })
        .map((made) => writeWav({ recording: { samples: made.samples, sampleRateHz: 48000 }, format: made.format })),
      fc.record({ data: fc.uint8Array({ maxLength: 200 }), tail: fc.uint8Array({ maxLength: 9 }), channelCount: fc.nat(4) }).map((made) =>
        wavBytes({
          before: [chunk('ds64', new Uint8Array(28)), chunk('note', made.tail)],
          format: formatContent({ channelCount: made.channelCount, bits: 24, subTag: 1 }),
          data: made.data,
          after: [chunk('LIST', made.tail)],
        }),
      ),
    ),
    changes: fc.array(fc.record({ at: fc.nat(120), value: fc.constantFrom(0, 1, 2, 3, 0x10, 0x7f, 0x80, 0xfe, 0xff) }), { maxLength: 6 }),
    cutOff: fc.option(fc.nat(300)),
  })
  .map(({ file, changes, cutOff }) => {
    const bytes = file.slice(0, cutOff ?? file.length);
    for (const { at, value } of changes) if (at < bytes.length) bytes[at] = value;
    return bytes;
  });

function expectSoundOrFault(bytes: Uint8Array) {
  const answer = readWav(bytes);
  if (answer.kind === 'wav-fault') {
    expect(answer.atByte).toBeGreaterThanOrEqual(0);
    expect(answer.atByte).toBeLessThanOrEqual(bytes.length);
    expect(wavFaultText(answer)).toMatch(/^[A-Z0-9].*\.$/);
    return;
  }
  expect(answer.recording.samples.length).toBeGreaterThan(0);
  expect(answer.recording.samples.length).toBeLessThanOrEqual(bytes.length);
  expect(answer.recording.samples.every(Number.isFinite)).toBe(true);
  expect(answer.channelUsed).toBeLessThanOrEqual(answer.channelCount);
  for (const note of answer.notes) expect(wavNoteText(note)).not.toMatch(/NaN|Infinity|undefined/);
}

describe('readWav', () => {
  it('answers any damaged file with finite sound or a fault inside it', () => {
    fc.assert(fc.property(damagedFiles, expectSoundOrFault), { numRuns: 3000 });
  });

  it('answers any bytes', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), expectSoundOrFault), { numRuns: 1000 });
  });

  it('gives back what was written, to half a step', () => {
    const steps = { pcm8: 2 ** -7, pcm16: 2 ** -15, pcm24: 2 ** -23, pcm32: 2 ** -31, float32: 0, float64: 0 };
    fc.assert(
      fc.property(samples, formats, fc.integer({ min: 8000, max: 192000 }), (written, format, sampleRateHz) => {
        const answer = readWav(writeWav({ recording: { samples: written, sampleRateHz }, format }));
        expect(answer.kind).toBe('wav');
        if (answer.kind !== 'wav') return;
        expect(answer.recording.sampleRateHz).toBe(sampleRateHz);
        written.forEach((value, index) => {
          // The upper rail lies one step below full scale.
          const nearest = Math.min(value, 1 - steps[format]);
          expect(Math.abs(answer.recording.samples[index]! - nearest)).toBeLessThanOrEqual(steps[format] / 2 + 2 ** -24);
        });
      }),
    );
  });
});
