/** What is asked without a recording: a frequency that was read elsewhere, and the frequency to expect of a force. */

import { describe, expect, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import { measureCommand } from '../../../src/cli/measure-command.ts';
import { toldFixity, toldLie } from '../../../src/cli/values.ts';
import { FIXITY_OF_END } from '../../../src/core/setup.ts';

async function run(...words: string[]) {
  let out = '';
  let complaints = '';
  const terminal = {
    answer: (text: string) => {
      out += text;
    },
    complain: (text: string) => {
      complaints += text;
    },
    folder: '/',
  };
  const measure = () => {
    throw new Error('nothing was recorded');
  };
  const exitCode = await measureCommand(words, { terminal, measure, catalogue: belts });
  return {
    exitCode,
    out,
    complaints,
    json: () =>
      out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
  };
}

const SPAN = ['--span', '150mm', '--density', '7.8g/m'];

describe('--frequency', () => {
  it('gives a reading as of a file, with interval, budget and reasons, and says that nothing was heard', async () => {
    const { exitCode, json, complaints } = await run('--json', ...SPAN, '--frequency', '122.5Hz+-0.3Hz');
    expect([exitCode, complaints]).toEqual([0, '']);
    const [{ told, reading }] = json();
    expect(told).toBe('122.5Hz+-0.3Hz');
    expect(reading).toMatchObject({ frequencyHz: 122.5, frequencyU95Hz: 0.6, grade: 'trusted' });
    expect(reading.forceN).toBeCloseTo(10, 0);
    expect(reading.forceLowN).toBeLessThan(reading.forceN);
    expect(reading.forceHighN).toBeGreaterThan(reading.forceN);
    expect(reading.reasons.map(({ id }: { id: string }) => id)).toEqual(['not-heard-here']);
    expect(reading.budget).toHaveLength(7);
  });

  it('is known to half a percent where nothing else is told', async () => {
    const [{ reading }] = (await run('--json', ...SPAN, '--frequency', '200')).json();
    expect(reading.frequencyU95Hz).toBe(2);
  });

  it('keeps the reasons of span and belt', async () => {
    const [{ reading }] = (await run('--json', '--span', '45mm', '--belt', 'curvilinear-2mm-6mm', '--frequency', '300Hz')).json();
    expect(reading.grade).toBe('unusable');
    const ids = reading.reasons.map(({ id }: { id: string }) => id);
    expect(ids).toContain('span-too-short');
    expect(ids).toContain('density-from-catalogue');
  });

  it('without a span is a frequency and no more', async () => {
    const [{ reading }] = (await run('--json', '--frequency', '122')).json();
    expect(reading).toMatchObject({ frequencyHz: 122, forceN: null, budget: [] });
    expect((await run('--frequency', '122')).out).toContain('Without --span');
  });
});

describe('--force', () => {
  it('gives the frequency to expect, with the interval that span, belt and ends leave', async () => {
    const [{ told, expected }] = (await run('--json', ...SPAN, '--force', '10N')).json();
    expect(told).toBe('10N');
    expect(expected.forceN).toBe(10);
    expect(expected.frequencyHz).toBeCloseTo(122.5, -1);
    expect(expected.frequencyLowHz).toBeLessThan(expected.frequencyHz);
    expect(expected.frequencyHighHz).toBeGreaterThan(expected.frequencyHz);
    // Read back as a frequency of its own it is the same force.
    const [{ reading }] = (await run('--json', ...SPAN, '--frequency', `${expected.frequencyHz}Hz`)).json();
    expect(reading.forceN).toBeCloseTo(10, 1);
  });

  it('says in a sentence for people what it says in figures', async () => {
    expect((await run(...SPAN, '--force', '10N')).out).toMatch(
      /^10N should ring at 12\d\sHz, in 95 % of cases from 1\d\d to 1\d\d\sHz\.\n$/u,
    );
  });

  it('without span or belt knows none', async () => {
    expect((await run('--json', '--force', '10N')).json()).toEqual([{ told: '10N', expected: null }]);
    expect((await run('--force', '10N')).out).toContain('no frequency follows');
  });
});

describe('what cannot be read', () => {
  it.each([
    [['--frequency', 'fast'], '--frequency'],
    [['--frequency', '0Hz'], '--frequency'],
    [['--force', '10kg'], '--force'],
    [['--frequency', '100Hz', '--lie', 'upright'], '--lie'],
    [['--frequency', '100Hz', '--fixity', 'glue'], '--fixity'],
  ])('%s is refused by name', async (words, option) => {
    const { exitCode, complaints, out } = await run(...words);
    expect([exitCode, out]).toEqual([2, '']);
    expect(complaints).toContain(option);
  });
});

it('knows ends by kind and by number, alike or each for itself', () => {
  const { 'toothed pulley': pulley, 'smooth idler': idler, clamp, unknown } = FIXITY_OF_END;
  expect(toldFixity('clamp,pulley')).toEqual({ ok: true, value: [clamp, pulley] });
  expect(toldFixity('idler')).toEqual({ ok: true, value: [idler, idler] });
  expect(toldFixity('unknown, 1')).toEqual({ ok: true, value: [unknown, { value: 1 }] });
  expect(toldFixity('clamp,pulley,idler').ok).toBe(false);
});

it('knows two ways for a belt to lie', () => {
  expect([toldLie('flat'), toldLie('edge')]).toEqual([
    { ok: true, value: 'flat' },
    { ok: true, value: 'edge' },
  ]);
  expect(toldLie('up').ok).toBe(false);
});

it('a belt that lies flat and slack is told less force', async () => {
  const words = ['--json', '--span', '600mm', '--density', '7.8g/m', '--frequency', '18Hz'];
  const [edge] = (await run(...words)).json();
  const [flat] = (await run(...words, '--lie', 'flat')).json();
  expect(flat.reading.forceN).toBeLessThan(0.95 * edge.reading.forceN);
  expect(flat.reading.reasons.map(({ id }: { id: string }) => id)).toContain('span-sags');
});
