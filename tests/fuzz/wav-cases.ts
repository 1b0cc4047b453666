/** WAV files that lie, break off, or hold what no microphone gave; and a few that go through the whole measurement. */

import { jsonTake } from '../../src/cli/json.ts';
import { measure } from '../../src/core/measure.ts';
import { readWav, type WavSampleFormat, writeWav } from '../../src/core/samples/wav.ts';
import { type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { wavFaultText, wavNoteText } from '../../src/words/wav-en.ts';
import { plainTake } from '../support/plain-take.ts';
import { chunk, formatContent, wavBytes } from '../support/wav-bytes.ts';
import { type Draw, damagedBytes, NUMBERS } from './hostile.ts';
import { want, wantNoNaN, wantSentence } from './wanted.ts';

const RATES = [0, 1, 7999, 8000, 44_100, 48_000, 192_000, 192_001, 4_000_000_000, 4_294_967_295];
const FORMATS: readonly WavSampleFormat[] = ['pcm8', 'pcm16', 'pcm24', 'pcm32', 'float32', 'float64'];
/** Some fifth of a millisecond to 2 s of sound; denormal, huge and absent values among them. */
const ODD_SAMPLES = [...NUMBERS, 1e-40, -1e-40, 3e38];

function oddFloats(draw: Draw): Uint8Array {
  const samples = new Float32Array(draw.below(400));
  const oddShare = draw.pick([0, 0.005, 0.3, 1]);
  for (let index = 0; index < samples.length; index++)
    samples[index] = draw.chance(oddShare) ? draw.pick(ODD_SAMPLES) : draw.between(-1, 1);
  return new Uint8Array(samples.buffer);
}

function madeFile(draw: Draw): Uint8Array {
  if (draw.chance(0.3)) {
    const samples = Float32Array.from({ length: draw.below(200) }, () => draw.between(-1, 1));
    return writeWav({ recording: { samples, sampleRateHz: draw.pick(RATES) }, format: draw.pick(FORMATS) });
  }
  const isFloat = draw.chance(0.6);
  const data = oddFloats(draw);
  return wavBytes({
    container: draw.chance(0.2) ? 'RF64' : 'RIFF',
    riffSize: draw.chance(0.3) ? draw.pick([0, 1, 0xffffffff]) : undefined,
    before: draw.chance(0.3) ? [chunk('ds64', new Uint8Array(draw.pick([0, 8, 28]))), chunk('note', new Uint8Array(draw.below(9)))] : [],
    format: draw.chance(0.95)
      ? formatContent({
          tag: isFloat ? 3 : draw.pick([0, 1, 2, 3, 0x55, 0xfffe, 0xffff]),
          channelCount: draw.chance(0.5) ? 1 : draw.pick([0, 1, 2, 64, 65_535]),
          sampleRateHz: draw.pick(RATES),
          bits: isFloat ? draw.pick([32, 32, 64]) : draw.pick([0, 1, 8, 12, 16, 24, 32, 64, 65_535]),
          subTag: draw.chance(0.2) ? draw.pick([0, 1, 3, 9]) : undefined,
        })
      : undefined,
    data: draw.chance(0.95) ? data : undefined,
    dataSize: draw.chance(0.3) ? draw.pick([0, 1, data.length + 1, 0x7fffffff, 0xffffffff]) : undefined,
    after: draw.chance(0.2) ? [chunk('LIST', new Uint8Array(draw.below(40)), { size: draw.pick([0, 5, 0xffffffff]) })] : [],
  });
}

export function wavCase(draw: Draw): void {
  const made = madeFile(draw);
  const bytes = draw.chance(0.6) ? damagedBytes(made, draw) : made;
  const answer = readWav(bytes);
  wantNoNaN(answer);
  if (answer.kind === 'wav-fault') {
    want(answer.atByte >= 0 && answer.atByte <= bytes.length, `the fault stands at byte ${answer.atByte} of ${bytes.length}`);
    wantSentence(wavFaultText(answer));
    return;
  }
  const { samples, sampleRateHz } = answer.recording;
  want(samples.length > 0 && samples.length <= bytes.length, `${samples.length} samples from ${bytes.length} bytes`);
  want(samples.every(Number.isFinite), 'a sample is not finite');
  want(sampleRateHz >= 8000 && sampleRateHz <= 192_000, `a rate of ${sampleRateHz} Hz passed`);
  for (const note of answer.notes) wantSentence(wavNoteText(note));
}

const good = plainTake();
const SPAN: SpanSetup = {
  spanLengthM: { value: 0.15, standardUncertainty: 0.0005 },
  belt: undefined,
  ends: UNKNOWN_ENDS,
};

/** A pluck with something done to it that a broken recorder does; what it says must be figures, and printable as JSON. */
export function measureCase(draw: Draw): void {
  const samples = good.recording.samples.slice(0, draw.chance(0.2) ? draw.below(good.recording.samples.length) : undefined);
  for (let count = draw.below(4); count > 0; count--) {
    const at = draw.below(samples.length);
    const until = at + draw.pick([1, 50, 2000, samples.length]);
    const put = draw.pick([0, 1, -1, 1e-40, 1e-20]);
    const gain = draw.pick([0, 1e-30, 1e-6, 30, -1]);
    const isKept = draw.chance(0.5);
    for (let index = at; index < Math.min(until, samples.length); index++) samples[index] = isKept ? samples[index]! * gain : put;
  }
  const sampleRateHz = draw.pick([8000, 16_000, 16_000, 16_000, 48_000, 192_000]);
  const read = readWav(writeWav({ recording: { samples, sampleRateHz }, format: 'float32' }));
  if (read.kind === 'wav-fault') {
    wantSentence(wavFaultText(read));
    return;
  }
  const spanM = draw.pick([1e-3, 0.05, 0.15, 0.8, 5]);
  const measurement = measure(read.recording, {
    ...SPAN,
    spanLengthM: { value: spanM, standardUncertainty: spanM * draw.pick([0, 0.003, 1]) },
  });
  wantNoNaN(measurement);
  const text = JSON.stringify(jsonTake({ file: 'case.wav', measurement, notes: [] }));
  want(!/NaN|Infinity/u.test(text), 'the JSON holds what is no figure');
}
