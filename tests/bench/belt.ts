/** Section `belt`: drawn belts on the bench, partials by energies alone; whether the fitted intervals hold, how wide they are, and what a later reading gains. */

import type { BenchData } from '../../src/core/belt/bench-data.ts';
import { benchFit } from '../../src/core/belt/bench-fit.ts';
import type { BenchValue } from '../../src/core/belt/bench-slices.ts';
import { createRandom, type Random } from '../../src/core/math/random.ts';
import type { Reading } from '../../src/core/outcome.ts';
import { drawTrueBelt, FULL_PLAN, readBench, type TrueBelt, truePartials, USUAL_DOUBTS } from '../support/bench-belt.ts';
import { type LaterReadings, laterReadings } from '../support/later-reading.ts';
import type { Run } from './run.ts';
import { median, shareOf } from './statistics.ts';
import { digits, percent, percentWithin, table } from './table.ts';

/** Benches of each belt, so that a share is known to a percent. */
const BENCHES_EACH = 4;
const LATER = { spanLengthM: 0.06, forceN: 8 } as const;

interface Result extends LaterReadings {
  readonly truth: TrueBelt;
  readonly density: Judged;
  readonly stiffness: Judged;
  readonly ends: Judged;
}

interface Judged {
  readonly holds: boolean;
  /** Of the 95 % interval, relative. */
  readonly half: number;
  /** Of the value, relative. */
  readonly off: number;
}

export function beltSection({ options }: Run): string {
  const results = Array.from({ length: options.belts }, (_, index) => resultsOf(options.seed, index)).flat();
  const held = (of: (result: Result) => Judged): string => percent(shareOf(results, (result) => of(result).holds));
  const half = (of: (result: Result) => Judged): string => digits(100 * median(results.map((result) => of(result).half))!, 1);
  const [density, stiffness, ends] = [(r: Result) => r.density, (r: Result) => r.stiffness, (r: Result) => r.ends];
  const within = (share: number, of: (result: Result) => Judged): string =>
    percentWithin(shareOf(results, (result) => of(result).half <= share));
  const graded = (of: (result: Result) => Reading, grade: Reading['grade']): string =>
    percent(shareOf(results, (result) => of(result).grade === grade));
  const row = (name: string, of: (result: Result) => Reading) => [
    name,
    ...(['trusted', 'doubtful', 'unusable'] as const).map((grade) => graded(of, grade)),
    percentWithin(shareOf(results, (result) => holdsForce(of(result)))),
  ];
  return [
    `belt: coverage density ${held(density)} %, stiffness ${held(stiffness)} %, end effect ${held(ends)} %; ` +
      `half-width density ${half(density)} %, stiffness ${half(stiffness)} %, end effect ${half(ends)} %`,
    `### ${options.belts} drawn belts of 2 mm pitch, each on ${BENCHES_EACH} benches: ${FULL_PLAN.forcesN.join(', ')} N on ${FULL_PLAN.spansM.map((m) => m * 1000).join(' and ')} mm, partials 1 to 3 by Ritz's method (standard uncertainties: partials 0.2 %, lengths 0.5 mm, forces 0.3 %)`,
    table(
      ['', 'share, % (95 % interval)'],
      [
        ['density within 1 % of the truth', percentWithin(shareOf(results, (result) => Math.abs(result.density.off) <= 0.01))],
        ['stiffness interval no wider than ± 25 %', within(0.25, stiffness)],
        ['end effect interval no wider than ± 25 %', within(0.25, ends)],
      ],
    ),
    '### The same belts afterwards: 60 mm at 8 N, three plucks, the length read to 0.5 mm',
    table(
      ['values of the belt', 'trusted, %', 'doubtful, %', 'unusable, %', 'interval holds, %'],
      [row('catalogue, ends unknown', ({ catalogue }) => catalogue), row('from the bench', ({ proved }) => proved)],
    ),
  ].join('\n\n');
}

function resultsOf(seed: number, index: number): Result[] {
  const random = createRandom(seed, 5000 + index);
  const truth = drawTrueBelt(random);
  const hz = truePartials(truth, FULL_PLAN);
  return Array.from({ length: BENCHES_EACH }, () => resultOf(random, truth, readBench(random, truth, FULL_PLAN, USUAL_DOUBTS, hz)));
}

function resultOf(random: Random, truth: TrueBelt, data: BenchData): Result {
  const fit = benchFit(data);
  if (!fit) throw new Error('a bench gave no fit');
  return {
    truth,
    density: judged(fit.linearDensityKgPerM, truth.linearDensityKgPerM),
    stiffness: judged(fit.bendingStiffnessNm2, truth.bendingStiffnessNm2),
    ends: judged(fit.endEffect, truth.fixity * Math.sqrt(truth.bendingStiffnessNm2)),
    ...laterReadings(random, truth, fit, LATER),
  };
}

const judged = ({ value, low, high }: BenchValue, truth: number): Judged => ({
  holds: low <= truth && truth <= high,
  half: (high - low) / (2 * value),
  off: value / truth - 1,
});

const holdsForce = ({ forceN }: Reading): boolean =>
  forceN !== undefined && (forceN.low ?? 0) <= LATER.forceN && LATER.forceN <= (forceN.high ?? Infinity);
