/** Section `coverage`: how often the intervals hold the truth, and what grades are worth. */

import { forceCoverage } from './coverage-force.ts';
import { spanCoverage } from './coverage-spans.ts';
import { holdsTruth } from './frequency.ts';
import { isOctaveType, isRight, isWithin, NEAR } from './judge.ts';
import type { BeltResult } from './ours.ts';
import type { Run } from './run.ts';
import { grouped, median, shareOf } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

const forceHolds = ({ force, truth }: BeltResult): boolean =>
  force !== undefined && force.low <= truth.forceN && truth.forceN <= force.high;
const isBounded = ({ force }: BeltResult): boolean => force !== undefined && force.low > 0 && force.high < Number.POSITIVE_INFINITY;
const halfPercent = ({ force }: BeltResult): number => (50 * (force!.high - force!.low)) / force!.value;
const frequencyHalfPercent = ({ u95, hertz }: BeltResult): number => (100 * u95!) / hertz!;

export function coverageSection(run: Run): string {
  const answered = run.belts().filter(({ hertz }) => hertz !== undefined);
  const intervals = (name: string, of: readonly BeltResult[]) => [
    name,
    of.length,
    percentWithin(shareOf(of, holdsTruth)),
    digits(median(of.map(frequencyHalfPercent)), 3),
    percentWithin(
      shareOf(
        of.filter(({ force }) => force),
        forceHolds,
      ),
    ),
    digits(median(of.filter(isBounded).map(halfPercent)), 1),
  ];
  const byKind = grouped(answered, ({ kind }) => kind);
  const coverages = [...byKind].map(([kind, of]) => ({ kind, part: shareOf(of, holdsTruth) }));
  coverages.sort((a, b) => a.part.count / a.part.of - b.part.count / b.part.of);
  const listed = answered.filter(({ group }) => group === 'listed');
  const grade = (name: string, of: readonly BeltResult[]) => [
    name,
    percent(shareOf(answered, (result) => of.includes(result))),
    percentWithin(shareOf(of, isRight)),
    of.filter((result) => !isWithin(result, NEAR)).length,
    of.filter(isOctaveType).length,
    percentWithin(shareOf(of, holdsTruth)),
    percentWithin(
      shareOf(
        of.filter(({ force }) => force),
        forceHolds,
      ),
    ),
    digits(median(of.filter(isBounded).map(halfPercent)), 1),
  ];
  const withGrade = (wanted: string) => answered.filter((result) => result.grade === wanted);
  return [
    '### 95 % intervals: share that hold the truth, wrong readings included',
    table(
      ['takes with an answer', 'n', 'frequency, %', 'median half-width, %', 'force, %', 'median half-width, %'],
      [
        intervals('all', answered),
        intervals('listed difficulties', listed),
        intervals(
          'listed, stiffness told',
          listed.filter(({ stiffnessTold }) => stiffnessTold),
        ),
        intervals(
          'listed, stiffness not told',
          listed.filter(({ stiffnessTold }) => !stiffnessTold),
        ),
        intervals(
          'physics variants',
          answered.filter(({ group }) => group === 'variant'),
        ),
        ...coverages.slice(0, 6).map(({ kind }) => intervals(kind, byKind.get(kind)!)),
      ],
    ),
    '### What a grade is worth',
    table(
      [
        'grade',
        'share of readings, %',
        'within 1 %, %',
        'beyond 3 %',
        'octave-type',
        'frequency interval holds, %',
        'force interval holds, %',
        'median force half-width, %',
      ],
      ['trusted', 'doubtful', 'unusable'].map((name) => grade(name, withGrade(name))),
    ),
    table(
      [
        'grade of the sound alone',
        'share of readings, %',
        'within 1 %, %',
        'beyond 3 %',
        'octave-type',
        'frequency interval holds, %',
        'force interval holds, %',
        'median force half-width, %',
      ],
      ['trusted', 'doubtful', 'unusable'].map((name) =>
        grade(
          name,
          answered.filter(({ soundGrade }) => soundGrade === name),
        ),
      ),
    ),
    forceCoverage(run.belts()),
    spanCoverage(run.options.seed),
    ...pluckCounts(run),
  ].join('\n\n');
}

/** Plucks that follow one another faster than a tenth of a second may count as one. */
const APART_S = 0.1;

function pluckCounts(run: Run): readonly string[] {
  const isCounted = ({ truth }: BeltResult) =>
    truth.pluckStartsS.every((startS, index, all) => index === 0 || startS - all[index - 1]! > APART_S);
  const counted = run.belts().filter((result) => isCounted(result) && result.group !== 'beyond');
  const isRightCount = ({ pluckCount, truth }: BeltResult) => pluckCount === truth.pluckStartsS.length;
  const several = counted.filter(({ truth }) => truth.pluckStartsS.length > 1);
  return [
    '### Number of plucks in a take',
    table(
      ['takes', 'n', 'counted right, %', 'too many', 'too few'],
      [['of several plucks', several] as const, ['of any number', counted] as const].map(([name, of]) => [
        name,
        of.length,
        percentWithin(shareOf(of, isRightCount)),
        of.filter(({ pluckCount, truth }) => pluckCount > truth.pluckStartsS.length).length,
        of.filter(({ pluckCount, truth }) => pluckCount < truth.pluckStartsS.length).length,
      ]),
    ),
  ];
}
