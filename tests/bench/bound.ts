/** Section `bound`: errors in noise against the Cramer-Rao bound of the first partial alone as a damped tone. */

import { isRight } from './judge.ts';
import type { BeltResult } from './ours.ts';
import type { Run } from './run.ts';
import { grouped, median, shareOf } from './statistics.ts';
import { digits, percent, table } from './table.ts';

/** Median of |x| of a normal x of standard deviation 1. */
const MEDIAN_OF_NORMAL = 0.6745;

/** A pluck that raises its own frequency by less than this leaves the noise to decide. */
const GENTLE = 5e-4;

export function boundSection(run: Run): string {
  const noisy = run.belts().filter(({ kind }) => kind.includes('noise') && kind.endsWith('dB'));
  const row = (name: string, of: readonly BeltResult[]) => {
    const right = of.filter(isRight);
    const ratio = median(right.map(({ hertz, truthHz, truth }) => Math.abs(hertz! - truthHz) / (MEDIAN_OF_NORMAL * truth.boundHz)));
    const boundPercent = median(of.map(({ truth, truthHz }) => (100 * truth.boundHz) / truthHz));
    return [name, of.length, percent(shareOf(of, isRight)), digits(boundPercent, 3), digits(ratio, 2)];
  };
  const loud = noisy.filter(({ kind }) => kind.endsWith(' 5 dB') || kind.endsWith('10 dB'));
  return [
    '### Error over the Cramer-Rao bound of the first partial alone',
    table(
      ['takes', 'n', 'within 1 %, %', 'median bound, %', 'median of error / (0.6745 bound)'],
      [
        ...[...grouped(noisy, ({ kind }) => kind)].map(([kind, of]) => row(kind, of)),
        row('**5 and 10 dB together**', loud),
        row(
          'of these, gentle plucks (glide below 0.05 %)',
          loud.filter(({ truth }) => truth.glideRelative < GENTLE),
        ),
      ],
    ),
  ].join('\n\n');
}
