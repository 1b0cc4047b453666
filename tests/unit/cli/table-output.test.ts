import { describe, expect, it } from 'vitest';
import { TakeTable } from '../../../src/cli/table-output.ts';
import type { Measurement, PluckReading, Reading } from '../../../src/core/outcome.ts';

const answer = {
  frequencyHz: { value: 113.1, standardUncertainty: 0.1, u95: 0.2 },
  forceN: { value: 9.7, low: 9.2, high: 10.2, u95: 0.5 },
  grade: 'doubtful',
  soundGrade: 'trusted',
  reasons: [],
} as const;
const sound = (startS: number): PluckReading['sound'] => ({
  startS,
  frequencyHz: { value: 113.1, standardUncertainty: 0.1 },
  partials: [],
  evidence: {
    cyclesToDecay: 24,
    levelOverBackgroundDb: 40,
    clippedShare: 0,
    glideRelative: 0,
    leadOverRival: 30,
    foreignHz: [],
    ownShare: 1,
    firstPartialHeard: true,
    bandwidthHz: 24000,
  },
});
const printed = (reading: Partial<Reading>, plucks: readonly PluckReading[] = [{ ...answer, sound: sound(0.31), used: true }]) => {
  const measurement: Measurement = {
    sampleRateHz: 48000,
    durationS: 2,
    plucks,
    outcome: { kind: 'reading', ...answer, pluckCount: plucks.length, budget: [], ...reading },
  };
  const text = new TakeTable(['a.wav']).take({ file: 'a.wav', measurement, notes: ['channel 2 of 2 used'] });
  return text.replaceAll('\u00a0', ' ').trimEnd().split('\n');
};
const row = (line: string | undefined) => line!.trim().split(/ {2,}/);

describe('TakeTable', () => {
  it('shows force, interval, frequency and both grades', () => {
    const lines = printed({});
    expect(row(lines[0])).toEqual(['a.wav', '9.7 N ± 0.5 N', '9.2 to 10.2 N', '113.10 Hz ± 0.20 Hz', 'doubtful', 'trusted', '1']);
    expect(lines.slice(1)).toEqual(['    Note: channel 2 of 2 used.']);
  });

  it('shows only bounds where a reading decides nothing', () => {
    expect(row(printed({ grade: 'unusable', forceN: { value: 4, low: 2.31, high: 5.69, u95: 1.7 } })[0]).slice(1, 3)).toEqual([
      '–',
      '2.3 to 5.7 N',
    ]);
    expect(row(printed({ grade: 'unusable', forceN: { value: 4, high: 5.69 } })[0]).slice(1, 3)).toEqual(['–', 'below 5.7 N']);
    expect(row(printed({ grade: 'unusable', forceN: { value: 4, low: 2.31 } })[0]).slice(1, 3)).toEqual(['–', 'above 2.3 N']);
    expect(row(printed({ forceN: undefined })[0]).slice(1, 3)).toEqual(['–', '–']);
  });

  it('lists several plucks, and which were left out', () => {
    const plucks = [
      { ...answer, sound: sound(0.31), used: true },
      { ...answer, sound: sound(1.2), used: false },
    ];
    const lines = printed({}, plucks);
    expect(row(lines[0]).at(-1)).toBe('1 of 2');
    expect(row(lines[1])[0]).toBe('pluck 1 at 0.31 s');
    expect(row(lines[2])).toEqual([
      'pluck 2 at 1.20 s',
      '9.7 N ± 0.5 N',
      '9.2 to 10.2 N',
      '113.10 Hz ± 0.20 Hz',
      'doubtful',
      'trusted',
      'left out',
    ]);
  });

  it('says each doubt and what to do', () => {
    const lines = printed({ reasons: [{ about: 'sound', holdsAt: 'doubtful', id: 'clipped', clippedShare: 0.1 }] });
    expect(lines[1]).toMatch(/^ {4}clipped: The sound was cut off at the top\. Pluck softer/);
  });

  it('lines its columns up, and lets no name break a line', () => {
    const names = ['a.wav', 'a much longer name of a recording.wav', 'x\n\u202ey.wav'];
    const table = new TakeTable(names);
    const starts = [table.header(), ...names.map((name) => table.notRead(name))].map((line) => line.search(/Force|not read/));
    expect(new Set(starts).size).toBe(1);
    expect(table.notRead(names[2]!)).toMatch(/^x\\u\{a\}\\u\{202e\}y\.wav +not read\n$/);
  });
});
