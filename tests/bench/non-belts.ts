/** Section `non-belts`: readings of what was no plucked span. */

import type { Run } from './run.ts';
import { grouped, share } from './statistics.ts';
import { percentWithin, table } from './table.ts';

export function nonBeltSection(run: Run): string {
  const results = run.nonBelts();
  const rows = [...grouped(results, ({ kind }) => kind), ['**all**', results] as const].map(([kind, of]) => {
    const count = (grade: string) => of.filter((result) => result.grade === grade).length;
    const any = of.filter(({ hertz }) => hertz !== undefined).length;
    return [
      kind,
      of.length,
      any,
      count('trusted'),
      count('doubtful'),
      count('unusable'),
      kind === '**all**' ? percentWithin(share(any, of.length)) : '',
    ];
  });
  const parts = ['### Readings of what is no belt', table(['sound', 'takes', 'any reading', 'trusted', 'doubtful', 'unusable', '%'], rows)];
  if (run.options.list) {
    const heard = results.filter(({ hertz }) => hertz !== undefined);
    parts.push(heard.map(({ id, hertz, grade }) => `- ${id}: ${hertz!.toFixed(1)} Hz, ${grade}`).join('\n'));
  }
  return parts.join('\n\n');
}
