/** The gauge command as a process: NIST's certified values, the contract of its JSON, refusals by row and column, exit status. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { digitsAgreeing, nistCoefficients, nistData, nistResidualDeviation } from '../support/nist-file.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'gauge-'));

function gauge(table: string, ...words: string[]) {
  writeFileSync(join(folder, 'run.csv'), table);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['src/setup/run.mjs', 'gauge', '--readings', 'run.csv', ...words], {
    cwd: root,
    env: { ...process.env, INIT_CWD: folder },
    encoding: 'utf8',
  });
  return { status, stdout, stderr: stderr.replaceAll(/[\u00a0\u202f]/g, ' ') };
}

const answer = (table: string, ...words: string[]) => {
  const { status, stdout, stderr } = gauge(table, '--json', ...words);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  return JSON.parse(stdout);
};

const nistTable = (name: string): string =>
  `reading,force_n\n${nistData(name)
    .map(({ y, x }) => `${y},${x}`)
    .join('\n')}\n`;

/** Invented: reading = 0.2 + 0.25 F, scatter of a few hundredths. */
const RUN = `reading,force_n,direction,series
1.21,4,up,1
2.18,8,up,1
3.22,12,up,1
4.19,16,up,1
5.21,20,up,1
5.20,20,down,1
4.22,16,down,1
3.19,12,down,1
2.21,8,down,1
1.19,4,down,1
1.20,4,up,2
2.21,8,up,2
3.19,12,up,2
4.20,16,up,2
5.19,20,up,2
5.22,20,down,2
4.21,16,down,2
3.21,12,down,2
2.19,8,down,2
1.22,4,down,2
`;

describe('certified values', { timeout: 120_000 }, () => {
  // NIST StRD, linear least squares; Pontius is the calibration of a load cell. The curve is chosen by the command.
  it.each([
    { name: 'Norris', kind: 'line', degreesOfFreedom: 34 },
    { name: 'Pontius', kind: 'quadratic', degreesOfFreedom: 37 },
  ])('$name: a $kind, all figures to 12 digits', ({ name, kind, degreesOfFreedom }) => {
    const { fit, outliers } = answer(nistTable(name));
    expect(fit).toMatchObject({ kind, degreesOfFreedom });
    expect(outliers).toEqual([]);
    for (const [j, { value, deviation }] of nistCoefficients(name).entries()) {
      expect(digitsAgreeing(fit.coefficients[j].value, value)).toBeGreaterThan(12);
      expect(digitsAgreeing(fit.coefficients[j].standardError, deviation)).toBeGreaterThan(12);
    }
    expect(digitsAgreeing(fit.residualStandardDeviation, nistResidualDeviation(name))).toBeGreaterThan(12);
  });

  it('NoInt1: a line through the origin', () => {
    // NIST StRD NoInt1: B1 2.07438016528926, standard deviation 0.165289256198347e-1, residual 3.56753034006338.
    const { fit } = answer(nistTable('NoInt1'), '--fit', 'line', '--through-origin');
    expect(fit.coefficients).toHaveLength(1);
    expect(digitsAgreeing(fit.coefficients[0].value, 2.07438016528926)).toBeGreaterThan(12);
    expect(digitsAgreeing(fit.coefficients[0].standardError, 0.0165289256198347)).toBeGreaterThan(12);
    expect(digitsAgreeing(fit.residualStandardDeviation, 3.56753034006338)).toBeGreaterThan(12);
  });

  it('the lower limit of Pontius at two tolerances', () => {
    // ASTM E74 (from memory): 2.4 s, 400 times that for 0.25 %: 2.4 · 2.05177424e-4 / 7.3206e-7 · 400 = 2.6906e5 load units; the slope of the
    // curve at that load is 0.23 % less than B1.
    expect(answer(nistTable('Pontius'), '--tolerance', '0.25%').figures.lowestForceN).toBeCloseTo(2.6906e5 * 1.0023, -3);
    expect(answer(nistTable('Pontius'), '--tolerance', '20%').figures.lowestForceN).toBeCloseTo(672.66 * 5, 0);
  });
});

describe('gauge', { timeout: 120_000 }, () => {
  it('answers by the contract', () => {
    const found = answer(RUN, '--convert', '3.2', '--convert', '9', '--tolerance', '10%');
    expect(Object.keys(found)).toEqual(['fit', 'outliers', 'verified', 'figures', 'table', 'converted']);
    expect(found.fit).toMatchObject({ kind: 'line', model: 'reading = b0 + b1 F', degreesOfFreedom: 18, chosenBy: expect.any(String) });
    expect(found.fit.coefficients.map(({ name }: { name: string }) => name)).toEqual(['b0', 'b1']);
    expect(found.verified).toMatchObject({ forceLowN: 4, forceHighN: 20, text: expect.stringContaining('Verified from 4 to 20') });
    expect(Object.keys(found.figures)).toEqual([
      'repeatabilityRelative',
      'reproducibilityRelative',
      'reversibilityRelative',
      'interpolationErrorRelative',
      'zeroReading',
      'lowestForceN',
    ]);
    expect(found.figures.zeroReading).toBeNull();
    const [inside, outside] = found.converted;
    expect(inside.forceN).toBeCloseTo(12, 1);
    expect(inside.forceLowN).toBeLessThan(12);
    expect(inside.forceHighN).toBeGreaterThan(12);
    expect(inside.forceU95N).toBeCloseTo(Math.max(inside.forceHighN - inside.forceN, inside.forceN - inside.forceLowN), 4);
    expect(outside).toEqual({ reading: 9, forceN: null, reason: expect.stringContaining('More than under the largest load') });
    for (const row of found.table) expect(row.forceU95N).toBeLessThanOrEqual(0.1 * row.forceN);
  });

  it('reads masses by local gravity, semicolons and decimal commas', () => {
    const masses = `reading;mass_g\n${[1, 2, 3, 4].flatMap((kg) => [`${String(kg + 0.01).replace('.', ',')};${kg * 1000}`, `${String(kg - 0.01).replace('.', ',')};${kg * 1000}`]).join('\n')}\n`;
    // WGS84 normal gravity at 45°, 9.8061977694 m/s² (Somigliana's formula).
    expect(answer(masses, '--latitude', '45').verified.forceHighN).toBeCloseTo(4 * 9.8061977694, 4);
    const standard = answer(masses);
    expect(standard.verified.forceHighN).toBeCloseTo(4 * 9.80665, 4);
    expect(standard.notes.join()).toContain('standard gravity');
  });

  it('prints a page for people', () => {
    const { status, stdout } = gauge(RUN, '--convert', '3.2');
    expect(status).toBe(0);
    expect(stdout.replaceAll('\u00a0', ' ')).toMatch(/Verified from 4 to 20 N[\s\S]*Chart[\s\S]*Asked for[\s\S]*no certificate/);
  });

  it('names a slip, keeps it in unless dropped', () => {
    const slipped = RUN.replace('4.19,16,up,1', '4.91,16,up,1');
    const kept = answer(slipped);
    expect(kept.outliers).toEqual([{ row: 4, text: expect.stringContaining('Two digits may have been swapped') }]);
    expect(kept.fit.degreesOfFreedom).toBe(18);
    const dropped = answer(slipped, '--drop', '4');
    expect(dropped.outliers).toEqual([]);
    expect(dropped.fit.degreesOfFreedom).toBe(17);
  });

  it('gives no number at a stop', () => {
    const stopped = `${RUN.replace(/^5\.\d\d,20/gm, '4.70,20')}4.70,24,up,1\n4.71,24,down,1\n4.70,24,up,2\n4.70,24,down,2\n`;
    const found = answer(stopped, '--convert', '4.7', '--convert', '4.1');
    expect(found.outliers).toEqual([]);
    expect(found.verified.forceHighN).toBeLessThanOrEqual(16);
    expect(found.converted[0]).toEqual({ reading: 4.7, forceN: null, reason: expect.stringContaining('stops following') });
    expect(found.converted[1].forceN).toBeCloseTo(15.6, 0);
    expect(found.notes.join()).toContain('held at a stop');
  });

  it.each([
    ['reading,force_n\n1,2\nx,3\n', /row 2, column reading: 'x' is not a number/],
    ['reading,force_n\n1,2\n2,-3\n', /row 2, column force_n: '-3' is not a number from 0 on/],
    ['reading,force_n\n1,2\n2,\n', /row 2, column force_n: The cell is empty/],
    ['reading,force_n,direction\n1,2,up\n2,3,left\n', /row 2, column direction: 'left' is neither up nor down/],
    ['reading,force_n,colour\n1,2,3\n', /column colour: There is no such column/],
    ['reading,force_n,mass_g\n1,2,3\n', /force_n and mass_g exclude each other/],
    ['reading\n1\n', /The column force_n \(or mass_g\) is missing/],
    ['reading,mass_g,u_force_n\n1,2,3\n', /column u_force_n: It belongs to force_n/],
    ['', /It holds no line with the names/],
  ])('refuses %j', (table, message) => {
    const { status, stdout, stderr } = gauge(table, '--json');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(message);
  });

  it.each([
    [['--fit', 'cubic'], /--fit: 'cubic' is none of auto/],
    [['--tolerance', '0'], /--tolerance: '0' is not a share/],
    [['--drop', '99'], /--drop: there is no row 99/],
    [['--drop', '1.5'], /--drop: '1.5' is not the number of a row/],
    [['--convert', 'five'], /--convert: 'five' is not a number/],
    [['--latitude', '91'], /--latitude/],
    [['--height', '10m'], /--latitude too/],
    [['--fit=line', '--fit=line'], /given twice/],
    [['other.csv'], /other.csv: the table of readings follows --readings/],
  ])('refuses %j', (words, message) => {
    const { status, stderr } = gauge(RUN, ...words);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });

  it('tells an unreadable table and one without a curve apart', () => {
    const missing = gauge(RUN, '--json', '--help');
    expect(missing.status).toBe(0);
    const alike = gauge('reading,force_n\n1,2\n1,3\n1,4\n', '--json');
    expect(alike.status).toBe(1);
    expect(JSON.parse(alike.stdout)).toEqual({ file: 'run.csv', error: expect.stringContaining('did not follow the force') });
  });
});
