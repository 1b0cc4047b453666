/** Section `frequency`: how often the first partial was found, by kind; then the takes where it was not. */

import { errorOf, isOctaveType, isRight, isWithin, NEAR } from './judge.ts';
import type { BeltResult } from './ours.ts';
import type { Run } from './run.ts';
import { grouped, median, quantile, shareOf } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

const hasAnswer = ({ hertz }: BeltResult) => hertz !== undefined;
export const holdsTruth = (result: BeltResult): boolean =>
  result.hertz !== undefined && Math.abs(result.hertz - result.truthHz) <= (result.u95 ?? 0);

export function frequencySection(run: Run): string {
  const results = run.belts();
  const row = (name: string, of: readonly BeltResult[], withInterval = false) => {
    const answered = of.filter(hasAnswer);
    const errors = answered.map((result) => 100 * Math.abs(errorOf(result)!));
    const right = shareOf(of, isRight);
    return [
      name,
      of.length,
      withInterval ? percentWithin(right) : percent(right),
      percent(shareOf(of, (result) => isWithin(result, NEAR))),
      percent(shareOf(of, (result) => !hasAnswer(result))),
      percent(shareOf(of, isOctaveType)),
      percent(shareOf(of, (result) => hasAnswer(result) && !isWithin(result, NEAR) && !isOctaveType(result))),
      digits(median(errors), 3),
      digits(quantile(errors, 0.9), 3),
      percent(shareOf(answered, holdsTruth)),
      percent(
        shareOf(of, ({ grade }) => grade === 'trusted'),
        0,
      ),
    ];
  };
  const head = [
    'kind',
    'takes',
    'within 1 %',
    'within 3 %',
    'none',
    'octave',
    'other wrong',
    'median error %',
    '90 %',
    'interval holds',
    'trusted',
  ];
  const rows = [...grouped(results, ({ kind }) => kind)].map(([kind, of]) => row(kind, of));
  const groups = [...grouped(results, ({ group }) => group)].map(([group, of]) => row(`**${group}**`, of, true));
  return ['### First partial, by kind of difficulty (shares in %)', table(head, [...rows, ...groups]), ...wrongTakes(run, results)].join(
    '\n\n',
  );
}

function wrongTakes(run: Run, results: readonly BeltResult[]): readonly string[] {
  if (!run.options.list) return [];
  const wrong = results.filter((result) => !isRight(result) || !holdsTruth(result));
  const head = ['take', 'Hz', 'answer / truth', 'error / U95', 'grade or why', 'decay ms', 'first partial dB', 'reasons'];
  const rows = wrong.map((result) => [
    result.id,
    result.truthHz.toFixed(2),
    result.hertz === undefined ? '-' : (result.hertz / result.truthHz).toFixed(4),
    result.hertz === undefined ? '-' : (Math.abs(result.hertz - result.truthHz) / (result.u95 ?? 0)).toFixed(2),
    result.grade ?? result.why,
    (1000 * result.truth.decayS).toFixed(0),
    result.truth.firstPartialDb.toFixed(0),
    result.reasons.join(' '),
  ]);
  return ['### Takes whose answer is missing or wrong, or whose interval misses', table(head, rows)];
}
