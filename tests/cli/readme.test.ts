/** The examples of README: each command is run as it stands there, and must print what stands below it. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const readme = readFileSync(`${root}README.md`, 'utf8');

/** Commands of `console` blocks: the line after the dollar sign, and what it prints. */
const examples = [...readme.matchAll(/```console\n\$ (.+)\n([\s\S]*?)```/g)].map(([, command, printed]) => ({
  command: command!,
  printed: printed!,
}));

const OURS = /^npm run --silent (measure|plan|agreement|gauge) -- (.+)$/;

function run(command: string): string {
  const [, name, words] = OURS.exec(command)!;
  const env = { ...process.env, INIT_CWD: root };
  const { status, stdout, stderr } = spawnSync(process.execPath, ['src/setup/run.mjs', name!, ...words!.split(' ')], {
    cwd: root,
    env,
    encoding: 'utf8',
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  return stdout;
}

/** Without white space at line ends, and with plain spaces for those that do not break. */
const asTyped = (text: string): string =>
  text
    .replaceAll(/[\u00a0\u202f]/g, ' ')
    .replaceAll(/ +$/gm, '')
    .trim();

/** With each figure to three digits or to 0.005, whichever is coarser: the last ones may differ from one machine to the next. */
const asShown = (text: string): unknown =>
  JSON.parse(text, (_, value: unknown) =>
    typeof value === 'number' ? expect.closeTo(value, Math.min(2, 2 - Math.floor(Math.log10(Math.abs(value) || 1)))) : value,
  );

describe('README', { timeout: 120_000 }, () => {
  it('has examples, of which each is a command of ours', () => {
    expect(examples.length).toBeGreaterThan(3);
    expect(examples.filter(({ command }) => !OURS.test(command))).toEqual([]);
  });

  it.each(examples)('prints as shown: $command', ({ command, printed }) => {
    const found = run(command);
    if (command.includes('--json')) expect(JSON.parse(found)).toEqual(asShown(printed));
    else expect(asTyped(found)).toBe(asTyped(printed));
  });

  it('names no file that is not there', () => {
    const named = [...readme.matchAll(/\]\(([\w./-]+)\)|src="([\w./-]+)"/g)].map((match) => match[1] ?? match[2]!);
    expect(named.length).toBeGreaterThan(3);
    expect(named.filter((file) => !existsSync(`${root}${file}`))).toEqual([]);
  });
});
