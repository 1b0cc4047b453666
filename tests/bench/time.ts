/** Section `time`: what one take costs on this machine; noted, never asserted. */

import { cpus } from 'node:os';
import { createListening } from '../../src/core/listening.ts';
import { corpus } from '../support/corpus/corpus.ts';
import type { Run } from './run.ts';
import { median, quantile } from './statistics.ts';
import { digits, table } from './table.ts';

const WARM_UP = 20;
const LONG_TAKE_S = 60;
const BLOCK = 128;

export function timeSection(run: Run): string {
  const takes = run.belts().slice(WARM_UP);
  const single = takes.filter(({ truth }) => truth.pluckStartsS.length === 1);
  const row = (name: string, of: typeof takes) => [
    name,
    of.length,
    digits(median(of.map(({ durationS }) => durationS)), 2),
    digits(median(of.map(({ ms }) => ms)), 1),
    digits(
      quantile(
        of.map(({ ms }) => ms),
        0.9,
      ),
      1,
    ),
    digits(median(of.map(({ ms, truth }) => ms / truth.pluckStartsS.length)), 1),
  ];
  const long = longTake(run);
  return [
    `### Time on one core of ${cpus()[0]?.model ?? 'an unknown processor'}, Node ${process.versions.node}`,
    table(
      ['takes', 'n', 'median length s', 'median ms', '90 % ms', 'median ms for each pluck'],
      [
        row('all', takes),
        row(
          '48 kHz, one pluck',
          single.filter(({ sampleRateHz }) => sampleRateHz === 48_000),
        ),
        row(
          '96 kHz, one pluck',
          single.filter(({ sampleRateHz }) => sampleRateHz === 96_000),
        ),
      ],
    ),
    `A take of ${LONG_TAKE_S} s at 48 kHz with ${long.pluckCount} plucks, in blocks of ${BLOCK}: ${long.ms.toFixed(0)} ms, ` +
      `${(long.ms / LONG_TAKE_S).toFixed(1)} ms for each second of sound; longest block ${long.longestMs.toFixed(0)} ms.`,
  ].join('\n\n');
}

/** One take again and again until the time is full, heard as a microphone gives it. */
function longTake({ options }: Run): { ms: number; longestMs: number; pluckCount: number } {
  const sampleRateHz = 48_000;
  const takes = corpus(options.seed + 1, { takesPerKind: 50, kinds: ['white noise 20 dB'] });
  let take = takes.next().value!;
  while (take.recording.sampleRateHz !== sampleRateHz) take = takes.next().value!;
  const { samples } = take.recording;
  const sound = Float32Array.from({ length: LONG_TAKE_S * sampleRateHz }, (_, index) => samples[index % samples.length]!);
  const listening = createListening({ sampleRateHz, setup: take.setup });
  let [ms, longestMs, pluckCount] = [0, 0, 0];
  for (let from = 0; from < sound.length; from += BLOCK) {
    const before = performance.now();
    const events = listening.push(sound.subarray(from, from + BLOCK));
    const took = performance.now() - before;
    ms += took;
    longestMs = Math.max(longestMs, took);
    pluckCount += events.filter(({ kind }) => kind === 'pluck').length;
  }
  return { ms, longestMs, pluckCount };
}
