import { describe, expect, it } from 'vitest';
import { splitArguments } from '../../../src/cli/arguments.ts';

const NAMES = { '--span': 'value', '--json': 'flag', '-h': 'flag' } as const;
const split = (...words: string[]) => {
  const result = splitArguments(words, NAMES);
  return result.kind === 'usage' ? result.faults : { options: Object.fromEntries(result.options), files: result.files };
};

describe('splitArguments', () => {
  it('takes options before, between and after files, joined or apart', () => {
    const wanted = { options: { '--span': '150mm', '--json': '' }, files: ['a.wav', 'b.wav'] };
    expect(split('--span', '150mm', '--json', 'a.wav', 'b.wav')).toEqual(wanted);
    expect(split('a.wav', '--span=150mm', 'b.wav', '--json')).toEqual(wanted);
  });

  it('takes all after -- for files', () => {
    expect(split('--json', '--', '--span', '-x.wav', '--')).toEqual({ options: { '--json': '' }, files: ['--span', '-x.wav', '--'] });
  });

  it('takes a value that begins with one dash, or holds an equals sign', () => {
    expect(split('--span', '-5mm')).toMatchObject({ options: { '--span': '-5mm' } });
    expect(split('--span=a=b')).toMatchObject({ options: { '--span': 'a=b' } });
    expect(split('-')).toMatchObject({ files: ['-'] });
  });

  it.each([
    [['--spam', '1'], { what: 'unknown-option', option: '--spam' }],
    [['--sp', '1'], { what: 'unknown-option', option: '--sp' }],
    [['-x.wav'], { what: 'unknown-option', option: '-x.wav' }],
    [['--toString'], { what: 'unknown-option', option: '--toString' }],
    [['--span'], { what: 'missing-value', option: '--span' }],
    [['--span='], { what: 'missing-value', option: '--span' }],
    [['--span', ''], { what: 'missing-value', option: '--span' }],
    [['--span', '--json'], { what: 'missing-value', option: '--span' }],
    [['--json=yes'], { what: 'unexpected-value', option: '--json' }],
    [['--span', '1', '--span=2'], { what: 'option-twice', option: '--span' }],
  ])('%j is refused', (words, fault) => {
    expect(split(...words)).toEqual([fault]);
  });
});
