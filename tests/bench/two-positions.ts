/** Section `two-positions`: what a second position of the carriage is worth, and whether it notices a force that was not the same. */

import { twoPositions } from '../../src/core/machine/two-positions.ts';
import { createRandom } from '../../src/core/math/random.ts';
import { drawTwoTakes } from '../support/two-takes.ts';
import type { Run } from './run.ts';
import { median, shareOf } from './statistics.ts';
import { digits, percentWithin, table } from './table.ts';

const BELTS = 300;
/** The promised pair first; with the others it is only asked what a second position is worth. */
const PROMISED: readonly [number, number] = [0.15, 0.3];
const OTHERS: readonly (readonly [number, number])[] = [
  [0.08, 0.3],
  [0.1, 0.2],
];
/** Of the force at the second position. */
const CHANGES = [1.08, 1.15, 0.92, 0.85];

export function twoPositionsSection({ options: { seed } }: Run): string {
  const drawn = (stream: number, spansM: readonly [number, number], forceFactor = 1) =>
    Array.from({ length: BELTS }, (_, i) => one(1000 * seed + i, stream, { spansM, forceFactor }));
  const refused = CHANGES.map((factor) => {
    const share = shareOf(drawn(0, PROMISED, factor), ({ kind }) => kind === 'not-one-force');
    return [`${factor > 1 ? '+' : '−'}${Math.round(100 * Math.abs(factor - 1))} %`, percentWithin(share)];
  });
  return [
    `### Two positions of the carriage (${BELTS} belts each, unknown ends, weighed to 2 %, rulers to 0.5 mm)`,
    'Promised for 150 and 300 mm: at most 0.6 of the interval of the shorter alone, at least 95 % hold.',
    table(
      [
        'spans, mm',
        'interval over that of the shorter alone, median',
        'shorter alone, half, %',
        'longer alone, half, %',
        'together, half, %',
        'holds, %',
        'refused, %',
      ],
      [PROMISED, ...OTHERS].map((spansM, stream) => worth(spansM, drawn(stream, spansM))),
    ),
    'Another force at the second position, 150 and 300 mm; promised: a change of 15 % refused in at least 80 %.',
    table(['change of the force', 'refused, %'], refused),
  ].join('\n\n');
}

function worth(spansM: readonly [number, number], all: readonly ReturnType<typeof one>[]): readonly string[] {
  const combined = all.flatMap((result) => (result.kind === 'combined' ? [result] : []));
  return [
    `${1000 * spansM[0]} and ${1000 * spansM[1]}`,
    digits(median(combined.map(({ ratio }) => ratio)), 2),
    digits(median(combined.map(({ halfShorter }) => 100 * halfShorter)), 1),
    digits(median(combined.map(({ halfLonger }) => 100 * halfLonger)), 1),
    digits(median(combined.map(({ half }) => 100 * half)), 1),
    percentWithin(shareOf(combined, ({ holds }) => holds)),
    percentWithin(shareOf(all, ({ kind }) => kind === 'not-one-force')),
  ];
}

function one(seed: number, stream: number, at: Parameters<typeof drawTwoTakes>[1]) {
  const { takes, forceN } = drawTwoTakes(createRandom(seed, stream), at);
  const found = twoPositions(takes);
  if (found.kind !== 'combined') return { kind: found.kind } as const;
  const { forceN: told, alone } = found;
  const { low = 0, high = Number.POSITIVE_INFINITY, value } = alone[0].forceN!;
  const longer = alone[1].forceN!;
  const truth = forceN * (1 + at.forceFactor) * 0.5;
  return {
    kind: found.kind,
    ratio: (told.high! - told.low!) / (high - low),
    half: (told.high! - told.low!) / 2 / told.value,
    halfShorter: (high - low) / 2 / value,
    halfLonger: (longer.high! - longer.low!) / 2 / longer.value,
    holds: told.low! <= truth && truth <= told.high!,
  } as const;
}
