/** Part of section `coverage`: whether force intervals and grades keep their promises, by difficulty, and what each reason was raised for. */

import { holdsTruth } from './frequency.ts';
import { isOctaveType, isRight } from './judge.ts';
import type { BeltResult } from './ours.ts';
import { grouped, median, shareOf } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

/** The tolerance of a force where none is told. */
const TOLERANCE = 0.2;

const forceHolds = ({ force, truth }: BeltResult): boolean =>
  force !== undefined && force.low <= truth.forceN && truth.forceN <= force.high;
const halfPercent = ({ force }: BeltResult): number => (50 * (force!.high - force!.low)) / force!.value;
const isBounded = ({ force }: BeltResult): boolean => force !== undefined && force.low > 0 && force.high < Number.POSITIVE_INFINITY;
const graded = (results: readonly BeltResult[], grade: BeltResult['grade']) => results.filter((result) => result.grade === grade);

/** @param belts  every take that has a belt in it, answered or not */
export function forceCoverage(belts: readonly BeltResult[]): string {
  return [...promises(belts), ...byKind(belts), ...reliability(belts), ...reasons(belts)].join('\n\n');
}

function promises(belts: readonly BeltResult[]): string[] {
  const trusted = graded(belts, 'trusted');
  const doubtful = graded(belts, 'doubtful');
  const halves = trusted.filter(isBounded).map(halfPercent);
  return [
    '### Promises of the grades (every take that has a belt in it)',
    table(
      ['', 'found', 'promised'],
      [
        ['takes that are trusted, %', percentWithin(shareOf(belts, ({ grade }) => grade === 'trusted')), '65 or more'],
        ['force interval of trusted ones holds, %', percentWithin(shareOf(trusted, forceHolds)), '95 or more'],
        ['its median half-width, % of the force', digits(median(halves), 1), '9 or less'],
        ['force interval of doubtful ones holds, %', percentWithin(shareOf(doubtful, forceHolds)), '93 or more'],
        ['trusted ones an octave off', trusted.filter(isOctaveType).length, 'none'],
      ],
    ),
  ];
}

function byKind(belts: readonly BeltResult[]): string[] {
  const rows = [...grouped(belts, ({ kind }) => kind)].map(([kind, of]) => {
    const [trusted, doubtful] = [graded(of, 'trusted'), graded(of, 'doubtful')];
    return [
      kind,
      of.length,
      trusted.length,
      trusted.filter(forceHolds).length,
      digits(median(trusted.filter(isBounded).map(halfPercent)), 1),
      doubtful.length,
      doubtful.filter(forceHolds).length,
      digits(median(doubtful.filter(isBounded).map(halfPercent)), 1),
      graded(of, 'unusable').length,
      of.filter(({ grade }) => grade === undefined).length,
    ];
  });
  return [
    '### By difficulty and grade',
    table(['kind', 'takes', 'trusted', 'hold', 'half-width, %', 'doubtful', 'hold', 'half-width, %', 'unusable', 'no answer'], rows),
  ];
}

/** Normal quantiles of two-sided shares. */
const SHARES = [
  { share: 0.5, z: 0.67449 },
  { share: 0.6827, z: 1 },
  { share: 0.8, z: 1.28155 },
  { share: 0.9, z: 1.64485 },
  { share: 0.95, z: 1.95996 },
  { share: 0.99, z: 2.57583 },
];
const BAR = 40;
/** Twenty teeth of the coarser pitch. */
const SHORTEST_TRUSTED_M = 0.06;

/** Where the truth lies in its interval: each half read as normal in ln T, ± 1.96 at the bounds. */
function distance({ force, truth }: BeltResult): number {
  const { low, value, high } = force!;
  const off = Math.log(truth.forceN / value);
  return (1.95996 * Math.abs(off)) / Math.abs(Math.log((off < 0 ? low : high) / value));
}

function reliability(belts: readonly BeltResult[]): string[] {
  const bounded = belts.filter(({ grade }) => grade === 'trusted' || grade === 'doubtful').filter(isBounded);
  const rows = SHARES.map(({ share, z }) => {
    const inside = shareOf(bounded, (result) => distance(result) <= z);
    const found = inside.of === 0 ? 0 : inside.count / inside.of;
    const places = Array.from<unknown, string>({ length: BAR + 1 }, (_, place) => (place <= Math.round(found * BAR) ? '#' : ' '));
    places[Math.round(share * BAR)] = '|';
    return [(100 * share).toFixed(0), percent(inside), `\`${places.join('')}\``];
  });
  return [
    `### Reliability of trusted and doubtful intervals (${bounded.length}; the stroke marks what is claimed, the bar what was found)`,
    table(['claimed, %', 'found, %', ''], rows),
  ];
}

/** The difficulties that a reason is there for. */
const MADE_FOR: Readonly<Record<string, readonly string[]>> = {
  clipped: ['clipped', 'gain control'],
  'too-few-cycles': ['strongly damped', 'slack and damped'],
  'plucked-too-hard': ['hard pluck'],
  'other-span-rings': ['neighbour span', 'torsion', 'coupled torsion'],
  'not-one-span': ['neighbour span', 'torsion', 'coupled torsion', 'touches the frame', 'double pluck', 'gliding stepper', 'frame rings'],
  'octave-not-certain': ['first partial weak', 'first partial faint', 'first partial absent'],
  'first-partial-not-heard': ['first partial weak', 'first partial faint', 'first partial absent'],
  noisy: ['white noise 10 dB', 'white noise 5 dB', 'pink noise 10 dB', 'pink noise 5 dB'],
  'hum-on-partial': ['mains hum'],
  'tone-on-partial': ['fan', 'stepper', 'gliding stepper'],
  'sound-altered': ['gain control', 'noise suppression'],
  'sample-rate-too-low': ['8 kHz', '16 kHz'],
  'span-too-short': ['short and stiff', 'slack and damped'],
  'belt-too-slack': ['short and stiff', 'slack and damped'],
  'ends-and-stiffness-unknown': ['short and stiff', 'slack and damped'],
  'touch-not-heard': ['inside the ring', 'short lead'],
  'plucks-disagree': ['several plucks', 'double pluck'],
};
const isMixed = (kind: string): boolean => kind.endsWith('difficulties');

/** Reasons that only say that the interval is too wide, and for which input: right where it is. */
const OF_THE_INTERVAL = ['span-too-short', 'belt-too-slack', 'ends-and-stiffness-unknown', 'input-decides', 'frequency-not-sharp'];

function reasons(belts: readonly BeltResult[]): string[] {
  const ids = [...new Set(belts.flatMap((result) => result.reasons))].toSorted();
  const forceIsOff = ({ force, truth }: BeltResult) => force !== undefined && Math.abs(force.value / truth.forceN - 1) > TOLERANCE / 2;
  const rows = ids.map((id) => {
    const raised = belts.filter((result) => result.reasons.includes(id));
    const isCalledFor = (result: BeltResult) =>
      OF_THE_INTERVAL.includes(id)
        ? !isBounded(result) || halfPercent(result) > 50 * TOLERANCE || result.truth.spanLengthM < SHORTEST_TRUSTED_M
        : MADE_FOR[id]?.includes(result.kind) === true || isMixed(result.kind);
    const isWrong = (result: BeltResult) => !isRight(result) || !holdsTruth(result) || forceIsOff(result) || !forceHolds(result);
    const calledFor = raised.filter(isCalledFor);
    const elseWrong = raised.filter((result) => !isCalledFor(result) && isWrong(result));
    const wrongly = raised.length - calledFor.length - elseWrong.length;
    return [id, raised.length, calledFor.length, elseWrong.length, wrongly, raised.filter(({ grade }) => grade === 'trusted').length];
  });
  return [
    '### How often each reason was raised rightly and wrongly (a wrong reading: frequency beyond 1 % or its interval, force beyond a tenth or its interval)',
    table(
      [
        'reason',
        'raised',
        'rightly: the take has what it is for',
        'rightly: the reading was wrong',
        'wrongly: neither',
        'only named, and trusted',
      ],
      rows,
    ),
  ];
}
