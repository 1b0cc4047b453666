/** The command as people run it: built when stale, spawned, read from its streams. */
import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultSchema, takeSchema } from '../support/json-contract.ts';
import { storedBelts, storedBroken, storedNoBelts } from '../support/read-fixtures.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const script = join(root, 'src/setup/run.mjs');
const wav = (name: string) => join(root, 'fixtures', `${name}.wav`);
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'takes-'));
  copyFileSync(wav('plain-150mm'), join(folder, 'a take.wav'));
  measure('--help'); // builds, so that no test waits for it
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs in the temporary folder; npm would tell it by INIT_CWD. */
function measure(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, 'measure', ...words], {
    cwd: root,
    env: { ...process.env, INIT_CWD: folder },
    encoding: 'utf8',
  });
  return { status, stdout, stderr, lines: stdout.split('\n').filter((line) => line !== '') };
}
const BELT = ['--belt', 'curvilinear-2mm-6mm'];

describe('measure', { timeout: 60_000 }, () => {
  it('reads a plain take within 0.3 %, with an interval that holds the true force', () => {
    const { truth } = storedBelts.find(({ name }) => name === 'plain-150mm')!;
    const { status, stderr, lines } = measure('--span', '150mm', ...BELT, '--json', 'a take.wav');
    expect({ status, stderr, count: lines.length }).toEqual({ status: 0, stderr: '', count: 1 });
    const { file, reading, plucks } = takeSchema.parse(JSON.parse(lines[0]!));
    expect(file).toBe('a take.wav');
    expect(plucks).toHaveLength(truth.pluckStartsS.length);
    expect(Math.abs(reading!.frequencyHz / truth.frequencyHz - 1)).toBeLessThan(0.003);
    expect(reading!.forceLowN).toBeLessThan(truth.forceN);
    expect(reading!.forceHighN).toBeGreaterThan(truth.forceN);
    expect(reading!.budget.length).toBeGreaterThan(0);
    expect(reading!.reasons.map(({ id }) => id)).toContain('density-from-catalogue');
  });

  it('keeps to the contract for every recording that there is, in order', () => {
    const names = [...storedBelts, ...storedNoBelts, ...storedBroken].map(({ name }) => name);
    const spans = new Map(storedBelts.map(({ name, truth }) => [name, 1000 * truth.spanLengthM]));
    const rows = names.map((name) => `${wav(name)},${spans.get(name)?.toFixed(1) ?? 150}\n`);
    writeFileSync(join(folder, 'all.csv'), `file,span_mm\n${rows.join('')}`);
    const { status, stderr, lines } = measure(...BELT, '--json', '--batch', 'all.csv');
    expect(status).toBe(1);
    expect(lines.map((line) => JSON.parse(line).file)).toEqual(names.map(wav));
    const of = (index: number) => JSON.parse(lines[index]!);
    storedBelts.forEach((_, index) => {
      expect(takeSchema.parse(of(index)).reading).not.toBeNull();
    });
    storedNoBelts.forEach((_, index) => {
      expect(lines[storedBelts.length + index]).toContain('"reading":null,"nothing":{"id":"');
      takeSchema.parse(of(storedBelts.length + index));
    });
    storedBroken.forEach(({ name }, index) => {
      faultSchema.parse(of(storedBelts.length + storedNoBelts.length + index));
      expect(stderr).toContain(`${name}.wav: `);
    });
    expect(stderr.trimEnd().split('\n')).toHaveLength(storedBroken.length);
  });

  it('tells the frequency alone where span or density is not told', () => {
    for (const words of [[], ['--span', '150mm'], BELT]) {
      const { reading } = takeSchema.parse(JSON.parse(measure(...words, '--json', 'a take.wav').lines[0]!));
      expect(reading).toMatchObject({ forceN: null, forceU95N: null, forceLowN: null, forceHighN: null, budget: [] });
      expect(reading!.frequencyHz).toBeGreaterThan(0);
    }
  });

  it('weighs what is told: a weighed belt narrows the interval', () => {
    const half = (...words: string[]) =>
      JSON.parse(measure('--span', '150mm', ...words, '--json', 'a take.wav').lines[0]!).reading.forceU95N;
    expect(half(...BELT, '--density', '7.82g/m+-1%')).toBeLessThan(0.7 * half(...BELT));
    expect(half('--density', '7.82', '--stiffness', '1.2e-4', '--fixity', '0.4,0.55')).toBeLessThan(0.7 * half('--density', '7.82'));
  });

  it('measures a table of takes', () => {
    writeFileSync(
      join(folder, 'takes.csv'),
      '\ufefffile;span_mm;density_g_per_m;u_density_g_per_m\r\na take.wav;150,0;7,82;0,05\r\nnone.wav;;;\r\n',
    );
    const { status, stderr, lines } = measure('--batch', 'takes.csv', '--json');
    expect(status).toBe(1);
    expect(stderr).toBe('none.wav: There is no such file.\n');
    const { reading } = takeSchema.parse(JSON.parse(lines[0]!));
    expect(reading!.forceLowN).toBeLessThan(11.4);
    expect(reading!.forceHighN).toBeGreaterThan(11.4);
    expect(faultSchema.parse(JSON.parse(lines[1]!)).file).toBe('none.wav');
  });

  it('prints a table for people', () => {
    const { status, stdout } = measure('--span', '150mm', ...BELT, 'a take.wav');
    expect(status).toBe(0);
    expect(stdout.replaceAll('\u00a0', ' ')).toMatch(/^a take\.wav +\d+\.\d N ± \d\.\d N +\d+\.\d to \d+\.\d N +130\.\d+ Hz ± /m);
  });

  it('refuses what it does not know, with an empty answer', () => {
    const { status, stdout, stderr } = measure('--belt', 'no-such', 'a take.wav');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^--belt: there is no belt 'no-such'\. There are: curvilinear-2mm-6mm/);
  });

  it('knows its commands', () => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, 'dist/cli/main.js'), 'toString'], { encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr).toMatch(/^There is no command 'toString'\. There is: measure\b.*\.\n$/u);
  });

  it('keeps quiet when its reader has seen enough', async () => {
    const many = Array.from({ length: 200 }, () => 'none.wav');
    const child = spawn(process.execPath, [script, 'measure', '--json', ...many], { cwd: root, env: { ...process.env, INIT_CWD: folder } });
    let stderr = '';
    child.stderr.on('data', (data: Buffer) => {
      stderr += data.toString();
    });
    child.stdout.destroy();
    await new Promise((resolve) => child.on('close', resolve));
    expect(stderr.replaceAll('none.wav: There is no such file.\n', '')).toBe('');
  });
});
