import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import { measureCommand } from '../../../src/cli/measure-command.ts';
import type { Measurement } from '../../../src/core/outcome.ts';
import type { Recording } from '../../../src/core/samples/recording.ts';
import { writeWav } from '../../../src/core/samples/wav.ts';
import type { SpanSetup } from '../../../src/core/setup.ts';

let folder: string;

/** Loud samples mean a broken program to `measureLength`, which else tells the length of the sound and no span. */
const recording = (sampleCount: number, value = 0.1): Recording => ({
  samples: new Float32Array(sampleCount).fill(value),
  sampleRateHz: 48000,
});
const put = (name: string, bytes: Uint8Array | string) => writeFileSync(join(folder, name), bytes);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'measure-'));
  mkdirSync(join(folder, 'sub'));
  put('a.wav', writeWav({ recording: recording(48000), format: 'pcm16' }));
  put('b.wav', writeWav({ recording: recording(24000), format: 'pcm16' }));
  put('sub/c.wav', writeWav({ recording: recording(12000), format: 'float32' }));
  put('loud.wav', writeWav({ recording: recording(4800, 0.9), format: 'float32' }));
  put('empty.wav', '');
  put('text.wav', 'not a recording');
  put('takes.csv', 'file,span_mm\nb.wav,120\nsub/c.wav,\nmissing.wav,\n');
  put('sub/takes.csv', 'file\nc.wav\n../a.wav\n');
  put('bad.csv', 'file,span_mm\nb.wav,120\na.wav,x\n');
  put('latin.csv', new Uint8Array([...new TextEncoder().encode('file\n'), 0xe4, 0x2e, 0x77, 0x61, 0x76]));
  put('one\nline.wav', 'x');
});
afterAll(() => rmSync(folder, { recursive: true }));

const setups: SpanSetup[] = [];
const measureLength = ({ samples, sampleRateHz }: Recording, setup: SpanSetup): Measurement => {
  if (samples[0]! > 0.5) throw new RangeError('a broken\nprogram');
  setups.push(setup);
  return { sampleRateHz, durationS: samples.length / sampleRateHz, plucks: [], outcome: { kind: 'nothing', why: 'no-onset' } };
};

async function run(...words: string[]) {
  let out = '';
  let complaints = '';
  setups.length = 0;
  const terminal = {
    answer: (text: string) => {
      out += text;
    },
    complain: (text: string) => {
      complaints += text;
    },
    folder,
  };
  const exitCode = await measureCommand(words, { terminal, measure: measureLength, catalogue: belts });
  const lines = () => out.trimEnd().split('\n');
  return { exitCode, out, complaints, lines, json: () => lines().map((line) => JSON.parse(line)) };
}

describe('measureCommand', () => {
  it('answers each file in order, on one line each', async () => {
    const { exitCode, json, complaints } = await run('--json', 'b.wav', 'a.wav', join(folder, 'sub/c.wav'));
    expect(exitCode).toBe(0);
    expect(complaints).toBe('');
    expect(json().map(({ durationS }) => durationS)).toEqual([0.5, 1, 0.25]);
    expect(json().map(({ file }) => file)).toEqual(['b.wav', 'a.wav', join(folder, 'sub/c.wav')]);
  });

  it('names what cannot be read, in the answer and on standard error, and goes on', async () => {
    const files = ['missing.wav', 'sub', 'empty.wav', 'text.wav', 'a.wav/x.wav', 'a\0b.wav', 'one\nline.wav', '/dev/zero', 'loud.wav'];
    const { exitCode, json, complaints } = await run('--json', ...files, 'a.wav');
    expect(exitCode).toBe(1);
    const answers = json();
    expect(answers.map(({ file }) => file)).toEqual([...files, 'a.wav']);
    for (const answer of answers.slice(0, -1)) expect(Object.keys(answer)).toEqual(['file', 'error']);
    expect(answers.at(-1)).toMatchObject({ durationS: 1, reading: null });
    const told = complaints.trimEnd().split('\n');
    expect(told).toHaveLength(files.length);
    expect(told[0]).toBe('missing.wav: There is no such file.');
    expect(told[1]).toBe('sub: It is a folder, not a file.');
    expect(told[6]).toMatch(/^one\\u\{a\}line\.wav: It does not start as a WAV file does/);
    expect(told[7]).toBe('/dev/zero: It is a device, not a file.');
    expect(told[8]).toContain('a fault in the program (a broken\\u{a}program)');
  });

  it('measures the takes of a table, paths from its own folder, gaps from the options', async () => {
    const { exitCode, json, complaints } = await run('--json', '--span', '200mm', '--batch', 'takes.csv');
    expect(exitCode).toBe(1);
    expect(json().map(({ file }) => file)).toEqual(['b.wav', 'sub/c.wav', 'missing.wav']);
    expect(setups.map(({ spanLengthM }) => spanLengthM!.value)).toEqual([0.12, 0.2]);
    expect(complaints).toBe('missing.wav: There is no such file.\n');
    const inside = await run('--json', '--batch', 'sub/takes.csv', 'b.wav');
    expect(inside.json().map(({ durationS }) => durationS)).toEqual([0.5, 0.25, 1]);
  });

  it.each([
    [['--json'], /Name at least one WAV file/],
    [['--spam', 'a.wav'], /--spam: there is no such option/],
    [['--span', '5 foo', 'a.wav'], /--span: '5 foo' is not a length/],
    [['--batch', 'bad.csv'], /bad\.csv, row 2, column span_mm: 'x' is not a number/],
    [['--batch', 'latin.csv'], /not text in UTF-8/],
    [['--batch', 'none.csv'], /none\.csv: There is no such file/],
    [['--batch', 'sub'], /sub: It is a folder/],
  ])('%j: usage, and nothing is answered', async (words, message) => {
    const { exitCode, out, complaints } = await run(...words);
    expect(exitCode).toBe(2);
    expect(out).toBe('');
    expect(complaints).toMatch(message);
    expect(complaints.trimEnd().split('\n')).toHaveLength(1);
    expect(setups).toEqual([]);
  });

  it('prints help that names every option and belt', async () => {
    const { exitCode, out } = await run('--help', '--span', 'x');
    expect(exitCode).toBe(0);
    for (const option of ['--span', '--belt', '--density', '--stiffness', '--fixity', '--tolerance', '--expect', '--batch', '--json']) {
      expect(out).toContain(`  ${option} `);
    }
    for (const { id, label } of belts) expect(out).toMatch(new RegExp(`  ${id} +${label.replace(/[().]/g, '\\$&')}\n`));
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(110);
  });

  it('prints a table for people', async () => {
    const { exitCode, lines } = await run('a.wav', 'missing.wav');
    expect(exitCode).toBe(1);
    expect(lines()[0]).toMatch(/^File +Force +95 % interval +Frequency +Grade +Sound +Plucks$/);
    expect(lines()[1]).toMatch(/^a\.wav +nothing heard$/);
    expect(lines()[2]).toMatch(/^ {4}\S/);
    expect(lines()[3]).toMatch(/^missing\.wav +not read$/);
  });
});
