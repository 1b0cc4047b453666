/** The agreement command on folders of simulated takes: what is planted is named, and what is wrong with a folder is said. */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, expectTypeOf, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import type { TakeTruth } from '../../../shared/take-truth.ts';
import { agreementCommand } from '../../../src/cli/agreement-command.ts';
import { measure } from '../../../src/core/measure.ts';
import type { ToldTake } from '../../../src/core/validation/told-take.ts';
import { writeSession } from '../../support/known-force-session.ts';

let place: string;
beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), 'agreement-'));
});
afterAll(() => rmSync(place, { recursive: true, force: true }));

async function run(...words: string[]) {
  let [answer, complaint] = ['', ''];
  const terminal = {
    answer: (text: string) => {
      answer += text;
    },
    complain: (text: string) => {
      complaint += text;
    },
    folder: place,
  };
  const exitCode = await agreementCommand(words, { terminal, measure, catalogue: belts });
  return { exitCode, answer, complaint };
}

const SESSION = { spansM: [0.13, 0.26], forcesN: [4, 9, 20] };

describe('agreement', () => {
  it('of a sound session holds the weights and needs no cause put right', async () => {
    writeSession(join(place, 'sound'), SESSION);
    const { exitCode, answer, complaint } = await run('sound');
    expect({ exitCode, complaint }).toEqual({ exitCode: 0, complaint: '' });
    expect(answer).toContain('holds the weight in 6 of 6');
    expect(answer).not.toContain('Likely cause');
  });

  it('of a session with a density told 10 % too high names the density and what it should be', async () => {
    writeSession(join(place, 'dense'), { ...SESSION, toldDensity: 1.1 });
    const { exitCode, answer } = await run('dense');
    expect(exitCode).toBe(0);
    expect(answer).toContain('Likely cause: the linear density.');
    const wanted = Number(/these takes want ([\d.]+)/u.exec(answer)?.[1]);
    expect(Math.abs(wanted / 7.81 - 1)).toBeLessThan(0.015);
    const { cause, bias, sentences } = JSON.parse((await run('--json', 'dense')).answer);
    expect(cause.likely.id).toBe('density');
    expect(bias.value).toBeGreaterThan(0.08);
    expect(sentences.join(' ')).toContain('Weigh a metre of this very belt.');
  });

  it('of a session whose spans were told 4 mm too long names the span', async () => {
    writeSession(join(place, 'long'), { ...SESSION, toldLonger: 0.004 });
    expect((await run('long')).answer).toContain('Likely cause: the span length. Told too long by');
  });

  it('of one span asks for another', async () => {
    writeSession(join(place, 'one'), { spansM: [0.15], forcesN: [5, 9, 14], toldDensity: 1.05 });
    const { answer } = await run('one');
    expect(answer).toContain('cannot tell apart');
    expect(answer).toContain('on a span of another length');
  });

  it('names what is wrong in a folder and compares the rest', async () => {
    const folder = join(place, 'mixed');
    writeSession(folder, { spansM: [0.15], forcesN: [5, 9, 14] });
    writeFileSync(join(folder, 'alone.wav'), 'RIFF');
    writeFileSync(join(folder, 'torn.wav'), 'RIFF');
    writeFileSync(join(folder, 'torn.json'), '{');
    writeFileSync(join(folder, 'wrong.wav'), 'RIFF');
    writeFileSync(join(folder, 'wrong.json'), '{"forceN":-3}');
    writeFileSync(join(folder, 'bell.wav'), 'RIFF');
    writeFileSync(join(folder, 'bell.json'), '{"description":"a bell"}');
    const { exitCode, answer, complaint } = await run('mixed');
    expect(exitCode).toBe(1);
    expect(answer).toContain('3 of 3');
    expect(complaint).toContain('alone: left out. There is no JSON file of that name beside it.');
    expect(complaint).toContain('torn: left out. The JSON file beside it cannot be read as JSON.');
    expect(complaint).toContain('wrong: left out. In the JSON file beside it,');
    expect(complaint).toContain('One recording has no force beside it and was left out.');
  });

  it('wants one folder that is there', async () => {
    mkdirSync(join(place, 'empty'));
    expect((await run()).exitCode).toBe(2);
    expect((await run('a', 'b')).exitCode).toBe(2);
    expect(await run('nowhere')).toMatchObject({ exitCode: 2, complaint: 'nowhere: There is no such file.\n' });
    expect(await run('--loud', 'empty')).toMatchObject({ exitCode: 2 });
    expect(await run('empty')).toMatchObject({ exitCode: 1, answer: 'No take gave a force to compare.\n' });
    expect((await run('--help')).answer).toContain('npm run --silent agreement');
  });

  it('reads with what the files tell', () => {
    expectTypeOf<TakeTruth>().toExtend<ToldTake>();
  });
});
