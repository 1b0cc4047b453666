/** Part of section `coverage`: short spans, and stiffness that lies outside what was assumed; no sound, partials drawn from the beam itself. */

import { answerOf } from '../../src/core/answer.ts';
import type { PluckSound, Reading } from '../../src/core/outcome.ts';
import { type EndFixity, type SpanSetup, UNKNOWN_ENDS } from '../../src/core/setup.ts';
import { createRandom, type Random } from '../../src/core/synthesis/random.ts';
import { partialHz } from '../../src/core/vibration/beam.ts';
import { heardPluck, WEIGHED_BELT } from '../support/heard.ts';
import { median, share } from './statistics.ts';
import { digits, percentWithin, table } from './table.ts';

const TWO_MM = { low: 5e-5, high: 3e-4 };
const MIDDLE = Math.sqrt(TWO_MM.low * TWO_MM.high);
/** How far a partial lies from the beam, relative, for each of its number: 0.3 % at the fourth. */
const OFF_EACH = 0.00075;
const HEARD_U = 0.001;

interface Truth {
  readonly forceN: number;
  readonly spanLengthM: number;
  readonly linearDensityKgPerM: number;
  readonly bendingStiffnessNm2: number;
  readonly fixity: readonly [number, number];
}

/** @param random  none: every partial where the beam has it */
function pluckOf(truth: Truth, numbers: readonly number[], random?: Random): PluckSound {
  const heard = (number: number): number =>
    partialHz({ ...truth, number }) * Math.exp((random?.gaussian() ?? 0) * Math.hypot(HEARD_U, OFF_EACH * number));
  const partials = numbers.map((number) => {
    const value = heard(number);
    return { number, frequencyHz: { value, standardUncertainty: HEARD_U * value }, levelDbfs: -20 - number, decayS: 0.2 };
  });
  const first = partials[0]!.frequencyHz;
  return { ...heardPluck(first.value, { glideRelative: 0, numberingTested: true }), frequencyHz: first, partials };
}

const readingOf = (sound: PluckSound, setup: SpanSetup): Reading => answerOf({ sounds: [sound], setup, sampleRateHz: 48_000 }).reading!;
const setupOf = (spanLengthM: number, more: Partial<SpanSetup> = {}): SpanSetup => ({
  spanLengthM: { value: spanLengthM, standardUncertainty: 0.0005 },
  belt: WEIGHED_BELT,
  ends: UNKNOWN_ENDS,
  ...more,
});
const knownEnd: EndFixity = { kind: 'known', value: { value: 0.5, standardUncertainty: 0.05 } };
const knownStiffness = {
  ...WEIGHED_BELT,
  bendingStiffnessNm2: { kind: 'known' as const, value: { value: MIDDLE, standardUncertainty: 0.1 * MIDDLE } },
};
const clamp: EndFixity = { kind: 'between', low: 0.7, high: 1 };

const spanAt = (millimetres: number, forceN: number): Truth => ({
  forceN,
  spanLengthM: millimetres / 1000,
  linearDensityKgPerM: WEIGHED_BELT.linearDensityKgPerM.value,
  bendingStiffnessNm2: MIDDLE,
  fixity: [0.5, 0.5],
});

const interval = ({ forceN }: Reading): string =>
  forceN
    ? `${digits(forceN.low, 2)} to ${digits(forceN.high, 2)} N (larger half ${forceN.u95 === undefined ? '-' : digits((100 * forceN.u95) / forceN.value, 0)} %)`
    : '-';
const reasons = ({ reasons: all }: Reading): string =>
  all
    .filter(({ holdsAt }) => holdsAt !== 'trusted')
    .map((reason) => (reason.id === 'span-too-short' ? `${reason.id} (${(1000 * reason.spanLengthM).toFixed(0)} mm)` : reason.id))
    .join(', ');

export function spanCoverage(seed: number): string {
  const short = spanAt(45, 4);
  const shortRow = (told: string, setup: SpanSetup, truth: Truth = short) => {
    const reading = readingOf(pluckOf(truth, [1, 2, 3]), setup);
    return [told, reading.grade, interval(reading), reasons(reading)];
  };
  const sixty = spanAt(60, 5);
  const half = (numbers: readonly number[]): number => {
    const { forceN } = readingOf(pluckOf(sixty, numbers), setupOf(0.06));
    return (50 * (forceN!.high! - (forceN!.low ?? 0))) / forceN!.value;
  };
  const [alone, two, four] = [half([1]), half([1, 2]), half([1, 2, 3, 4])];
  return [
    '### A span of 45 mm, belt of 2 mm pitch, at 4 N; density weighed, span told to 0.5 mm',
    table(
      ['told besides', 'grade', '95 % interval', 'reasons below trusted'],
      [
        shortRow('nothing', setupOf(0.045)),
        shortRow('ends: clips', setupOf(0.045, { ends: [clamp, clamp] }), { ...short, fixity: [0.85, 0.85] }),
        shortRow('ends measured', setupOf(0.045, { ends: [knownEnd, knownEnd] })),
        shortRow('stiffness measured', setupOf(0.045, { belt: knownStiffness })),
        shortRow('ends and stiffness measured', setupOf(0.045, { ends: [knownEnd, knownEnd], belt: knownStiffness })),
      ],
    ),
    `A span of 60 mm at 5 N: half of the interval ${digits(alone, 1)} % of the force by the first partial alone, ${digits(two, 1)} % by two, ${digits(four, 1)} % by four: ${digits((100 * (alone - four)) / alone, 0)} % narrower.`,
    ...outside(seed),
  ].join('\n\n');
}

const SPANS = 400;

/** The stiffness of a belt that no list has: a factor beyond either end of the range that is assumed. */
function outside(seed: number): string[] {
  const rows = [1, 1.5, 2.5].map((factor) => {
    const random = createRandom(seed, 70 + factor);
    const halves: number[] = [];
    let held = 0;
    let bounded = 0;
    for (let i = 0; i < SPANS; i++) {
      const truth = drawnSpan(random, factor);
      const told = setupOf(truth.spanLengthM + 0.0005 * random.gaussian(), {
        belt: {
          ...WEIGHED_BELT,
          linearDensityKgPerM: {
            ...WEIGHED_BELT.linearDensityKgPerM,
            value: truth.linearDensityKgPerM * Math.exp(0.02 * random.gaussian()),
          },
        },
      });
      const { forceN } = readingOf(pluckOf(truth, [1, 2, 3, 4], random), told);
      if (forceN && (forceN.low ?? 0) <= truth.forceN && truth.forceN <= (forceN.high ?? Number.POSITIVE_INFINITY)) held++;
      if (forceN?.low === undefined || forceN.high === undefined) continue;
      bounded++;
      halves.push((50 * (forceN.high - forceN.low)) / forceN.value);
    }
    return [
      factor === 1 ? 'inside the range' : `${factor} times outside`,
      SPANS,
      percentWithin(share(held, SPANS)),
      digits(median(halves), 1),
      bounded,
    ];
  });
  return [
    '### Force intervals where the stiffness lies outside the range assumed (1 to 60 N, 40 to 600 mm, nothing told of the ends; promised: 90 % at 1.5 times)',
    table(['stiffness', 'spans', 'interval holds, %', 'median half-width, %', 'with both bounds'], rows),
  ];
}

function drawnSpan(random: Random, factor: number): Truth {
  const within = TWO_MM.low * (TWO_MM.high / TWO_MM.low) ** random.uniform();
  const beyond = random.uniform() < 0.5 ? TWO_MM.low / factor : TWO_MM.high * factor;
  const end = (): number => [0, 1, random.uniform()][Math.floor(3 * random.uniform())]!;
  const one = end();
  return {
    forceN: 60 ** random.uniform(),
    spanLengthM: 0.04 * 15 ** random.uniform(),
    linearDensityKgPerM: WEIGHED_BELT.linearDensityKgPerM.value,
    bendingStiffnessNm2: factor === 1 ? within : beyond,
    fixity: [one, random.uniform() < 0.5 ? one : end()],
  };
}
