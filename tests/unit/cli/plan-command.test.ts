/** The plan in and out as text; and its grades met again by takes that are synthesised, written, and measured. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import { measureCommand } from '../../../src/cli/measure-command.ts';
import { planCommand } from '../../../src/cli/plan-command.ts';
import { planOptions } from '../../../src/cli/plan-options.ts';
import { setupTold } from '../../../src/cli/told.ts';
import { setupAt } from '../../../src/core/machine/plan.ts';
import { measure } from '../../../src/core/measure.ts';
import { writeWav } from '../../../src/core/samples/wav.ts';
import { planSchema } from '../../support/json-contract.ts';
import { typicalTake } from '../core/machine/simulated-reading.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plan-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function terminal() {
  const told = { out: '', complaints: '' };
  const answer = (text: string) => {
    told.out += text;
  };
  const complain = (text: string) => {
    told.complaints += text;
  };
  return { told, answer, complain, folder };
}

function plan(...words: string[]) {
  const { told, ...to } = terminal();
  const exitCode = planCommand(words, { terminal: to, catalogue: belts });
  return { exitCode, ...told };
}

const TOLD = ['--density', '7.9g/m', '--tolerance', '12%'];
const FORCES = [6, 9] as const;

describe('plan', () => {
  it('keeps to the contract, with the shortest trusted span among the spans', () => {
    const { exitCode, out, complaints } = plan(...TOLD, '--force', '6N..9N', '--span', '137mm', '--json');
    expect({ exitCode, complaints }).toEqual({ exitCode: 0, complaints: '' });
    const { shortestTrustedSpanM, spans } = planSchema.parse(JSON.parse(out));
    expect(spans.map(({ spanM }) => spanM)).toEqual(expect.arrayContaining([0.137, shortestTrustedSpanM]));
    expect(spans.find(({ spanM }) => spanM === shortestTrustedSpanM)!.grade).toBe('trusted');
    for (const { frequencyHz, grade, reasons } of spans) {
      expect(frequencyHz[1]).toBeGreaterThan(frequencyHz[0]);
      if (grade !== 'trusted') expect(reasons.length).toBeGreaterThan(0);
    }
  });

  it('says null where no span is to be trusted, as with a belt that nobody weighed', () => {
    const { shortestTrustedSpanM, spans } = planSchema.parse(
      JSON.parse(plan('--belt', 'curvilinear-2mm-6mm', '--force', '4', '--json').out),
    );
    expect(shortestTrustedSpanM).toBeNull();
    expect(spans.at(-1)!.reasons.map(({ id }) => id)).toContain('density-from-catalogue');
    expect(spans[0]!.frequencyHz[0]).toBe(spans[0]!.frequencyHz[1]);
  });

  it('tells people the same as a table with its zones', () => {
    const { out } = plan(...TOLD, '--force', '6N..9N', '--lowest-hz', '70');
    expect(out).toMatch(/^Span +Partial 1 +Swings +Doubt +Grade\n/u);
    expect(out).toMatch(/\n40\u00a0mm +\d+ to \d+\u00a0Hz +\d+ +± \d+\u00a0% +unusable\n/u);
    expect(out).toMatch(
      /\n40\u00a0mm to [\d.]+\u00a0mm: unusable\.\n {4}belt too slack: [^\n]+\n {4}span too short: The ends and the stiffness/u,
    );
    expect(out).toMatch(/\nTrusted from [\d.]+\u00a0mm on\.\n$/u);
  });

  it.each([
    [['--force', '6N'], /--belt or --density is needed/u],
    [['--density', '7.9g/m'], /--force is needed/u],
    [[...TOLD, '--force', '9N..6N'], /--force: '9N\.\.6N' is not a range from low to high/u],
    [[...TOLD, '--force', '6 parrots'], /--force: '6 parrots' is not a force/u],
    [[...TOLD, '--force', '6', '--lowest-hz', 'low'], /--lowest-hz: 'low' is not a frequency/u],
    [[...TOLD, '--force', '6', 'a.wav'], /reads no recordings: a\.wav/u],
    [['--belt', 'rope', '--force', '6'], /there is no belt 'rope'/u],
    [['--colour'], /--colour: there is no such option/u],
  ])('is not understood: %j', (words, sentence) => {
    const { exitCode, out, complaints } = plan(...words);
    expect({ exitCode, out }).toEqual({ exitCode: 2, out: '' });
    expect(complaints).toMatch(sentence);
  });

  it('has help that names every belt', () => {
    const { exitCode, out } = plan('--help');
    expect(exitCode).toBe(0);
    for (const { id } of belts) expect(out).toContain(id);
  });

  it('is met by measure on both sides of the shortest trusted span', async () => {
    const { shortestTrustedSpanM, spans } = planSchema.parse(JSON.parse(plan(...TOLD, '--force', '6N..9N', '--json').out));
    const shortestMm = 1000 * shortestTrustedSpanM!;
    const asked = [0.75, 0.88, 1.08, 1.3].map((factor) => Math.round(factor * shortestMm));
    const planned = asked.map((mm) => {
      const answer = planSchema.parse(JSON.parse(plan(...TOLD, '--force', '6N..9N', '--span', `${mm}mm`, '--json').out));
      return answer.spans.find(({ spanM }) => Math.abs(spanM - mm / 1000) < 1e-9)!.grade;
    });
    expect(new Set(planned)).toEqual(new Set(['doubtful', 'trusted']));
    expect(spans.length).toBeGreaterThan(15);

    // The span's grade is the worse of its two forces': so are those of the takes.
    const options = planOptions([...TOLD, '--force', '6'], belts);
    if (options.kind !== 'options') throw new Error('not understood');
    const setup = setupTold(options.told, belts);
    const rows = asked.flatMap((mm) =>
      FORCES.map((forceN) => {
        const file = `${mm}-${forceN}.wav`;
        const recording = typicalTake(setupAt({ setup }, mm / 1000), forceN, mm + forceN);
        writeFileSync(join(folder, file), writeWav({ recording, format: 'pcm16' }));
        return `${file},${mm}`;
      }),
    );
    writeFileSync(join(folder, 'takes.csv'), `file,span_mm\n${rows.join('\n')}\n`);
    const { told, ...to } = terminal();
    const exitCode = await measureCommand([...TOLD, '--json', '--batch', 'takes.csv'], { terminal: to, measure, catalogue: belts });
    expect({ exitCode, complaints: told.complaints }).toEqual({ exitCode: 0, complaints: '' });
    const grades = told.out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).reading.grade as string);
    const worse = asked.map((_, i) => (grades[2 * i] === 'trusted' ? grades[2 * i + 1] : grades[2 * i]));
    expect(worse).toEqual(planned);
  });
});
